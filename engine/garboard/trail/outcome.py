"""What came out as a whole: counts of findings, the overall word, the exit code.

Everything is computed from the findings, here and nowhere else.

| what there is (the first line that fits) | word | code |
|---|---|---|
| a calculation failed, and a rule failed | does not meet | 4 |
| a calculation failed | could not be assessed | 4 |
| a rule failed | does not meet | 1 |
| nothing passed, something not assessed | could not be assessed | 2 |
| nothing passed (nothing was looked at) | does not apply | 2 |
| something at danger or warning not assessed | could not be assessed | 2 |
| otherwise | meets the pack's rules as recorded | 0 |

A failure set aside by a dispensation counts apart: not as failed here, and not as passed; but where
nothing else was looked at, it is what was looked at.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final

from garboard.trail.acceptance import acceptance_of
from garboard.trail.findings import (
    FAILED,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PASSED,
    SEVERITIES,
    Finding,
)
from garboard.values import CALCULATION_ERROR

MEETS: Final = "meets the pack's rules as recorded"
DOES_NOT_MEET: Final = "does not meet"
NOT_KNOWN: Final = "could not be assessed"
DOES_NOT_APPLY: Final = "does not apply"
WORDS: Final = (MEETS, DOES_NOT_MEET, NOT_KNOWN, DOES_NOT_APPLY)

#: Exit codes, the one that prevails first: refused, failure of our own, failed, not assessed, met.
EXIT_CODES: Final = (3, 4, 1, 2, 0)

_COUNTED: Final = {PASSED: "passed", FAILED: "failed", NOT_ASSESSED: "not_assessed",
                   NOT_APPLICABLE: "not_applicable"}
Counts = dict[str, Any]


def counts_of(findings: Iterable[Finding], severity_of: Mapping[tuple[str, str], str],
              set_aside: frozenset[str] = frozenset()) -> Counts:
    """How many findings of each kind. ``severity_of`` goes by (pack, rule).

    ``set_aside`` holds the ids of dispensations under which a failure no longer counts.
    """
    counts: Counts = {
        "findings": 0, "applying": 0, "passed": 0, "failed": 0, "not_assessed": 0,
        "not_applicable": 0, "dispensed": 0, "calculation_errors": 0,
        "failed_by_severity": dict.fromkeys(SEVERITIES, 0),
        "not_assessed_by_severity": dict.fromkeys(SEVERITIES, 0),
    }
    for finding in findings:
        outcome = finding["outcome"]
        counts["findings"] += 1
        counts[_COUNTED[outcome]] += 1
        counts["applying"] += outcome != NOT_APPLICABLE
        counts["calculation_errors"] += finding["reason"] == CALCULATION_ERROR
        if outcome == FAILED:
            counts["dispensed"] += finding.get("dispensation") in set_aside
        if outcome in (FAILED, NOT_ASSESSED):
            severity = severity_of[finding["pack"], finding["rule"]]
            counts[f"{_COUNTED[outcome]}_by_severity"][severity] += 1
    return counts


def verdict(counts: Counts) -> tuple[str, int]:
    """The overall word and the exit code, after the table above."""
    failed = counts["failed"] - counts["dispensed"]
    looked_at = counts["passed"] + counts["dispensed"]
    serious = counts["not_assessed_by_severity"]
    if counts["calculation_errors"]:
        return (DOES_NOT_MEET if failed else NOT_KNOWN), 4
    if failed:
        return DOES_NOT_MEET, 1
    if not looked_at:
        return (NOT_KNOWN if counts["not_assessed"] else DOES_NOT_APPLY), 2
    if serious["danger"] or serious["warning"]:
        return NOT_KNOWN, 2
    return MEETS, 0


def outcome_of(findings: Sequence[Finding], packs: Sequence[Mapping[str, Any]],
               dispensations: Iterable[Mapping[str, Any]] = ()) -> dict[str, Any]:
    """The outcome part of a trail: overall, and for each pack."""
    severity_of = {(pack["pack"], rule["id"]): rule["severity"]
                   for pack in packs for rule in pack["resolved"]["rules"]}
    set_aside = frozenset(each["id"] for each in dispensations if not each["counts_as_failed"])
    counts = counts_of(findings, severity_of, set_aside)
    word, exit_code = verdict(counts)
    return {"word": word, "exit_code": exit_code, "counts": counts,
            "packs": [_of_pack(pack, findings, severity_of, set_aside) for pack in packs]}


def _of_pack(pack: Mapping[str, Any], findings: Sequence[Finding],
             severity_of: Mapping[tuple[str, str], str], set_aside: frozenset[str],
             ) -> dict[str, Any]:
    own = [finding for finding in findings if finding["pack"] == pack["pack"]]
    counts = counts_of(own, severity_of, set_aside)
    outcome = {"pack": pack["pack"], "version": pack["version"], "word": verdict(counts)[0],
               "counts": counts}
    wanted = pack["resolved"].get("acceptance")
    if wanted is not None:
        severities = {rule["id"]: rule["severity"] for rule in pack["resolved"]["rules"]}
        outcome["acceptance"] = acceptance_of(wanted, own, severities, set_aside)
    return outcome


def prevailing(exit_codes: Iterable[int]) -> int:
    """Of the exit codes of several assessments the one the command ends with; 0 for none."""
    return min(exit_codes, key=EXIT_CODES.index, default=0)
