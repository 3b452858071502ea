"""From condition and requirement to outcome: the tables, row by row."""

from __future__ import annotations

import datetime
import pickle
from typing import Any

import pytest

from expressions.small_boat import outcome, program
from garboard.expressions import (
    CONDITION_FALSE,
    FAILED,
    NONE_ABOARD,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PASSED,
    Program,
    reason_of,
)
from garboard.values import (
    AWAITS_ANSWER,
    CALCULATION_ERROR,
    CONFLICT,
    NOT_DETERMINABLE,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    Unknown,
)

MISSING = Unknown.because(NOT_RECORDED, "it.heated")
ASKED = Unknown.because(NOT_DETERMINABLE, "it.covered")
BROKEN = Unknown.because(CALCULATION_ERROR, detail="battery.x of it: boom")


# a condition and a requirement -------------------------------------------------------------------
@pytest.mark.parametrize(("applies", "holds", "expected", "reason"), [
    (True, True, PASSED, None),
    (True, False, FAILED, None),
    (True, ASKED, NOT_ASSESSED, NOT_DETERMINABLE),
    (False, True, NOT_APPLICABLE, CONDITION_FALSE),
    (False, False, NOT_APPLICABLE, CONDITION_FALSE),
    (False, ASKED, NOT_APPLICABLE, CONDITION_FALSE),
    (False, BROKEN, NOT_APPLICABLE, CONDITION_FALSE),
    (MISSING, True, NOT_ASSESSED, NOT_RECORDED),
    (MISSING, False, NOT_ASSESSED, NOT_RECORDED),
    (MISSING, ASKED, NOT_ASSESSED, NOT_RECORDED),
    (BROKEN, True, NOT_ASSESSED, CALCULATION_ERROR),
    (True, BROKEN, NOT_ASSESSED, CALCULATION_ERROR),
])
def test_condition_and_requirement(applies: Any, holds: Any, expected: str,
                                   reason: str | None) -> None:
    row = outcome("battery.covered", {"heated": applies, "covered": holds}, "battery.heated")
    assert (row[0], row[1], row[2], reason_of(row)) == (0, "it", expected, reason)
    assert (row[3] is None) == (expected != NOT_ASSESSED)
    assert len(row[4]) == (2 if applies is True else 1)


@pytest.mark.parametrize(("things", "expected", "reason", "paths"), [
    (None, NOT_ASSESSED, NOT_RECORDED, ("batteries",)),
    ([], NOT_APPLICABLE, NONE_ABOARD, ()),
    ((), NOT_APPLICABLE, NONE_ABOARD, ()),
    (Unknown.because(CONFLICT, "runs"), NOT_ASSESSED, CONFLICT, ("runs",)),
])
def test_a_subject_without_items_gives_one_row_per_rule(things: Any, expected: str, reason: str,
                                                        paths: tuple[str, ...]) -> None:
    rows = program("battery.heated", ("battery.heated", "battery.covered")).run({"battery": things})
    assert [row[:3] for row in rows] == [(0, None, expected), (1, None, expected)]
    assert [reason_of(row) for row in rows] == [reason, reason]
    assert all((() if row[3] is None else row[3].paths) == paths for row in rows)
    assert all(row[4:] == ((), ()) for row in rows)


def test_a_subject_that_is_not_mentioned_is_not_recorded() -> None:
    (row,) = program("battery.heated").run({})
    assert (row[2], reason_of(row)) == (NOT_ASSESSED, NOT_RECORDED)


def test_rows_stand_by_subject_then_item_then_rule() -> None:
    mixed = program("battery.heated", "battery.covered")
    things = [{"id": name, "heated": True, "covered": False} for name in ("b", "a")]
    assert [row[:3] for row in mixed.run({"battery": things})] == [
        (0, "b", PASSED), (1, "b", FAILED), (0, "a", PASSED), (1, "a", FAILED)]


