"""Of every shipped rule that passes, each fact it reads: taken out, it leaves a pass behind only
where no other value of it would have failed the rule.

What the network as a whole is made of is tried on a whole boat, where facts are taken out there.
One passing case of each rule is the record. A whole run takes minutes: by default each eighth rule
is tried, with EVERY_RULE=1 in the environment all of them.
"""

from __future__ import annotations

import copy
import os
import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

import pytest

from authoring.small_pack import workshop
from garboard.assessment import assess, assessment_day
from garboard.authoring import Bench
from garboard.authoring.proving.changes import _holder, _remove, _set, changed
from garboard.authoring.proving.seen import seen_in
from garboard.documents import shipped_folder
from garboard.errors import Refused
from garboard.packs.cases import Case
from garboard.record import SUBJECTS, read_record

PACKS = sorted(each.name for each in shipped_folder("rulepacks").iterdir() if each.is_dir())
_NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?")
#: What is joined to what, and the day of an assessment: without them there is no record.
STRUCTURE = ("id", "from", "to", "survey.date")
#: Facts that something else says as well, or that count only where they are written down.
SAID_OTHERWISE = {
    "resistance": "of a conductor follows from its size and length",
    "starts_engine": "of a run follows from the kind of its load",
    "stages.bulk": "ends at the absorption voltage, which must be on record",
    "stages.float": "lies below the absorption voltage, which must be on record",
}


@cache
def desk(pack: str) -> Bench:
    return Bench.of(workshop(), pack)


@cache
def passing(pack: str) -> dict[str, tuple[Case, str | None]]:
    """The first case in which each rule passes, and the item it passes for."""
    found: dict[str, tuple[Case, str | None]] = {}
    for case in desk(pack).book.cases:
        for each in case.expected:
            if each.outcome == "passed":
                found.setdefault(each.rule, (case, each.item))
    return found


RULES = [(pack, rule) for pack in PACKS for rule in passing(pack)]
TRIED = RULES if os.environ.get("EVERY_RULE") else RULES[::8]


def outcome(pack: str, record: Mapping[str, Any], case: Case, rule: str, item: str | None) -> str:
    try:
        sight = seen_in(record, desk(pack).checked, workshop().registry, case.on)
    except Refused:
        return "refused"
    seen = sight.found.get((rule, item))
    return "gone" if seen is None else seen.outcome


def facts_read(pack: str, record: Mapping[str, Any], case: Case, rule: str,
               item: str | None) -> list[str]:
    """The recorded facts that a finding rests on, down through every figure."""
    read = read_record(record)
    trail = assess(read, [desk(pack).checked], workshop().registry,
                   assessment_day(read, case.on), {}).trail
    derivations = trail.assessment["derivations"]
    (finding,) = [each for each in trail.findings if (each["rule"], each["item"]) == (rule, item)]
    keys = [key for operand in finding["of"] for key in operand]
    seen: dict[str, None] = {}
    while keys:
        key = keys.pop()
        if key not in seen:
            seen[key] = None
            keys += [each for used in derivations.get(key, {}).get("inputs", ())
                     for each in used["of"]]
    found = {re.sub(r"\.(low|high|kind)$", "", key) for key in seen if key not in derivations}
    return sorted(each for each in found if each.rpartition(".")[2] not in STRUCTURE
                  and each not in STRUCTURE and not each.endswith(tuple(SAID_OTHERWISE)))


def without(record: Mapping[str, Any], path: str) -> Mapping[str, Any] | None:
    left = copy.deepcopy(dict(record))
    try:
        _remove(left, path, None)
    except LookupError:
        return None
    return left


def others(record: Mapping[str, Any], path: str) -> Iterator[Mapping[str, Any]]:
    """The record with other values of a fact: the other truth, much less and more, other words."""
    written = _written(record, path)
    texts: list[Any] = []
    if written in ("yes", "no", True, False):
        texts = ["no" if written in ("yes", True) else "yes"]
    elif isinstance(written, str) and _NUMBER.search(written):
        texts = [_NUMBER.sub(lambda found, by=by: f"{float(found[0]) * by:.9g}", written)
                 for by in (0.001, 0.1, 0.5, 2, 10, 1000)]
    elif isinstance(written, str):
        subject, name = _field(record, path)
        field = SUBJECTS[subject].fields.get(name) if subject in SUBJECTS else None
        texts = [each for each in (field.choices if field and field.choices else ())
                 if each != written]
    elif isinstance(written, list):
        texts = [[]]
    for text in texts:
        other = copy.deepcopy(dict(record))
        _set(other, path, text)
        yield other


def _written(record: Mapping[str, Any], path: str) -> Any:
    """The value as written; of a mapping form its ``value``."""
    holder, last = _holder(copy.deepcopy(dict(record)), path, make=False)
    value = holder[last] if not isinstance(holder, dict) else holder.get(last)
    return value.get("value", value) if isinstance(value, dict) else value


def _field(record: Mapping[str, Any], path: str) -> tuple[str, str]:
    identity, _, name = path.partition(".")
    thing = read_record(record).things.get(identity)
    return ("" if thing is None else thing.subject), name


def test_nearly_every_rule_has_a_case_in_which_it_passes() -> None:
    own = {(pack, rule.id) for pack in PACKS for rule in desk(pack).checked.pack.rules
           if desk(pack).book.about(rule.id).cases}
    assert len(own) >= 150
    assert own - set(RULES) == set()


@pytest.mark.parametrize(("pack", "rule"), TRIED, ids=[f"{pack}-{rule}" for pack, rule in TRIED])
def test_a_fact_taken_out_never_leaves_a_pass_it_was_needed_for(pack: str, rule: str) -> None:
    case, item = passing(pack)[rule]
    record = changed(case)
    wrong = []
    for path in facts_read(pack, record, case, rule, item):
        left = without(record, path)
        if left is None or outcome(pack, left, case, rule, item) != "passed":
            continue
        if any(outcome(pack, other, case, rule, item) == "failed"
               for other in others(record, path)):
            wrong.append(path)
    assert wrong == []
