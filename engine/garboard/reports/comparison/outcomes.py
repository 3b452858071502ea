"""What became of each finding between two assessments.

| before | after | word |
|---|---|---|
| anything but failed, or not there | failed | newly failing |
| failed | passed | repaired |
| failed | failed | still failing |
| anything but not assessed, or not there | not assessed | newly not assessed |
| not assessed | not assessed | still not assessed |
| not assessed, not applicable or not there | passed | newly passed |
| failed, or not assessed | not applicable, or not there | no longer looked at |
| passed | not applicable, or not there | no longer looked at |
| passed, or not applicable or not there | the same | unchanged |
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from garboard.trail import (
    FAILED,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PASSED,
    SEVERITIES,
    Finding,
    Trail,
)

NEWLY_FAILING: Final = "newly failing"
REPAIRED: Final = "repaired"
STILL_FAILING: Final = "still failing"
NEWLY_OPEN: Final = "newly not assessed"
STILL_OPEN: Final = "still not assessed"
NEWLY_PASSED: Final = "newly passed"
GONE: Final = "no longer looked at"
UNCHANGED: Final = "unchanged"
WORDS: Final = (NEWLY_FAILING, STILL_FAILING, REPAIRED, NEWLY_OPEN, STILL_OPEN, NEWLY_PASSED, GONE,
                UNCHANGED)


@dataclass(frozen=True, slots=True)
class Moved:
    """One finding before and after; ``None`` where it is not there."""

    id: str
    word: str
    severity: str
    before: Finding | None
    after: Finding | None

    @property
    def outcomes(self) -> tuple[str | None, str | None]:
        """Its outcome before and after."""
        return outcome_in(self.before), outcome_in(self.after)


def outcome_in(finding: Finding | None) -> str | None:
    """The outcome of a finding that may not be there."""
    return None if finding is None else str(finding["outcome"])


def moved(before: Trail, after: Trail) -> tuple[Moved, ...]:
    """Every finding of either, worst severity first, then by id."""
    one, other = _by_id(before), _by_id(after)
    found = []
    for name in {**one, **other}:
        mine, theirs = one.get(name), other.get(name)
        rule = (before.rule_of(mine) if theirs is None and mine is not None
                else after.rule_of(theirs) if theirs is not None else {})
        found.append(Moved(name, word_of(outcome_in(mine), outcome_in(theirs)),
                           str(rule["severity"]), mine, theirs))
    return tuple(sorted(found, key=lambda each: (SEVERITIES.index(each.severity), each.id)))


def word_of(before: str | None, after: str | None) -> str:
    """What became of a finding, after the table above."""
    if after == FAILED:
        return STILL_FAILING if before == FAILED else NEWLY_FAILING
    if after == NOT_ASSESSED:
        return STILL_OPEN if before == NOT_ASSESSED else NEWLY_OPEN
    if after == PASSED:
        return {PASSED: UNCHANGED, FAILED: REPAIRED}.get(before or "", NEWLY_PASSED)
    return UNCHANGED if before in (NOT_APPLICABLE, None) else GONE


def _by_id(trail: Trail) -> Mapping[str, Finding]:
    return {each["id"]: each for each in trail.findings}
