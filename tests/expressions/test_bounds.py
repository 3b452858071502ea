"""Bounds: never an outcome that a point inside contradicts; the decision rules; assumptions."""

from __future__ import annotations

import random
from typing import Any

import pytest

from expressions import drawn
from expressions.small_boat import AMOUNTS, outcome, program
from expressions.test_unknowns import compiled
from garboard.expressions import (
    FAILED,
    GUARDED,
    INSIDE_UNCERTAINTY,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    ON_ASSUMPTION,
    PASSED,
    SIMPLE,
    Decision,
    reason_of,
)
from garboard.values import (
    ASSUMPTION,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    TOLERANCE,
    UNRECORDED,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
)

LIMIT = AMOUNTS["highest"]


@pytest.mark.parametrize("seed", range(10))
def test_no_point_inside_contradicts_an_outcome(seed: int) -> None:
    draws, draw = random.Random(seed), drawn.Draw(8000 + seed)
    decided = 0
    for number in range(30):
        text = draw.truth(depth=1 + number % 4)
        rule = compiled(text, drawn.VOCABULARY)
        item = drawn.thing(draws)
        spread = _spread(draws, item)
        rows = rule.run({"thing": [spread, *(_point(draws, spread) for _ in range(25))]})
        if rows[0][2] != NOT_ASSESSED:
            decided += 1
            assert {row[2] for row in rows[1:]} <= {rows[0][2], NOT_ASSESSED}, text
    assert decided > 5


def _spread(draws: random.Random, item: dict[str, Any]) -> dict[str, Any]:
    """The thing with bounds around most of its figures."""
    def value(name: str, figure: Any) -> Any:
        if name not in ("x", "y", "z.low") or draws.random() < 0.3:
            return figure
        return Bounds(figure - draws.choice((0.0, 0.2, 2.0)), figure + draws.choice((0.1, 1.0)),
                      figure)
    return _mapped(item, value)


def _point(draws: random.Random, item: dict[str, Any]) -> dict[str, Any]:
    """The thing with a figure from inside its bounds, ends not seldom."""
    def value(_: str, figure: Any) -> Any:
        if not isinstance(figure, Bounds):
            return figure
        return draws.choice((figure.lo, figure.hi, figure.nominal,
                             draws.uniform(figure.lo, figure.hi)))
    return _mapped(item, value)


def _mapped(item: dict[str, Any], value: Any) -> dict[str, Any]:
    plain = {name: value(name, each) for name, each in item.items()}
    plain["parts"] = tuple(_mapped(part, value) for part in item["parts"])
    if "partner" in item:
        plain["partner"] = _mapped(item["partner"], value)
    return plain


# the table of the decision rules -----------------------------------------------------------------
def tolerance(lo: float, hi: float, nominal: float) -> Bounds:
    return Bounds(lo, hi, nominal, basis=(TOLERANCE,))


def assumed(lo: float, hi: float) -> Bounds:
    return Bounds(lo, hi, basis=(ASSUMPTION,), causes=(Cause(NOT_RECORDED, "it.voltage"),))


def unrecorded(lo: float, hi: float) -> Bounds:
    return Bounds(lo, hi, basis=(UNRECORDED,), causes=(Cause(NOT_RECORDED, "it.voltage"),))


