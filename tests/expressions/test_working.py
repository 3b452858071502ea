"""What is said of how an outcome came about: values, what decides, and by how much."""

from __future__ import annotations

from typing import Any

import pytest

from expressions.small_boat import program
from garboard.expressions import (
    FAILED,
    INSIDE_UNCERTAINTY,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PASSED,
    SIMPLE,
    Working,
    deciding,
    holding,
    keys_of,
    working,
)
from garboard.values import (
    CALCULATION_ERROR,
    NOT_RECORDED,
    Bounds,
    Unknown,
    same_value,
)


def shown(must_hold: str, item: dict[str, Any], applies_when: str | None = None,
          **more: Any) -> Working:
    compiled = program(must_hold if applies_when is None else (applies_when, must_hold))
    item.setdefault("id", "it")
    subjects = {"battery": [item]}
    found = working(compiled, 0, item, subjects, **more)
    (row,) = compiled.run(subjects, more.get("decision", "guarded acceptance"))
    assert row[:3] == found.row[:3] and row[5] == found.row[5]
    assert all(map(same_value, row[4], found.row[4]))
    return found


def missing(name: str) -> Unknown:
    return Unknown.because(NOT_RECORDED, f"it.{name}")


ALL_FACTS = {"heated": True, "covered": False, "voltage": 14.8, "charge.voltage_max": 14.4,
             "state": missing("state"), "age": 3}


@pytest.mark.parametrize(("text", "outcome", "expected"), [
    ("battery.heated", PASSED, ["battery.heated"]),
    ("battery.covered", FAILED, ["battery.covered"]),
    ("not battery.heated", FAILED, ["battery.heated"]),
    ("battery.heated and battery.voltage <= highest", FAILED, ["battery.voltage <= highest"]),
    ("battery.covered and battery.voltage <= highest", FAILED,
     ["battery.covered", "battery.voltage <= highest"]),
    ("battery.covered or battery.voltage <= highest", FAILED,
     ["battery.covered", "battery.voltage <= highest"]),
    ("battery.covered or battery.voltage > highest", PASSED, ["battery.voltage > highest"]),
    ("not (battery.heated or battery.covered)", FAILED, ["battery.heated"]),
    ("not (battery.heated and battery.covered)", PASSED, ["battery.covered"]),
    ("battery.heated and battery.state > 0.5", NOT_ASSESSED, ["battery.state > 0.5"]),
    ("battery.covered and battery.state > 0.5", FAILED, ["battery.covered"]),
    ("battery.heated or battery.state > 0.5", PASSED, ["battery.heated"]),
    ("14 < battery.age <= 2", FAILED, ["14 < battery.age", "battery.age <= 2"]),
    ("2 < battery.age <= 2", FAILED, ["battery.age <= 2"]),
    ("0.7 < battery.state < 0.6", FAILED, ["0.7 < battery.state", "battery.state < 0.6"]),
    ("(battery.covered if battery.heated else battery.heated)", FAILED,
     ["battery.heated", "battery.covered"]),
    ("battery.age in (1, 2) or battery.age not in (3, 4)", FAILED,
     ["battery.age in (1, 2)", "battery.age not in (3, 4)"]),
])
def test_what_decides(text: str, outcome: str, expected: list[str]) -> None:
    found = shown(text, dict(ALL_FACTS))
    assert found.row[2] == outcome
    assert [each.text for each in found.deciding] == expected


@pytest.mark.parametrize(("text", "left", "right", "distance", "share"), [
    ("battery.voltage <= highest", 14.8, 14.6, -0.2, -0.0136986301370),
    ("battery.voltage >= highest", 14.8, 14.6, 0.2, 0.0136986301370),
    ("highest >= battery.voltage", 14.6, 14.8, -0.2, -0.0136986301370),
    ("highest < battery.voltage", 14.6, 14.8, 0.2, 0.0136986301370),
    ("battery.charge.voltage_max < battery.voltage", 14.4, 14.8, 0.4, 0.027027027027),
    ("battery.voltage == highest", 14.8, 14.6, -0.2, -0.0136986301370),
    ("battery.voltage != highest", 14.8, 14.6, 0.2, 0.0136986301370),
    ("battery.age <= 0", 3, 0, -3, None),
    ("battery.age in (1, 2)", 3, (1, 2), None, None),
])
def test_how_far_from_the_limit(text: str, left: Any, right: Any, distance: float | None,
                                share: float | None) -> None:
    (each,) = shown(text, dict(ALL_FACTS)).compared
    assert (each.left, each.right) == (left, right)
    assert each.distance == distance
    assert each.share is None if share is None else each.share == pytest.approx(share, rel=1e-10)


def test_a_temperature_has_no_share_of_its_size() -> None:
    (each,) = shown("battery.charge.temperature.low <= hottest",
                    {"charge.temperature.low": 40.0}).compared
    assert (each.distance, each.share, each.dimension) == (5.0, None, "temperature")