# logic -------------------------------------------------------------------------------------------
T, F, U = True, False, MISSING
KLEENE = [
    ("battery.heated and battery.covered", {
        (T, T): T, (T, F): F, (T, U): U, (F, T): F, (F, F): F, (F, U): F, (U, T): U, (U, F): F,
        (U, U): U}),
    ("battery.heated or battery.covered", {
        (T, T): T, (T, F): T, (T, U): T, (F, T): T, (F, F): F, (F, U): U, (U, T): T, (U, F): U,
        (U, U): U}),
    ("not battery.heated", {(T, T): F, (F, T): T, (U, T): U}),
    ("battery.heated == battery.covered", {
        (T, T): T, (T, F): F, (T, U): U, (F, F): T, (F, U): U, (U, T): U, (U, U): U}),
    ("battery.heated != battery.covered", {
        (T, T): F, (T, F): T, (T, U): U, (F, F): F, (F, U): U, (U, T): U, (U, U): U}),
]
WORD = {True: PASSED, False: FAILED}


@pytest.mark.parametrize(("text", "one", "other", "expected"), [
    (text, one, other, expected) for text, table in KLEENE
    for (one, other), expected in table.items()])
def test_logic(text: str, one: Any, other: Any, expected: Any) -> None:
    row = outcome(text, {"heated": one, "covered": other})
    assert row[2] == (NOT_ASSESSED if isinstance(expected, Unknown) else WORD[expected])


@pytest.mark.parametrize("text", [
    "battery.heated and battery.covered", "battery.covered and battery.heated",
    "battery.heated or battery.covered", "battery.covered or battery.heated",
    "not battery.covered", "(battery.heated if battery.covered else battery.heated)",
    "(battery.covered if battery.heated else battery.heated)",
])
@pytest.mark.parametrize("other", [True, False, MISSING])
def test_a_calculation_error_is_never_absorbed(text: str, other: Any) -> None:
    row = outcome(text, {"heated": other, "covered": BROKEN})
    assert reason_of(row) == CALCULATION_ERROR
    assert row[3] is not None and row[3].causes == BROKEN.causes


@pytest.mark.parametrize("text", [
    "battery.label == 'x'", "battery.label != 'x'", "battery.label in ('x', 'y')",
    "battery.label not in ('x', 'y')", "battery.chemistry in lithium", "battery.age == 1",
    "battery.age in (1, 2)", "battery.age not in (1, 2)", "battery.fitted == '2026-01-01'",
    "battery.fitted not in ('2026-01-01',)", "battery.voltage != highest",
])
def test_an_equation_with_an_unknown_side_is_unknown(text: str) -> None:
    nothing = {name: Unknown.because(NOT_RECORDED, f"it.{name}")
               for name in ("label", "chemistry", "age", "fitted", "voltage")}
    row = outcome(text, nothing)
    assert reason_of(row) == NOT_RECORDED and len(row[3].paths) == 1  # type: ignore[union-attr]


def test_the_worst_reason_is_named_and_every_path_kept() -> None:
    row = outcome("battery.heated and battery.covered", {"heated": MISSING, "covered": ASKED})
    assert reason_of(row) == NOT_DETERMINABLE
    assert row[3] is not None and row[3].paths == ("it.covered", "it.heated")


def _bank(*batteries: dict[str, Any]) -> dict[str, Any]:
    return {"bank": {"id": "bank-it", "batteries": batteries}}


@pytest.mark.parametrize(("function", "heated", "expected"), [
    ("all", (), PASSED), ("all", (T, T), PASSED), ("all", (T, F), FAILED), ("all", (U, F), FAILED),
    ("all", (T, U), NOT_ASSESSED), ("any", (), FAILED), ("any", (F, F), FAILED),
    ("any", (F, T), PASSED), ("any", (U, T), PASSED), ("any", (F, U), NOT_ASSESSED),
])
def test_all_and_any(function: str, heated: tuple[Any, ...], expected: str) -> None:
    batteries = [{"id": f"b{place}", "heated": each} for place, each in enumerate(heated)]
    row = outcome(f"{function}(b.heated for b in battery.bank.batteries)", _bank(*batteries))
    assert row[2] == expected


