"""The search for the smallest change that suffices: each proven by assessing the record again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from garboard.assessment.remedies.draft import Change
from garboard.assessment.remedies.proposing import Proposing
from garboard.assessment.replay import packs_of, replay
from garboard.errors import Refused
from garboard.expressions import Vocabulary
from garboard.network import build_network
from garboard.packs import Rule
from garboard.quantities import Figures, Registry
from garboard.record import read_record
from garboard.reports import Remedy, Tried
from garboard.reports.working.remedy import FOUND, NONE_LISTED, NONE_SUFFICES, OTHERWISE
from garboard.trail import FAILED, NOT_ASSESSED, Finding, Trail

#: Called with how many changes were tried.
Progress = Callable[[int], None]
_ABOUT: Final[Mapping[str, Any]] = {"garboard": "search", "plugins": []}


def remedy_for(trail: Trail, finding: Finding, vocabulary: Vocabulary, registry: Registry,
               progress: Progress = lambda _: None) -> Remedy:
    """The smallest permissible change after which a failed finding passes and nothing newly fails.

    The changes are those the rule lists in the pack of the trail, tried in that order. Every one is
    proven on the whole record, with all packs of the trail.
    """
    rule = _rule(trail, finding, vocabulary)
    if not rule.permissible_changes:
        return Remedy(NONE_LISTED)
    record = read_record(trail.written)
    before = _outcomes(replay(trail, vocabulary, registry, _ABOUT, record).trail)
    if before.get(finding["id"]) != FAILED:
        return Remedy(OTHERWISE)
    proposing = Proposing(record, Figures(record, build_network(record), registry))
    tried: list[Tried] = []
    for change in proposing.changes(rule.permissible_changes, finding["item"]):
        tried.append(_try(change, trail, finding["id"], before, vocabulary, registry))
        progress(len(tried))
        if tried[-1].suffices:
            break
    sufficient = any(each.suffices for each in tried)
    return Remedy(FOUND if sufficient else NONE_SUFFICES, tuple(tried), tuple(proposing.notes))


def _rule(trail: Trail, finding: Finding, vocabulary: Vocabulary) -> Rule:
    packs = {checked.pack.name: checked.pack for checked in packs_of(trail, vocabulary)}
    return next(rule for rule in packs[finding["pack"]].rules if rule.id == finding["rule"])


def _try(change: Change, trail: Trail, identity: str, before: Mapping[str, str],
         vocabulary: Vocabulary, registry: Registry) -> Tried:
    try:
        record = read_record(change.written)
    except Refused as refused:
        return Tried(change.words, None, refused=str(refused.problems[0].title))
    after = _outcomes(replay(trail, vocabulary, registry, _ABOUT, record).trail)
    return Tried(change.words, after.get(identity), _newly(FAILED, before, after),
                 _newly(NOT_ASSESSED, before, after))


def _newly(outcome: str, before: Mapping[str, str], after: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(sorted(name for name, found in after.items()
                        if found == outcome and before.get(name) != outcome))


def _outcomes(trail: Trail) -> dict[str, str]:
    return {each["id"]: each["outcome"] for each in trail.findings}