def test_the_distance_of_bounds_has_bounds() -> None:
    found = shown("battery.voltage <= highest", {"voltage": Bounds(14.0, 15.0, 14.5)})
    (each,) = found.compared
    assert isinstance(each.distance, Bounds) and each.decides
    assert (each.distance.lo, each.distance.hi) == (-0.4, 0.6)
    assert shown("battery.voltage <= highest", {"voltage": missing("voltage")}).compared[
        0].distance is None


def test_every_part_has_its_value_and_its_spot() -> None:
    text = "battery.heated and battery.capacity * battery.voltage >= battery.energy / 2"
    found = shown(text, {"heated": True, "capacity": 100.0, "voltage": 12.8, "energy": 1200.0})
    values = {step.text: (step.value, step.dimension, step.key) for step in found.steps}
    assert values["battery.capacity"] == (100.0, "charge", "it.capacity")
    assert values["battery.capacity * battery.voltage"] == (1280.0, "energy", None)
    assert values["battery.energy / 2"] == (600.0, "energy", None)
    assert values[text] == (True, None, None)
    assert all(" ".join(text[step.offset:step.offset + step.length].split()) == step.text
               for step in found.steps)


@pytest.mark.parametrize(("text", "expected"), [
    ("battery.voltage <= highest", "14.8 V <= 14.6 V"),
    ("battery.voltage\n   <=   highest", "14.8 V <= 14.6 V"),
    ("battery.chemistry in lithium", '"AGM" in ("LFP", "NMC")'),
    ("battery.heated and not battery.covered", "true and not false"),
    ("battery.voltage * share <= highest", "14.8 V * 80 % <= 14.6 V"),
    ("battery.state > 0.5", "not known > 0.5"),
    ("battery.capacity > battery.capacity", "(180 Ah to 220 Ah) > (180 Ah to 220 Ah)"),
    ("count(battery.bank.batteries) >= 1", "2 >= 1"),
    ("max(b.voltage for b in battery.bank.batteries) <= highest", "14.5 V <= 14.6 V"),
    ("all(b.voltage <= highest for b in battery.bank.batteries)",
     "all(b.voltage <= highest for b in battery.bank.batteries)"),
    ("exists(battery.own_device)", "exists(battery.own_device)"),
])
def test_the_text_with_values_put_in(text: str, expected: str) -> None:
    bank = {"id": "bank-it", "batteries": ({"id": "a", "voltage": 14.0}, {"id": "b",
                                                                          "voltage": 14.5})}
    item = {**ALL_FACTS, "chemistry": "AGM", "capacity": Bounds(180.0, 220.0, 200.0), "bank": bank,
            "own_device": None}
    assert shown(text, item).requirement == expected


def test_lengths_can_be_shown_the_american_way() -> None:
    from expressions.small_boat import AMOUNTS, read
    from garboard.expressions import RuleSource, compile_rules

    compiled = compile_rules([RuleSource("r", read("place.length <= short", "place"), None,
                                         AMOUNTS)])
    item = {"id": "locker", "length": 0.1778}
    assert working(compiled, 0, item, {}, system="us").requirement == "7 in <= 7 in"


# conditions --------------------------------------------------------------------------------------
def test_the_condition_alone_where_it_is_false_or_not_known() -> None:
    found = shown("battery.covered", {"heated": False, "covered": True}, "battery.heated")
    assert (found.row[2], found.condition, found.requirement) == (NOT_APPLICABLE, "false", None)
    assert [each.text for each in found.deciding] == ["battery.heated"]
    found = shown("battery.covered", {"heated": missing("heated"), "covered": True},
                  "battery.heated")
    assert (found.row[2], found.requirement) == (NOT_ASSESSED, None)
    assert [(each.part, each.decides) for each in found.compared] == [("condition", True)]


def test_a_condition_that_holds_does_not_decide() -> None:
    found = shown("battery.covered", {"heated": True, "covered": False}, "battery.heated")
    assert [(each.part, each.decides) for each in found.compared] == [
        ("condition", False), ("requirement", True)]


# loops -------------------------------------------------------------------------------------------
def _bank(*batteries: dict[str, Any]) -> dict[str, Any]:
    return {"bank": {"id": "bank-it", "batteries": batteries}}


BANK = _bank({"id": "a", "heated": True, "voltage": 14.2}, {"id": "b", "heated": False,
             "voltage": 14.8}, {"id": "c", "heated": missing("heated"), "voltage": 15.0})