@pytest.mark.parametrize("decision", [GUARDED, SIMPLE])
@pytest.mark.parametrize(("value", "guarded", "simple", "flags"), [
    (tolerance(14.0, 14.5, 14.2), PASSED, PASSED, ()),
    (tolerance(14.0, 14.6, 14.2), PASSED, PASSED, ()),          # an end on the limit passes
    (tolerance(14.7, 15.0, 14.8), FAILED, FAILED, ()),
    (tolerance(14.6, 15.0, 14.8), NOT_ASSESSED, FAILED, (INSIDE_UNCERTAINTY,)),
    (tolerance(14.0, 15.0, 14.5), NOT_ASSESSED, PASSED, (INSIDE_UNCERTAINTY,)),
    (tolerance(14.0, 15.0, 14.6), NOT_ASSESSED, PASSED, (INSIDE_UNCERTAINTY,)),
    (tolerance(14.0, 15.0, 14.7), NOT_ASSESSED, FAILED, (INSIDE_UNCERTAINTY,)),
    (assumed(14.0, 15.0), NOT_ASSESSED, NOT_ASSESSED, ()),
    (assumed(14.0, 14.5), PASSED, PASSED, (ON_ASSUMPTION,)),
    (assumed(14.7, 15.0), FAILED, FAILED, (ON_ASSUMPTION,)),
    (assumed(14.6, 14.6), PASSED, PASSED, (ON_ASSUMPTION,)),
    (unrecorded(14.0, 15.0), NOT_ASSESSED, NOT_ASSESSED, ()),
    (unrecorded(0.0, 14.0), PASSED, PASSED, ()),
    (unrecorded(15.0, float("inf")), FAILED, FAILED, ()),
    (unrecorded(0.0, float("inf")), NOT_ASSESSED, NOT_ASSESSED, ()),
])
def test_an_upper_limit(value: Bounds, guarded: str, simple: str, flags: tuple[str, ...],
                        decision: Decision) -> None:
    row = outcome("battery.voltage <= highest", {"voltage": value}, decision=decision)
    expected = guarded if decision == GUARDED else simple
    assert row[2] == expected
    if expected == NOT_ASSESSED:
        assert row[5] == ()
        assert reason_of(row) == (NOT_RECORDED if value.causes[0].path else WITHIN_UNCERTAINTY)
    else:
        assert row[5] == (flags if guarded == expected or decision == SIMPLE else ())
    # the operands stay what they are: bounds are not replaced by their nominal figure
    assert row[4][0].same_as(value) and row[4][1] == LIMIT


@pytest.mark.parametrize(("value", "guarded", "simple"), [
    (tolerance(14.6, 15.0, 14.8), PASSED, PASSED),
    (tolerance(14.0, 14.5, 14.2), FAILED, FAILED),
    (tolerance(14.0, 15.0, 14.6), NOT_ASSESSED, PASSED),
    (tolerance(14.0, 15.0, 14.5), NOT_ASSESSED, FAILED),
])
def test_a_lower_limit_is_the_mirror(value: Bounds, guarded: str, simple: str) -> None:
    for decision, expected in ((GUARDED, guarded), (SIMPLE, simple)):
        row = outcome("battery.voltage >= highest", {"voltage": value}, decision=decision)
        assert row[2] == expected
        assert row[5] == ((INSIDE_UNCERTAINTY,) if guarded != expected else ())


def test_figures_worked_out_of_bounds_are_collapsed_with_them() -> None:
    item = {"voltage": tolerance(14.0, 15.0, 14.5), "charge.voltage_max": tolerance(0.0, 0.2, 0.1)}
    text = "battery.voltage + battery.charge.voltage_max <= highest"
    assert outcome(text, item)[2] == NOT_ASSESSED
    row = outcome(text, item, decision=SIMPLE)
    assert (row[2], row[5]) == (PASSED, (INSIDE_UNCERTAINTY,))


def test_a_condition_can_be_inside_the_uncertainty_too() -> None:
    item = {"voltage": tolerance(14.0, 15.0, 14.7), "heated": True}
    row = outcome("battery.heated", item, "battery.voltage <= highest", decision=SIMPLE)
    assert (row[2], row[5]) == (NOT_APPLICABLE, (INSIDE_UNCERTAINTY,))
    item["voltage"] = tolerance(14.0, 15.0, 14.5)
    row = outcome("battery.heated", item, "battery.voltage <= highest", decision=SIMPLE)
    assert (row[2], row[5], len(row[4])) == (PASSED, (INSIDE_UNCERTAINTY,), 3)


