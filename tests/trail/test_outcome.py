"""Exit codes and overall words: every combination of what findings there can be."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from garboard.trail import (
    DOES_NOT_APPLY,
    DOES_NOT_MEET,
    MEETS,
    NOT_KNOWN,
    SEVERITIES,
    WORDS,
    outcome_of,
    prevailing,
)

PACK = {"pack": "p", "version": "1.0.0", "resolved": {
    "rules": [{"id": severity, "severity": severity} for severity in SEVERITIES]}}

#: Kinds of finding: outcome, reason, severity, dispensation.
KINDS: dict[str, tuple[str, str | None, str, str | None]] = {
    "error": ("not assessed", "calculation error", "notice", None),
    "failed": ("failed", None, "notice", None),
    "dispensed": ("failed", None, "warning", "agreed"),
    "dispensed danger": ("failed", None, "danger", "agreed but counts"),
    "open danger": ("not assessed", "not recorded", "danger", None),
    "open warning": ("not assessed", "within uncertainty", "warning", None),
    "open caution": ("not assessed", "awaits answer", "caution", None),
    "open notice": ("not assessed", "plugin unavailable", "notice", None),
    "passed": ("passed", None, "danger", None),
    "idle": ("not applicable", "condition false", "danger", None),
}
DISPENSATIONS = [{"id": "agreed", "counts_as_failed": False},
                 {"id": "agreed but counts", "counts_as_failed": True}]


def _findings(kinds: list[str]) -> list[dict[str, Any]]:
    made = []
    for kind in kinds:
        outcome, reason, severity, dispensation = KINDS[kind]
        made.append({"pack": "p", "rule": severity, "outcome": outcome, "reason": reason,
                     **({"dispensation": dispensation} if dispensation else {})})
    return made


def _expected(kinds: set[str]) -> tuple[str, int]:
    """The table of exit codes, in the order 4, 1, 2, 0, and the word that goes with each."""
    failed = kinds & {"failed", "dispensed danger"}
    if "error" in kinds:
        return (DOES_NOT_MEET if failed else NOT_KNOWN), 4
    if failed:
        return DOES_NOT_MEET, 1
    if kinds & {"open danger", "open warning"}:
        return NOT_KNOWN, 2
    if kinds & {"passed", "dispensed"}:
        return MEETS, 0
    return (NOT_KNOWN, 2) if kinds & {"open caution", "open notice"} else (DOES_NOT_APPLY, 2)


def test_every_combination_of_findings() -> None:
    wrong = []
    for present in product((False, True), repeat=len(KINDS)):
        kinds = [kind for kind, there in zip(KINDS, present, strict=True) if there]
        outcome = outcome_of(_findings(kinds), [PACK], DISPENSATIONS)
        if (outcome["word"], outcome["exit_code"]) != _expected(set(kinds)):
            wrong.append((kinds, outcome["word"], outcome["exit_code"]))
    assert wrong == []


CASES = [
    ([], DOES_NOT_APPLY, 2),
    (["idle"], DOES_NOT_APPLY, 2),
    (["passed"], MEETS, 0),
    (["passed", "open caution", "open notice"], MEETS, 0),
    (["open notice"], NOT_KNOWN, 2),
    (["passed", "open warning"], NOT_KNOWN, 2),
    (["passed", "open danger", "failed"], DOES_NOT_MEET, 1),
    (["passed", "error"], NOT_KNOWN, 4),
    (["failed", "error"], DOES_NOT_MEET, 4),
    (["passed", "dispensed"], MEETS, 0),
    (["passed", "dispensed danger"], DOES_NOT_MEET, 1),
]


@pytest.mark.parametrize(("kinds", "word", "code"), CASES)
def test_stated_cases(kinds: list[str], word: str, code: int) -> None:
    outcome = outcome_of(_findings(kinds), [PACK], DISPENSATIONS)
    assert (outcome["word"], outcome["exit_code"]) == (word, code)
    assert word in WORDS


def test_counts_add_up() -> None:
    kinds = list(KINDS) * 3
    counts = outcome_of(_findings(kinds), [PACK], DISPENSATIONS)["counts"]
    assert counts["findings"] == 30
    assert counts["applying"] == counts["passed"] + counts["failed"] + counts["not_assessed"] == 27
    assert counts["findings"] == counts["applying"] + counts["not_applicable"]
    assert sum(counts["failed_by_severity"].values()) == counts["failed"] == 9
    assert sum(counts["not_assessed_by_severity"].values()) == counts["not_assessed"] == 15
    assert counts["dispensed"] == 3
    assert counts["calculation_errors"] == 3


def test_each_pack_has_its_own_word() -> None:
    other = {**PACK, "pack": "q"}
    findings = [*_findings(["passed"]), *({**each, "pack": "q"} for each in _findings(["idle"]))]
    outcome = outcome_of(findings, [PACK, other])
    assert [part["word"] for part in outcome["packs"]] == [MEETS, DOES_NOT_APPLY]
    assert (outcome["word"], outcome["exit_code"]) == (MEETS, 0)


@pytest.mark.parametrize(("codes", "one"), [
    ([], 0), ([0, 0], 0), ([0, 2], 2), ([2, 1, 0], 1), ([1, 4, 2], 4), ([4, 3, 1], 3), ([2, 2], 2),
])
def test_the_prevailing_exit_code(codes: list[int], one: int) -> None:
    assert prevailing(codes) == one