@pytest.mark.parametrize("text", [
    "all(b.heated for b in battery.bank.batteries)",
    "any(b.heated for b in battery.bank.batteries)",
    "count(battery.bank.batteries) >= 0",
    "count(b for b in battery.bank.batteries if b.heated) >= 0",
    "sum(b.age for b in battery.bank.batteries) >= 0",
    "min(b.age for b in battery.bank.batteries) >= 0",
])
@pytest.mark.parametrize("broken", [False, True])
def test_an_absent_list_is_unknown(text: str, broken: bool) -> None:
    why = Unknown.because(CALCULATION_ERROR if broken else NOT_RECORDED, "bank-it.batteries")
    row = outcome(text, {"bank": {"id": "bank-it", "batteries": why}})
    assert row[3] is not None and row[3].same_as(why)


# arithmetic --------------------------------------------------------------------------------------
@pytest.mark.parametrize(("text", "detail"), [
    ("1 / battery.state > 1", "division by zero"),
    ("battery.state / battery.state > 1", "division by zero"),
    ("battery.age / battery.cells > 1", "division by zero"),
    ("sqrt(battery.state - 1) > 1", "square root of a negative number"),
    ("1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 > 1", "overflow"),
    ("1 / (1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30 * 1e30) < 1",
     "overflow"),
    ("min(b.age for b in battery.bank.batteries) > 1", "least or greatest of nothing"),
])
def test_what_cannot_be_computed_is_unknown(text: str, detail: str) -> None:
    item = {"state": 0.0, "age": 1, "cells": 0, **_bank()}
    row = outcome(text, item)
    assert row[3] is not None
    assert [(cause.reason, cause.detail) for cause in row[3].causes] == [(OUTSIDE_METHOD, detail)]


def test_what_cannot_be_computed_may_be_absorbed() -> None:
    assert outcome("1 / battery.state > 1 or true", {"state": 0.0})[2] == PASSED
    assert outcome("battery.state > 0 and 1 / battery.state > 1", {"state": 0.0})[2] == FAILED


@pytest.mark.parametrize(("value", "sign", "expected"), [
    (14.6, "<=", PASSED), (14.6, ">=", PASSED), (14.6, "<", FAILED), (14.6, ">", FAILED),
    (14.6, "==", PASSED), (14.6, "!=", FAILED), (14.600001, "<=", FAILED), (14.599999, ">=",
                                                                            FAILED),
])
def test_a_limit_met_exactly_passes(value: float, sign: str, expected: str) -> None:
    assert outcome(f"battery.voltage {sign} highest", {"voltage": value})[2] == expected


def test_a_sum_is_rounded_once() -> None:
    tenths = [{"id": f"b{place}", "state": 0.1} for place in range(10)]
    assert outcome("sum(b.state for b in battery.bank.batteries) == 1", _bank(*tenths))[2] == PASSED


# collections with doubtful members ---------------------------------------------------------------
def _doubtful() -> dict[str, Any]:
    return _bank({"id": "b0", "heated": True, "age": 5, "state": 0.5},
                 {"id": "b1", "heated": Unknown.because(NOT_RECORDED, "b1.heated"), "age": 3,
                  "state": 0.25},
                 {"id": "b2", "heated": False, "age": Unknown.because(NOT_RECORDED, "b2.age"),
                  "state": Unknown.because(NOT_RECORDED, "b2.state")})


@pytest.mark.parametrize(("what", "lowest", "highest"), [
    ("count(b for b in battery.bank.batteries if b.heated)", 1, 2),
    ("sum(b.age for b in battery.bank.batteries if b.heated)", 5, 8),
    ("sum(b.state for b in battery.bank.batteries if b.heated)", 0.5, 0.75),
    ("min(b.age for b in battery.bank.batteries if b.heated)", 3, 5),
    ("max(b.state for b in battery.bank.batteries if b.heated)", 0.5, 0.5),
])
def test_a_doubtful_member_leaves_bounds(what: str, lowest: float, highest: float) -> None:
    """The one left out does not count, although nothing is known of it."""
    for sign, limit, expected in ((">=", lowest, PASSED), ("<", lowest, FAILED),
                                  ("<=", highest, PASSED), (">", highest, FAILED)):
        assert outcome(f"{what} {sign} {limit}", _doubtful())[2] == expected
    if lowest != highest:
        row = outcome(f"{what} == {lowest}", _doubtful())
        assert row[3] is not None and row[3].paths == ("b1.heated",)