def test_a_nominal_figure_does_not_make_a_missing_one_known() -> None:
    item = {"voltage": tolerance(14.0, 15.0, 14.5),
            "heated": Unknown.because(NOT_RECORDED, "it.heated")}
    row = outcome("battery.voltage <= highest and battery.heated", item, decision=SIMPLE)
    assert (row[2], row[5]) == (NOT_ASSESSED, ())
    assert row[3] is not None and row[3].paths == ("it.heated",)


@pytest.mark.parametrize(("text", "flags"), [
    ("battery.voltage <= highest", (ON_ASSUMPTION,)),
    ("battery.voltage <= highest and battery.heated", (ON_ASSUMPTION,)),
    ("battery.voltage <= highest or battery.heated", ()),     # true without the assumption
    ("battery.voltage > highest or battery.heated", ()),
    ("battery.voltage <= highest or not battery.heated", (ON_ASSUMPTION,)),
    ("battery.heated", ()),
    ("battery.voltage * 2 <= highest * 2", (ON_ASSUMPTION,)),
    ("(1 if battery.voltage <= highest else 2) == 1", (ON_ASSUMPTION,)),
    ("(1 if battery.voltage <= highest else 1) == 1", ()),
    ("all(b.voltage <= highest for b in battery.bank.batteries)", (ON_ASSUMPTION,)),
    ("count(b for b in battery.bank.batteries if b.voltage <= highest) == 1", (ON_ASSUMPTION,)),
    ("any(b.heated for b in battery.bank.batteries if b.voltage <= highest)", (ON_ASSUMPTION,)),
    ("max(b.voltage for b in battery.bank.batteries) <= highest", (ON_ASSUMPTION,)),
])
def test_the_flag_stands_where_an_assumption_decides(text: str, flags: tuple[str, ...]) -> None:
    item: dict[str, Any] = {"voltage": assumed(14.0, 14.5), "heated": True, "id": "it"}
    item["bank"] = {"id": "bank-it", "batteries": (item,)}
    row = outcome(text, item)
    assert (row[2], row[5]) == (PASSED, flags)


def test_a_rule_that_fails_or_does_not_apply_can_rest_on_an_assumption() -> None:
    item = {"voltage": assumed(14.0, 14.5), "heated": False}
    row = outcome("battery.heated and battery.voltage <= highest", item)
    assert (row[2], row[5]) == (FAILED, ())
    row = outcome("battery.voltage > highest", item)
    assert (row[2], row[5]) == (FAILED, (ON_ASSUMPTION,))
    row = outcome("battery.heated", item, "battery.voltage > highest")
    assert (row[2], row[5]) == (NOT_APPLICABLE, (ON_ASSUMPTION,))


def test_both_flags_can_stand_together() -> None:
    item = {"voltage": tolerance(14.0, 15.0, 14.5), "charge.voltage_max": assumed(14.0, 14.5)}
    row = outcome("battery.voltage <= highest and battery.charge.voltage_max <= highest", item,
                  decision=SIMPLE)
    assert (row[2], row[5]) == (PASSED, (INSIDE_UNCERTAINTY, ON_ASSUMPTION))


def test_an_assumption_about_one_item_leaves_the_others_alone() -> None:
    rows = program("battery.voltage <= highest", "battery.heated").run({"battery": [
        {"id": "one", "voltage": assumed(14.0, 14.5), "heated": True},
        {"id": "two", "voltage": 14.0, "heated": True}]})
    assert [(row[1], row[0], row[5]) for row in rows] == [
        ("one", 0, (ON_ASSUMPTION,)), ("one", 1, ()), ("two", 0, ()), ("two", 1, ())]


def test_a_division_by_what_may_be_nought_is_not_known() -> None:
    row = outcome("highest / battery.voltage <= 2", {"voltage": tolerance(-1.0, 1.0, 0.5)})
    assert reason_of(row) == OUTSIDE_METHOD
