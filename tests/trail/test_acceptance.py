"""Accepted, referred or declined: the table of acceptance against the findings of a pack."""

from __future__ import annotations

from typing import Any

import pytest

from garboard.trail.acceptance import acceptance_of

SEVERITY = {"must": "danger", "other": "warning", "small": "notice"}
WANTED: dict[str, Any] = {
    "must_have_passed": ["must"],
    "declined_when": [{"says": "A danger fails", "outcome": "failed", "severity": ["danger"],
                       "rules": [], "at_least": 1}],
    "referred_when": [
        {"says": "Two small things fail", "outcome": "failed", "severity": [], "rules": ["small"],
         "at_least": 2},
        {"says": "Something is dispensed with", "outcome": "dispensed", "severity": ["warning"],
         "rules": [], "at_least": 1}],
}
PASSED, FAILED, OPEN, IDLE = "passed", "failed", "not assessed", "not applicable"
MUST, UNSPOKEN = "A rule that must have passed has not: must", (
    "Something failed or is open that no condition speaks of")
DONE = "The rules that must have passed have"


def findings(*each: tuple[str, str] | tuple[str, str, str]) -> list[dict[str, Any]]:
    return [{"id": f"p/{rule}/{number}", "rule": rule, "outcome": outcome,
             "dispensation": rest[0] if rest else None}
            for number, (rule, outcome, *rest) in enumerate(each)]


@pytest.mark.parametrize(("given", "word", "decided"), [
    ([("must", PASSED)], "accepted", [(DONE, [0])]),
    ([("must", PASSED), ("must", IDLE), ("must", PASSED)], "accepted", [(DONE, [0, 2])]),
    ([], "referred", [(MUST, [])]),
    ([("must", IDLE)], "referred", [(MUST, [0])]),
    ([("other", PASSED)], "referred", [(MUST, [])]),
    ([("must", PASSED), ("must", OPEN)], "referred", [(MUST, [1]), (UNSPOKEN, [1])]),
    ([("must", PASSED), ("must", FAILED)], "declined", [("A danger fails", [1])]),
    ([("must", FAILED), ("small", FAILED), ("small", FAILED)], "declined",
     [("A danger fails", [0])]),
    ([("must", PASSED), ("must", FAILED, "counts")], "declined", [("A danger fails", [1])]),
    ([("must", PASSED), ("must", FAILED, "aside")], "referred", [(MUST, [1])]),
    ([("must", PASSED), ("other", FAILED)], "referred", [(UNSPOKEN, [1])]),
    ([("must", PASSED), ("other", OPEN)], "referred", [(UNSPOKEN, [1])]),
    ([("must", PASSED), ("other", FAILED, "aside")], "referred",
     [("Something is dispensed with", [1])]),
    ([("must", PASSED), ("small", FAILED)], "accepted", [(DONE, [0])]),
    ([("must", PASSED), ("small", FAILED), ("small", FAILED)], "referred",
     [("Two small things fail", [1, 2])]),
    ([("must", PASSED), ("small", OPEN)], "accepted", [(DONE, [0])]),
    ([("must", PASSED), ("other", IDLE), ("other", PASSED)], "accepted", [(DONE, [0])]),
])
def test_acceptance(given: list[Any], word: str, decided: list[tuple[str, list[int]]]) -> None:
    rows = findings(*given)
    found = acceptance_of(WANTED, rows, SEVERITY, frozenset({"aside"}))
    assert found["word"] == word
    assert found["decided_by"] == [{"says": says, "findings": [rows[each]["id"] for each in which]}
                                   for says, which in decided]


def test_nothing_is_accepted_on_silence() -> None:
    """Without a passed finding of a named rule, whatever else there is, it is not accepted."""
    outcomes = (PASSED, FAILED, OPEN, IDLE)
    for must in (FAILED, OPEN, IDLE, None):
        for other in outcomes:
            for small in outcomes:
                rows = findings(*([("must", must)] if must else []), ("other", other),
                                ("small", small))
                for wanted in (WANTED, {**WANTED, "declined_when": [], "referred_when": []}):
                    assert acceptance_of(wanted, rows, SEVERITY, frozenset())["word"] != "accepted"