# things that are not there -----------------------------------------------------------------------
@pytest.mark.parametrize(("text", "device", "expected"), [
    ("exists(battery.own_device)", None, FAILED),
    ("exists(battery.own_device)", {"id": "f1"}, PASSED),
    ("exists(battery.own_device)", MISSING, NOT_ASSESSED),
    ("exists(battery.own_device.place)", None, FAILED),
    ("exists(battery.own_device.place)", {"id": "f1", "place": None}, FAILED),
    ("exists(battery.own_device.place)", {"id": "f1", "place": {"id": "locker"}}, PASSED),
    ("exists(battery.own_device.place)", MISSING, NOT_ASSESSED),
    ("exists(battery.own_device) and battery.own_device.rating >= least_current", None, FAILED),
    ("not exists(battery.own_device) or battery.own_device.rating >= least_current", None, PASSED),
    ("battery.own_device.rating >= least_current", None, NOT_ASSESSED),
    ("battery.own_device.place.temperature.high <= hottest", {"id": "f1", "place": None},
     NOT_ASSESSED),
    ("count(battery.own_device.breaks) >= 1", None, NOT_ASSESSED),
    ("count(battery.own_device.breaks) >= 1", {"id": "f1", "breaks": None}, NOT_ASSESSED),
])
def test_a_thing_that_may_be_missing(text: str, device: Any, expected: str) -> None:
    assert outcome(text, {"own_device": device})[2] == expected


def test_what_would_be_read_of_nothing_is_outside_the_method() -> None:
    row = outcome("battery.own_device.rating >= least_current", {"own_device": None})
    assert row[3] is not None
    (cause,) = row[3].causes
    assert (cause.reason, cause.path, cause.detail) == (
        OUTSIDE_METHOD, "it.own_device", "there is none")


# single things, answers, dates -------------------------------------------------------------------
def test_single_things_are_in_scope_everywhere() -> None:
    subjects = {"record": [{"id": "record", "has_lithium": True}],
                "vessel": [{"id": "vessel", "fuel": "petrol", "length": 9.5}]}
    row = outcome("record.has_lithium and vessel.fuel == 'petrol'", {}, subjects=subjects)
    assert (row[2], row[4]) == (PASSED, (True, "petrol", "petrol"))
    (row,) = program("record.has_lithium", about="record").run(subjects)
    assert row[:3] == (0, "record", PASSED)


@pytest.mark.parametrize("vessel", [None, [], ()])
def test_a_single_thing_that_is_missing_is_not_recorded(vessel: Any) -> None:
    row = outcome("vessel.fuel == 'petrol'", {}, subjects={"vessel": vessel})
    assert row[3] is not None and (row[3].reason, row[3].paths) == (NOT_RECORDED, ("vessel",))


def test_an_answer_is_awaited_until_it_is_there() -> None:
    compiled = program("answer.vent-clear", "answer.2nd-look - 1 >= 1",
                       "answer.checked-on >= '2026-04-18'")
    things = {"battery": [{"id": "it"}]}
    rows = compiled.run(things)
    assert [reason_of(row) for row in rows] == [AWAITS_ANSWER] * 3
    assert rows[0][3] is not None and rows[0][3].paths == ("answer.vent-clear",)
    rows = compiled.run(things, answers={"vent-clear": True, "2nd-look": 1,
                                         "checked-on": datetime.date(2026, 4, 18)})
    assert [row[2] for row in rows] == [PASSED, FAILED, PASSED]


@pytest.mark.parametrize(("text", "expected"), [
    ("battery.fitted < '2026-04-18'", PASSED), ("'2026-04-17' == battery.fitted", PASSED),
    ("battery.fitted in ('2026-04-16', '2026-04-17')", PASSED),
    ("'2026-04-01' <= battery.fitted <= '2026-04-10'", FAILED),
])
def test_dates(text: str, expected: str) -> None:
    assert outcome(text, {"fitted": datetime.date(2026, 4, 17)})[2] == expected


def test_a_list_of_one_may_stand_in_plain_brackets() -> None:
    assert outcome("battery.chemistry in ('LFP')", {"chemistry": "LFP"})[2] == PASSED
    assert outcome("battery.chemistry in ('LFP')", {"chemistry": "AGM"})[2] == FAILED


