"""Small records with answers worked by hand beside them: what draws seldom hold."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from oracle.comparing import assessed, ends_of

HEAD = """format: installation-record/1
survey: {date: 2026-01-15}
management_systems: []
loads: []
"""
BATTERY = """wiring: {returns: neglected}
batteries: [{id: a, open_circuit_voltage_max: 12 V, internal_resistance: 2 mΩ}]
"""
CHARGER = """buses: [{id: plus}, {id: minus}, {id: far}]
charging_sources:
  - {id: charger, current_max: 60 A, stages: {float: 13 V}, fault_contribution: 800 A}
runs:
  - {id: r1, from: a.positive, to: plus, through: [{conductor: {id: w1, resistance: 1 mΩ}}]}
  - {id: r2, from: a.negative, to: minus, through: [{conductor: {id: w2, resistance: 1 mΩ}}]}
  - {id: r3, from: charger.positive, to: plus, through: [{fuse: {id: f3, RESISTANCE}}]}
  - {id: r4, from: charger.negative, to: minus, through: [{conductor: {id: w4, resistance: 1 mΩ}}]}
"""
LEADS = """buses: [{id: plus}, {id: far}]
charging_sources: []
runs:
  - {id: r1, from: a.positive, to: plus, through: [{conductor: {id: w1, length: 0.1 m}}]}
  - {id: r2, from: a.positive, to: plus, through: [{conductor: {id: w2, length: 5 m}}]}
  - {id: r3, from: plus, to: far, through: [{fuse: {id: f3}}]}
"""


def _values(text: str, folder: Path) -> dict[str, Any]:
    trail = assessed(HEAD + text, folder)
    return {key: each["value"]
            for key, each in trail.document["assessment"]["derivations"].items()}


def test_a_charger_with_leads_of_its_own_adds_what_it_declares(tmp_path: Path) -> None:
    """12 V over 2 + 1 + 1 mΩ is 3000 A from the battery; the charger's 800 A come on top."""
    values = _values(BATTERY + CHARGER.replace("RESISTANCE", "resistance: 1 mΩ"), tmp_path)
    assert values["plus.fault_current"] == pytest.approx(3800)
    assert values["f3.through_current"] == pytest.approx(2000)  # 12 V over 2 + 1 + 1 + 1 + 1 mΩ


def test_a_fuse_without_a_resistance_on_record_has_none_in_the_largest_fault(
        tmp_path: Path) -> None:
    """What a charger declares flows through any resistance there may be: 3000 + 800 A. Through its
    fuse the most flows where that has none: 12 V over 2 + 1 + 1 + 1 mΩ."""
    values = _values(BATTERY + CHARGER.replace("RESISTANCE", "rating: 80 A"), tmp_path)
    assert values["plus.fault_current"] == pytest.approx(3800)
    assert values["f3.through_current"] == pytest.approx(2400)


def test_a_return_in_runs_of_its_own_is_not_counted_again(tmp_path: Path) -> None:
    """12 V over 2 + 1 + 1 mΩ, though the wiring at large returns as outgoing."""
    text = (BATTERY + CHARGER).replace("returns: neglected", "returns: as outgoing").replace(
        ", fault_contribution: 800 A", "").replace("RESISTANCE", "resistance: 1 mΩ")
    assert _values(text, tmp_path)["plus.fault_current"] == pytest.approx(3000)


@pytest.mark.parametrize("stated", ["as outgoing", "{resistance: 1 mΩ}", "{length: 1 m}"])
def test_a_run_that_contradicts_its_traced_return_is_a_conflict(tmp_path: Path,
                                                                stated: str) -> None:
    text = (BATTERY + CHARGER).replace(", fault_contribution: 800 A", "").replace(
        "RESISTANCE", "resistance: 1 mΩ").replace("to: plus, th", f"to: plus, return: {stated}, th",
                                                  1)
    value = _values(text, tmp_path)["plus.fault_current"]
    assert ends_of(value) == pytest.approx((0, 3000))
    assert {each["reason"] for each in value["causes"]} == {"conflict"}


@pytest.mark.parametrize(("leads", "longest"), [
    (LEADS, 5.0),
    (LEADS.replace("r1, from: a.positive, to: plus", "r1, from: plus, to: a.positive"), 5.0),
    (LEADS.replace("to: plus, through: [{conductor: {id: w2",
                   "to: far, through: [{conductor: {id: w3, length: 0.2 m}}, "
                   "{conductor: {id: w2").replace("r3, from: plus, to: far, through: [{fuse: {id: "
                                                  "f3}}]",
                   "r3, from: plus, to: far, through: [{conductor: {id: w4, length: 1 m}}]"),
     6.1),
])
def test_of_leads_side_by_side_the_longest_counts(tmp_path: Path, leads: str,
                                                  longest: float) -> None:
    """A way that meets no point twice, to where the last of it joins another."""
    values = _values(BATTERY + leads, tmp_path)
    assert values["a.unprotected_length"] == pytest.approx(longest)