@pytest.mark.parametrize(("text", "outcome", "expected"), [
    ("all(b.voltage <= highest for b in battery.bank.batteries)", FAILED, ["b", "c"]),
    ("all(b.voltage <= highest for b in battery.bank.batteries if b.heated)", NOT_ASSESSED, ["c"]),
    ("any(b.voltage <= highest for b in battery.bank.batteries)", PASSED, ["a"]),
    ("any(b.voltage > highest for b in battery.bank.batteries if b.heated)", NOT_ASSESSED, ["c"]),
    ("not any(b.heated for b in battery.bank.batteries)", FAILED, ["a"]),
    ("count(b for b in battery.bank.batteries if b.heated) >= 3", FAILED, ["a", "c"]),
    ("sum(b.voltage for b in battery.bank.batteries) <= highest", FAILED, ["a", "b", "c"]),
    ("sum(b.voltage for b in battery.bank.batteries if b.heated) <= highest", NOT_ASSESSED,
     ["a", "c"]),
])
def test_which_things_decide(text: str, outcome: str, expected: list[str]) -> None:
    found = shown(text, dict(BANK))
    assert found.row[2] == outcome
    (each,) = found.compared
    assert [turn.item for turn in each.turns] == ["a", "b", "c"]
    assert [turn.item for turn in each.turns if turn.decides] == expected


def test_a_turn_shows_what_it_looked_at() -> None:
    found = shown("all(b.voltage <= highest for b in battery.bank.batteries "
                  "if b.voltage > highest)", dict(BANK))
    (each,) = found.compared
    first, second, _ = each.turns
    assert (first.filtered, first.value, first.decides) == (False, None, False)
    assert (second.filtered, second.value) == (True, False)
    assert [(inner.text, inner.truth) for inner in second.compared] == [
        ("b.voltage > highest", True), ("b.voltage <= highest", False)]
    assert second.compared[1].distance == -0.2
    assert {step.text: step.value for step in second.steps}["b.voltage"] == 14.8


# decision rules and failures ---------------------------------------------------------------------
def test_under_simple_acceptance_the_bounds_are_still_shown() -> None:
    found = shown("battery.voltage <= highest", {"voltage": Bounds(14.0, 15.0, 14.5)},
                  decision=SIMPLE)
    assert (found.row[2], found.row[5]) == (PASSED, (INSIDE_UNCERTAINTY,))
    assert found.requirement == "(14 V to 15 V) <= 14.6 V"


def test_what_was_found_before_a_failure_is_shown() -> None:
    found = shown("battery.heated and battery.age > 1", {"heated": True, "age": "old"})
    assert found.row[3] is not None and found.row[3].reason == CALCULATION_ERROR
    assert [step.text for step in found.steps] == ["battery.heated"]


# from the row alone ------------------------------------------------------------------------------
@pytest.mark.parametrize("text", [
    "battery.heated and battery.voltage <= highest",
    "battery.covered or battery.voltage <= highest",
    "not (battery.heated or battery.covered)", "not (battery.heated and battery.covered)",
    "battery.heated and battery.state > 0.5", "2 < battery.age <= 2",
    "0.7 < battery.state < 0.6", "(battery.covered if battery.heated else battery.heated)",
    "battery.age in (1, 2) or battery.age not in (3, 4)", "true or battery.heated", "true",
])
@pytest.mark.parametrize("applies", [None, "battery.age > 1", "battery.age > 3",
                                     "battery.state > 0"])
def test_a_row_and_its_trace_say_the_same(text: str, applies: str | None) -> None:
    compiled = program(text if applies is None else (applies, text))
    item = {"id": "it", **ALL_FACTS}
    (row,) = compiled.run({"battery": [item]})
    trace = compiled.traces[0]
    found = working(compiled, 0, item, {"battery": [item]})
    assert len(found.compared) == len(holding(trace, row))
    assert all(same_value(each.truth, truth)
               for each, truth in zip(found.compared, holding(trace, row), strict=True))
    assert [place for place, each in enumerate(found.compared) if each.decides] == list(
        deciding(trace, row))


def test_operands_carry_their_names() -> None:
    compiled = program(("battery.heated", "battery.own_device.rating * 2 >= least_current and "
                        "count(battery.bank.batteries) < few"))
    trace = compiled.traces[0]
    assert [(each.text, each.part, each.dimension, each.constant, each.limit)
            for each in trace.operands] == [
        ("battery.heated", "condition", None, False, None),
        ("battery.own_device.rating * 2", "requirement", "current", False, None),
        ("least_current", "requirement", "current", True, "least_current"),
        ("count(battery.bank.batteries)", "requirement", None, False, None),
        ("few", "requirement", None, True, "few"),
    ]
    assert [(atom.left, atom.operator, atom.right) for atom in trace.atoms] == [
        (0, None, None), (1, ">=", 2), (3, "<", 4)]
    item = {"id": "it", "own_device": {"id": "f1", "rating": 80.0}, "bank": {"id": "bank-it"}}
    assert [keys_of(each, item, {}) for each in trace.operands] == [
        ("it.heated",), ("f1.rating",), (), ("bank-it.batteries",), ()]
    assert keys_of(trace.operands[1], {"id": "it", "own_device": None}, {}) == ("it.own_device",)


def test_a_row_without_operands_holds_nothing() -> None:
    compiled = program("battery.age > 1")
    (row,) = compiled.run({"battery": [{"id": "it", "age": "old"}]})
    assert (holding(compiled.traces[0], row), deciding(compiled.traces[0], row)) == ((), ())
