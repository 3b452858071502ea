"""A pack on its way in: every piece read on its own, so that all problems show at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from garboard.errors import Problem
from garboard.packs.change import Change
from garboard.packs.header import Header
from garboard.packs.limit import Limit
from garboard.packs.pack import Pack
from garboard.packs.pieces import (
    PARTS,
    change_piece,
    header_piece,
    limit_piece,
    rule_piece,
    used_twice,
)
from garboard.packs.rule import Rule
from garboard.packs.shape import missing_key, unknown_key, wrong_kind
from garboard.packs.spot import DataPath, Spot


@dataclass
class Draft:
    """What could be read of a pack, and everything that is wrong with it so far.

    A rule or limit that could not be read stands as ``None`` beside its spot.
    """

    head: Spot
    header: Header | None = None
    limits: dict[str, tuple[Spot, Limit | None]] = field(default_factory=dict)
    rules: list[tuple[Spot, Rule | None]] = field(default_factory=list)
    changes: list[tuple[Spot, Change | None]] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)

    @property
    def refused(self) -> bool:
        """Whether anything found so far makes the pack unusable."""
        return any(problem.level == "error" for problem in self.problems)

    def pack(self) -> Pack:
        """The pack, once nothing is wrong with it."""
        if self.header is None or self.refused:
            raise ValueError("a pack with problems cannot be used")
        limits = {name: limit for name, (_, limit) in sorted(self.limits.items()) if limit}
        rules = sorted(((rule, spot) for spot, rule in self.rules if rule),
                       key=lambda pair: pair[0].id)
        spots: dict[DataPath, Spot] = {(): self.head}
        spots |= {("limits", name): spot for name, (spot, _) in self.limits.items()}
        spots |= {("rules", rule.id): spot for rule, spot in rules}
        return Pack(self.header, limits, tuple(rule for rule, _ in rules),
                    tuple(self.problems), spots)


def draft_pack(head: Spot, others: Sequence[Spot] = ()) -> Draft:
    """Read the sheets of a pack, all of them mappings: its head, then files of limits and rules."""
    draft = Draft(head)
    draft.header, draft.problems = header_piece(head)
    draft.problems += _content(head, draft)
    for sheet in others:
        draft.problems += _sheet_keys(sheet)
        draft.problems += _content(sheet, draft)
    draft.problems += used_twice("rule-twice", [spot.at("id") for spot, _ in draft.rules])
    if head.at("builds_on").data is not None:
        return draft
    draft.problems += (Problem("change-without-base", spot.place(),
                               expected="builds_on, with the pack that is changed")
                       for spot, _ in draft.changes)
    if not draft.rules:
        draft.problems.append(Problem("pack-empty", head.place(), found="no rules"))
    return draft


def _sheet_keys(sheet: Spot) -> Iterator[Problem]:
    """A file beside the head holds limits, rules, or both, and nothing else."""
    written = dict(sheet.entries())
    for name, entry in written.items():
        if name not in PARTS:
            yield unknown_key(entry, name, PARTS)
    if not any(part in written for part in PARTS):
        yield missing_key(sheet, "rules")


def _content(sheet: Spot, draft: Draft) -> Iterator[Problem]:
    written = dict(sheet.entries())
    if "limits" in written and not isinstance(written["limits"].data, dict):
        yield wrong_kind(written["limits"], "mapping")
    if "rules" in written and not isinstance(written["rules"].data, list):
        yield wrong_kind(written["rules"], "list")
    if "changes" in written and not isinstance(written["changes"].data, list):
        yield wrong_kind(written["changes"], "list")
    for spot in sheet.at("changes").items():
        change, problems = change_piece(spot)
        yield from problems
        draft.changes.append((spot, change))
    for name, spot in sheet.at("limits").entries():
        limit, problems = limit_piece(name, spot)
        yield from problems
        if name in draft.limits:
            yield from _limit_twice(name, spot, draft.limits[name][0])
        else:
            draft.limits[name] = (spot, limit)
    for spot in sheet.at("rules").items():
        rule, problems = rule_piece(spot)
        yield from problems
        draft.rules.append((spot, rule))


def _limit_twice(name: str, *spots: Spot) -> Iterator[Problem]:
    for here, there in (spots, spots[::-1]):
        yield Problem("limit-twice", here.place(key=True), found=name,
                      hint=f"also at {there.place(key=True)}")
