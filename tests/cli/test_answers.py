"""Questions of a pack and answers in the record: checked, in force or not, never overruling."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import Ran

RECORD = """\
format: installation-record/1
survey: {date: 2026-05-10}
batteries: []
runs: []
buses: [{id: main-bus, rating: 200 A}]
evidence:
  - {id: photo-1, kind: photograph, file: a.jpg}
"""
PACK = """\
format: rule-pack/1
pack: tried
version: 0.1.0
title: Asks
limits: {least: {value: 5 A, citation: {basis: house}}}
questions:
  - {id: tight, ask: Are the lugs tight?, answer: {enum: [yes, no]}}
  - {id: tried-out, ask: Was it tried?, answer: {type: boolean}, holds_for: 6 months}
  - {id: seen, ask: Was it seen?, answer: {type: [boolean, "null"]}, evidence: required}
  - {id: found, ask: How many?, answer: {type: integer, allOf: [{$ref: "#/$defs/few"}],
     $defs: {few: {maximum: 5}}}}
  - {id: checked-on, ask: When?, answer: {type: string, format: date}}
rules:
  - id: asks
    title: Asks
    about: vessel
    must_hold: HOLDS
    severity: warning
    citation: {basis: house}
    why: Because.
    recommendation: Look.
"""


@pytest.fixture
def asked(garboard: Callable[..., Ran]) -> Callable[..., Ran]:
    """Assesses one rule against a record with answers."""
    def ran(holds: str, answers: str, day: str = "2026-05-10") -> Ran:
        Path("tried.yaml").write_text(PACK.replace("HOLDS", holds), "utf-8")
        lines = "".join(f"  {line}\n" for line in answers.splitlines())
        Path("boat.yaml").write_text(f"{RECORD}answers:\n{lines}" if answers else RECORD, "utf-8")
        return garboard("assess", "boat.yaml", "--pack", "./tried.yaml", "--on", day)

    return ran


def came_out(ran: Ran) -> tuple[str, str | None]:
    (finding,) = ran.trail("boat.trail.json")["assessment"]["findings"]
    return finding["outcome"], finding["reason"]


TIGHT = 'answer.tight == "yes"'
OUTCOMES = [
    (TIGHT, "tight: {value: yes}", ("passed", None)),
    (TIGHT, "tight: {value: no}", ("failed", None)),
    (TIGHT, "", ("not assessed", "awaits answer")),
    (TIGHT, "tried/tight: {value: no}\ntight: {value: yes}", ("failed", None)),
    (TIGHT, "other/tight: {value: yes}", ("not assessed", "awaits answer")),
    (TIGHT, "tight: {value: yes, on: 2026-05-11}", ("not assessed", "awaits answer")),
    (TIGHT, "tight: {value: yes, until: 2026-05-10}", ("passed", None)),
    (TIGHT, "tight: {value: yes, until: 2026-05-09}", ("not assessed", "answer expired")),
    (TIGHT, "tight:\n- {value: yes, on: 2026-05-01}\n- {value: no, on: 2026-05-09}",
     ("failed", None)),
    (TIGHT, "tight:\n- {value: yes, on: 2026-05-01}\n- {value: no, on: 2026-05-12}",
     ("passed", None)),
    ("answer.tried-out", "tried-out: {value: yes, on: 2026-05-10}", ("passed", None)),
    ("answer.tried-out", "tried-out: {value: false, on: 2026-05-10}", ("failed", None)),
    ("answer.tried-out", "tried-out: {value: true, on: 2025-11-10}", ("passed", None)),
    ("answer.tried-out", "tried-out: {value: true, on: 2025-11-09}",
     ("not assessed", "answer expired")),
    ("answer.tried-out", "tried-out: {value: true, on: 2026-05-01, until: 2026-05-09}",
     ("not assessed", "answer expired")),
    ("answer.found <= 3", "found: {value: 3}", ("passed", None)),
    ("answer.found <= 3", "found: {value: 4}", ("failed", None)),
    ('answer.checked-on >= "2026-01-01"', "checked-on: {value: 2026-01-01}", ("passed", None)),
    ('answer.checked-on >= "2026-01-01"', "checked-on: {value: 2025-12-31}", ("failed", None)),
]


@pytest.mark.parametrize(("holds", "answers", "outcome"), OUTCOMES)
def test_outcomes(asked: Callable[..., Ran], holds: str, answers: str,
                  outcome: tuple[str, str | None]) -> None:
    ran = asked(holds, answers)
    assert ran.code != 3, ran.err
    assert came_out(ran) == outcome


@pytest.mark.parametrize(("answer", "outcome"), [
    ("seen: {value: true, evidence: [photo-1]}", ("passed", None)),
    ("seen: {value: true}", ("not assessed", "awaits answer")),
    ("seen: {value: null, evidence: [photo-1]}", ("not assessed", "not determinable")),
])
def test_evidence(asked: Callable[..., Ran], answer: str, outcome: tuple[str, str | None]) -> None:
    ran = asked("answer.seen", answer)
    assert ran.code != 3, ran.err
    assert came_out(ran) == outcome
    assert ("answer-without-evidence" in ran.err) is ("photo" not in answer)


@pytest.mark.parametrize(("answer", "place", "code"), [
    ("tight: {value: maybe}", "9:18", "schema-choice"),
    ("tight: {value: true}", "9:18", "schema-choice"),
    ("tight:\n- {value: yes}\n- {value: maybe, on: 2026-01-01}", "11:13", "schema-choice"),
    ("tight: {value: null}", "9:18", "schema-choice"),
    ("tried-out: {value: 3, on: 2026-05-10}", "9:22", "schema-type"),
    ("tried-out: {value: yes}", "9:14", "answer-day-missing"),
    ("found: {value: 6}", "9:18", "schema-range"),
    ("found: {value: 2.5}", "9:18", "schema-type"),
    ("checked-on: {value: last week}", "9:23", "date-unreadable"),
    ("tight: {value: yes, about: main-bus}", "9:30", "answer-about-one"),
])
def test_an_answer_of_another_kind_is_refused(asked: Callable[..., Ran], answer: str, place: str,
                                              code: str) -> None:
    ran = asked(TIGHT, answer)
    assert ran.code == 3
    assert f"boat.yaml:{place}: {code}: " in ran.err


def test_the_waiting_question_is_put_into_words(asked: Callable[..., Ran]) -> None:
    ran = asked(TIGHT, "")
    (finding,) = ran.trail("boat.trail.json")["assessment"]["findings"]
    assert [(each["path"], each["detail"]) for each in finding["missing"]] == [
        ("answer.tight", "Are the lugs tight?")]
    assert "Are the lugs tight?" in ran.out


def test_a_misspelt_answer_is_a_warning(asked: Callable[..., Ran]) -> None:
    ran = asked(TIGHT, "tigth: {value: yes}")
    assert "boat.yaml:9:3: warning: answer-not-asked" in ran.err


BUS = "all(b.rating >= least for b in record.buses)"


@pytest.mark.parametrize(("holds", "overrules"), [
    (f"{BUS} or {TIGHT}", True), (f"{TIGHT} or {BUS}", True), (f"not (not {BUS} and not {TIGHT})",
                                                               True),
    (f"true if {TIGHT} else {BUS}", True), (f"{TIGHT} if {TIGHT} else {BUS}", True),
    (f"any(b.rating >= least or {TIGHT} for b in record.buses)", True),
    (f"{BUS} and {TIGHT}", False), (TIGHT, False), (f"not ({TIGHT}) and {BUS}", False),
    (f"{BUS} if {TIGHT} else {BUS}", False), (f"{TIGHT} or answer.found <= 3", False),
    (f"({TIGHT} or {BUS}) and {BUS}", False),
    (f"{BUS} and answer.found <= count(record.buses)", False),
])
def test_an_answer_never_overrules(asked: Callable[..., Ran], holds: str, overrules: bool) -> None:
    ran = asked(f"'{holds}'", "tight: {value: yes}\nfound: {value: 1}")
    assert ("tried.yaml:17:" in ran.err and "answer-overrules" in ran.err) is overrules, ran.err
    assert (ran.code == 3) is overrules


@pytest.mark.parametrize(("holds_for", "answered", "last"), [
    ("1 day", "2026-02-28", "2026-03-01"), ("30 days", "2026-01-01", "2026-01-31"),
    ("1 month", "2026-01-31", "2026-02-28"), ("13 months", "2023-01-31", "2024-02-29"),
    ("1 year", "2024-02-29", "2025-02-28"), ("12 months", "2025-12-05", "2026-12-05"),
    ("2 years", "2026-07-01", "2028-07-01"),
])
def test_how_long_an_answer_holds(holds_for: str, answered: str, last: str) -> None:
    from datetime import date

    from garboard.packs import Question

    question = Question(id="q", ask="Q?", answer={}, holds_for=holds_for)
    assert question.last_day(date.fromisoformat(answered)) == date.fromisoformat(last)