def test_numbers_before_a_minus_sign_in_lists() -> None:
    assert outcome("battery.age - 3 in (-2, -1)", {"age": 2})[2] == PASSED


# failures ----------------------------------------------------------------------------------------
class Failing(dict[str, Any]):
    """A thing whose ``age`` cannot be computed."""

    def __missing__(self, name: str) -> object:
        raise ArithmeticError(f"no {name} of {self['id']}")


def test_one_failure_leaves_all_other_rows_alone() -> None:
    compiled = program("battery.heated", "battery.age > 1", "battery.covered",
                       ("battery.age > 2", "battery.heated"), ("not battery.heated",
                                                               "battery.age > 1"))
    things = [Failing(id="bad", heated=True, covered=False),
              Failing(id="good", heated=True, covered=False, age=5)]
    rows = {(row[1], row[0]): row for row in compiled.run({"battery": things})}
    assert len(rows) == 10
    assert [rows["bad", place][2] for place in range(5)] == [
        PASSED, NOT_ASSESSED, FAILED, NOT_ASSESSED, NOT_APPLICABLE]
    assert [rows["good", place][2] for place in range(5)] == [
        PASSED, PASSED, FAILED, PASSED, NOT_APPLICABLE]
    failed = rows["bad", 1][3]
    assert failed is not None
    assert [(cause.reason, cause.detail) for cause in failed.causes] == [
        (CALCULATION_ERROR, "ArithmeticError: no age of bad")]
    assert rows["bad", 1][4] == ()


@pytest.mark.parametrize(("name", "value"), [
    ("heated", "yes"), ("heated", 1), ("age", 2.5), ("age", True), ("age", "3"), ("voltage",
                                                                                  "14 V"),
    ("voltage", True), ("voltage", [14.0]), ("label", 5), ("label", b"x"), ("fitted", "2026-01-01"),
    ("bank", "bank-1"), ("bank", 7),
])
def test_a_value_of_the_wrong_kind_is_a_failure_not_an_answer(name: str, value: Any) -> None:
    text = {"heated": "battery.heated", "age": "battery.age >= 0", "voltage":
            "battery.voltage != highest", "label": "battery.label != 'x'", "fitted":
            "battery.fitted != '2026-02-02'", "bank": "count(battery.bank.batteries) >= 0"}[name]
    row = outcome(text, {name: value})
    assert reason_of(row) == CALCULATION_ERROR


@pytest.mark.parametrize("text", [
    "battery.label != 'x'", "battery.heated != true", "battery.voltage != highest",
    "battery.fitted != '2026-02-02'", "battery.age != 3", "not battery.heated",
])
def test_nothing_at_all_is_never_an_answer(text: str) -> None:
    row = outcome(text, dict.fromkeys(("label", "heated", "voltage", "fitted", "age")))
    assert reason_of(row) == NOT_RECORDED


# programs ----------------------------------------------------------------------------------------
def test_a_program_survives_pickling() -> None:
    compiled = program("battery.voltage <= highest", ("battery.heated", "battery.covered"))
    again: Program = pickle.loads(pickle.dumps(compiled))
    things = {"battery": [{"id": "it", "voltage": 14.6, "heated": True, "covered": False}]}
    assert again.run(things) == compiled.run(things)
    assert again.traces == compiled.traces


def test_no_word_of_an_author_is_in_the_generated_source() -> None:
    secret = "zebra"
    compiled = program(f"battery.label == '{secret}' and battery.label in ('{secret}',)",
                       (f"battery.label != '{secret}'",
                        f"all({secret}.heated for {secret} in battery.bank.batteries)"))
    assert secret not in compiled.python
    assert "heated" not in compiled.python and "battery" not in compiled.python


def test_a_rule_cannot_be_made_without_the_values_of_its_limits() -> None:
    from garboard.expressions import RuleSource

    good = program("battery.voltage <= highest").sources[0]
    with pytest.raises(ValueError, match="highest"):
        RuleSource("r", good.must_hold, None, {})
    with pytest.raises(ValueError, match="about"):
        RuleSource("r", good.must_hold, program("bank.energy == bank.energy", about="bank")
                   .sources[0].must_hold, good.limits)