RETURNS = """places: [{id: cold, temperature: 0 .. 40 °C}]
buses: [{id: plus}]
charging_sources: []
runs:
  - id: r1
    from: a.positive
    to: plus
    return: RETURN
    through: [{conductor: {id: w1, size: 50 mm2, CROSSES}}]
"""
#: 1 m of 50 mm² at 0 °C, one way, in Ω.
METRE = 1 / 58 / 50 * 234.5 / 254.5


@pytest.mark.parametrize(("way_back", "crosses", "ends"), [
    # the return of a run with one conductor lies beside that, whether its length is known or not
    ("{resistance: 1 mΩ}", "resistance: 1 mΩ", (0.002, 0.002)),
    ("{resistance: {value: 1 mΩ, temperature: 0 °C}}", "length: 1 m, crosses: [cold]",
     (METRE + 1e-3, METRE + 1e-3)),
    # found at 20 °C it has less where it is cold; found at nobody noted which, at least nothing
    ("{resistance: {value: 1 mΩ, temperature: 20 °C}}", "length: 1 m, crosses: [cold]",
     (METRE + 1e-3 * 234.5 / 254.5, METRE + 1e-3 * 234.5 / 254.5)),
    ("{resistance: 1 mΩ}", "length: 1 m, crosses: [cold]", (METRE, METRE + 1e-3)),
    # or as little as if it had been as hot as its insulation stands
    ("neglected", "resistance: 1 mΩ, insulation: 105 °C, crosses: [cold]",
     (1e-3 * 234.5 / 339.5, 1e-3)),
    # without any temperature on record it is as stated
    ("neglected", "resistance: 1 mΩ, insulation: 105 °C", (1e-3, 1e-3)),
    ("{size: 50 mm2, length: 2 m}", "length: 1 m, crosses: [cold]", (3 * METRE, 3 * METRE)),
    # a return that is only half recorded is not taken to be what the wiring at large says
    ("{length: 2 m}", "resistance: 1 mΩ", (0.001, None)),
    ("{size: 50 mm2}", "resistance: 1 mΩ", (0.001, None)),
    # without a place the resistance lies between nothing and that of the hottest insulation
    ("neglected", "length: 1 m, insulation: 20 °C", (0, METRE * 254.5 / 234.5)),
])
def test_loop_resistance(tmp_path: Path, way_back: str, crosses: str,
                         ends: tuple[float, float | None]) -> None:
    text = BATTERY + RETURNS.replace("RETURN", way_back).replace("CROSSES", crosses)
    value = _values(text, tmp_path)["w1.loop_resistance"]
    found = (value["lo"], value["hi"]) if isinstance(value, dict) else (value, value)
    assert found[0] == pytest.approx(ends[0], rel=1e-9)
    assert found[1] == (None if ends[1] is None else pytest.approx(ends[1], rel=1e-9))


def test_one_more_place_unrecorded_never_makes_a_resistance_negative(tmp_path: Path) -> None:
    """The coldest of two places is at most the one recorded: between nothing and that."""
    text = BATTERY + RETURNS.replace("RETURN", "neglected").replace(
        "CROSSES", "length: 1 m, crosses: [cold, other]").replace(
        "places: [", "places: [{id: other}, ")
    value = _values(text, tmp_path)["w1.loop_resistance"]
    assert (value["lo"], value["hi"]) == pytest.approx((0, METRE), rel=1e-9)


def test_a_bank_of_one_string_accepts_what_its_battery_does(tmp_path: Path) -> None:
    """Through a lead of any resistance: 100 A. Of two, the other may take nothing: 100 A at least,
    and no more than both in equal parts."""
    one = """wiring: {returns: neglected}
batteries:
  - &a {id: a, open_circuit_voltage_max: 12 V, internal_resistance: 2 mΩ, \
charge: {current_max: 100 A}}
buses: [{id: plus}]
charging_sources: []
runs:
  - {id: r1, from: a.positive, to: plus, through: [{switch: {id: s1}}]}
"""
    assert _values(one, tmp_path)["bank-plus.charge_current_limit"] == pytest.approx(100)
    two = one.replace("buses:", "  - {id: b, open_circuit_voltage_max: 12 V, internal_resistance: "
                      "2 mΩ, charge: {current_max: 100 A}}\nbuses:") + (
        "  - {id: r2, from: b.positive, to: plus, through: [{fuse: {id: f2, resistance: 1 mΩ}}]}\n")
    low, high = ends_of(_values(two, tmp_path)["bank-plus.charge_current_limit"])
    assert low == pytest.approx(100)
    assert high == pytest.approx(200)
