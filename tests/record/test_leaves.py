"""Every form a leaf may take, and the fact it gives."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from garboard.record import Fact
from garboard.record.leaves import LeafKind, Measure, RatedVoltage, Window
from garboard.record.leaves.read_leaf import read_leaf
from garboard.record.leaves.remarks import ORIGINS
from garboard.values import (
    NOT_DETERMINABLE,
    TOLERANCE,
    UNCERTAINTY,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    rounded,
    rounded_value,
    same_value,
)
from garboard.values.conductor_size import read_size
from record.launch import changed, problems, read


def fact(field: str, name: str, thing: str = "pack-2") -> Fact:
    """A fact of pack-2 (or of conductor w3), from the text of its field."""
    if thing == "w3":
        return read(changed("resistance: 0.2 mΩ", field)).things[thing].facts[name]
    return read(changed("managed_by: none", field)).things[thing].facts[name]


SCALARS: list[tuple[str, str, Any]] = [
    ("energy: 5.12 kWh", "energy", 5120.0),
    ("mass: 23 kg", "mass", 23.0),
    ("mass: 50 lb", "mass", 22.6796185),
    ("cells_in_series: 8", "cells_in_series", 8),
    ("terminal_cover: yes", "terminal_cover", True),
    ("terminal_cover: no", "terminal_cover", False),
    ("terminal_cover: true", "terminal_cover", True),
    ("terminal_cover: false", "terminal_cover", False),
    ("terminal_cover: 'no'", "terminal_cover", False),
    ("chemistry: AGM", "chemistry", "AGM"),
    ("firmware: '1.10'", "firmware", "1.10"),
    ("ingress: IP67", "ingress", "IP67"),
    ("made: 2025-02-11", "made", date(2025, 2, 11)),
    ("place: locker", "place", "locker"),
    ("managed_by: none", "managed_by", None),
    ("charge: {current_max: 100 A}", "charge.current_max", 100.0),
    ("charge: {temperature: 0 .. 45 °C}", "charge.temperature", (0.0, 45.0)),
    ("charge: {temperature: 0 .. 45 °C}", "charge.temperature.low", 0.0),
    ("charge: {temperature: 0 .. 45 °C}", "charge.temperature.high", 45.0),
    ("charge: {temperature: 32 .. 113 °F}", "charge.temperature.high", 45.0),
    ("charge: {temperature: .. 45 °C}", "charge.temperature.high", 45.0),
    ("charge_state: 80 %", "charge_state", 0.8),
    ("restraint: {movement: 0 in}", "restraint.movement", 0.0),
    ("restraint: {movement: 1 in}", "restraint.movement", 0.0254),
    ("near_fuel: {line_distance: 7 in}", "near_fuel.line_distance", 0.1778),
    ("short_circuit_current: {value: 5 kA, credits_electronics: no}", "short_circuit_current",
     5000.0),
    ("short_circuit_current: {value: 5 kA, credits_electronics: no}",
     "short_circuit_current.credits_electronics", False),
    ("internal_resistance: {value: 2.1 mΩ, method: DC pulse, at: terminals, charge_state: 50 %}",
     "internal_resistance.at", "terminals"),
    ("internal_resistance: {value: 2.1 mΩ, method: DC pulse}", "internal_resistance.method",
     "DC pulse"),
]


@pytest.mark.parametrize(("field", "name", "value"), SCALARS)
def test_a_leaf_gives_its_value(field: str, name: str, value: object) -> None:
    assert same_value(fact(field, name).value, value)


def test_a_side_of_a_window_left_open_is_not_recorded() -> None:
    record = read(changed("managed_by: none", "charge: {temperature: .. 45 °C}"))
    assert "charge.temperature.low" not in record.things["pack-2"].facts


@pytest.mark.parametrize(("field", "value"), [
    ("size: 50 mm2", "50 mm2"), ("size: 2/0 AWG", "2/0 AWG"), ("size: 4 SAE", "4 SAE")])
def test_a_size_is_read_by_its_system(field: str, value: str) -> None:
    assert fact(field, "size", "w3").value == read_size(value)


@pytest.mark.parametrize(("written", "volts", "kind"), [
    ("160 V DC", 160.0, "DC"), ("160 VDC", 160.0, "DC"), ("250 V AC", 250.0, "AC"),
    ("32 V", 32.0, None)])
def test_a_rated_voltage_keeps_its_kind(written: str, volts: float, kind: str | None) -> None:
    (point,) = read(changed("160 V DC", written)).things["f1"].groups["breaks"]
    assert point.value("voltage") == volts
    assert point.value("voltage.kind") == kind
    assert ("voltage.kind" in point.facts) is (kind is not None)


BOUNDS = [
    ("{value: 2 mΩ, plus_minus: 10 %}", (0.0018, 0.0022, 0.002), TOLERANCE),
    ("{value: 2 mΩ, plus_minus: 0.1 mΩ}", (0.0019, 0.0021, 0.002), TOLERANCE),
    ("{value: 2 mΩ, uncertainty: 5 %}", (0.0019, 0.0021, 0.002), UNCERTAINTY),
    ("1.8 .. 2.2 mΩ", (0.0018, 0.0022, None), TOLERANCE),
    ("{value: 1.8 .. 2.2 mΩ, from: datasheet}", (0.0018, 0.0022, None), TOLERANCE),
    (".. 2.2 mΩ", (0.0, 0.0022, None), TOLERANCE),
    ("{value: 2 mΩ, plus_minus: 3 mΩ}", (0.0, 0.005, 0.002), TOLERANCE),
]


@pytest.mark.parametrize(("written", "ends", "basis"), BOUNDS)
def test_a_spread_gives_bounds_that_name_the_fact(
        written: str, ends: tuple[float, float, float | None], basis: str) -> None:
    value = fact(f"internal_resistance: {written}", "internal_resistance").value
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi, value.nominal) == ends
    assert value.basis == (basis,)
    assert value.causes == (Cause(WITHIN_UNCERTAINTY, "pack-2.internal_resistance"),)


def test_a_voltage_range_without_a_lower_end_starts_at_zero() -> None:
    value = fact("voltage_found: .. 30 V", "voltage_found").value
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi) == (0.0, 30.0)


def test_bounds_of_a_part_name_the_part() -> None:
    (point,) = read(changed("current: 20 kA", "current: 15 .. 20 kA")).things["f1"].groups["breaks"]
    assert point.id == "f1.breaks[0]"
    assert point.value("current").causes == (Cause(WITHIN_UNCERTAINTY, "f1.breaks[0].current"),)


@pytest.mark.parametrize(("field", "name"), [
    ("capacity_rate: {not_determinable: no label}", "capacity_rate"),
    ("charge: {voltage_max: {not_determinable: no label}}", "charge.voltage_max"),
    ("terminal_cover: {not_determinable: no label}", "terminal_cover"),
    ("managed_by: {not_determinable: no label}", "managed_by"),
    ("made: {not_determinable: no label, from: owner}", "made"),
])
def test_what_could_not_be_found_out_is_unknown_for_that_reason(field: str, name: str) -> None:
    found = fact(field, name)
    assert same_value(found.value, Unknown.because(NOT_DETERMINABLE, f"pack-2.{name}", "no label"))
    assert found.written == "not determinable: no label"


def test_both_sides_of_a_window_that_could_not_be_found_out_are_unknown() -> None:
    field = "charge: {temperature: {not_determinable: no label}}"
    for name in ("charge.temperature", "charge.temperature.low", "charge.temperature.high"):
        assert isinstance(fact(field, name).value, Unknown)


def test_a_list_of_parts_may_be_not_determinable() -> None:
    record = read(changed("breaks: [{current: 20 kA, voltage: 160 V DC}]",
                          "breaks: {not_determinable: no marking, evidence: [photo-1]}"))
    device = record.things["f1"]
    assert same_value(device.value("breaks"),
                      Unknown.because(NOT_DETERMINABLE, "f1.breaks", "no marking"))
    assert "breaks" not in device.groups


def test_remarks_are_kept_beside_the_value() -> None:
    found = fact("internal_resistance: {value: 2.1 mΩ, plus_minus: 10 %, from: measured, "
                 "method: 10 s DC pulse, at: terminals, temperature: 18 °C, charge_state: 60 %, "
                 "evidence: [photo-1], note: cold morning}", "internal_resistance")
    assert found.written == "2.1 mΩ ± 10 %"
    assert found.origin == "measured"
    assert found.method == "10 s DC pulse"
    assert found.evidence == ("photo-1",)
    assert found.note == "cold morning"
    assert dict(found.extras) == {"method": "10 s DC pulse", "at": "terminals",
                                  "temperature": 18.0, "charge_state": 0.6}


@pytest.mark.parametrize("origin", ORIGINS)
def test_every_origin_is_read(origin: str) -> None:
    assert fact(f"energy: {{value: 5 kWh, from: {origin}}}", "energy").origin == origin


def test_a_plain_leaf_keeps_its_words() -> None:
    found = fact("energy: 5.120 kWh", "energy")
    assert (found.written, found.origin, found.method) == ("5.120 kWh", None, None)


def test_an_extra_key_may_have_a_spread_of_its_own() -> None:
    value = fact("internal_resistance: {value: 2 mΩ, temperature: {value: 18 °C, plus_minus: 2 K}}",
                 "internal_resistance.temperature").value
    assert isinstance(value, Bounds)
    assert value.causes[0].path == "pack-2.internal_resistance.temperature"


def test_a_spread_of_nothing_is_exact() -> None:
    assert fact("energy: {value: 5 kWh, plus_minus: 0 %}", "energy").value == 5000.0


def test_reading_the_same_text_twice_does_not_mix_things_up() -> None:
    text = changed("managed_by: none", "internal_resistance: 1.8 .. 2.2 mΩ")
    text = changed("{value: 2.1 mΩ, plus_minus: 10 %, from: measured, temperature: 18 °C}",
                   "1.8 .. 2.2 mΩ", text)
    record = read(text)
    paths = [record.things[each].value("internal_resistance").causes[0].path
             for each in ("pack-1", "pack-2")]
    assert paths == ["pack-1.internal_resistance", "pack-2.internal_resistance"]


def test_a_zero_of_a_switch_is_allowed_where_zero_makes_sense() -> None:
    assert problems(changed("kind: isolator,", "kind: isolator, resistance: 0 mΩ,")) == ()


ROUNDED = [
    (Measure("m", of="temperature", lowest="any"), "105 °F"),
    (Measure("m", of="resistance"), {"value": "2.1 mΩ", "plus_minus": "7.77777777777 %"}),
    (Measure("m", of="force"), "90 lbf"), (Window("w", of="temperature"), "33 .. 105 °F"),
    (Measure("m", of="length"), "0.1234567890123456 m .. 0.2234567890123456 m"),
    (RatedVoltage("v"), "31.1234567890123 V DC"),
]


@pytest.mark.parametrize(("leaf", "written"), ROUNDED)
def test_facts_have_the_digits_that_rules_compare(leaf: LeafKind, written: object) -> None:
    """A rule compares what it reads as it stands, so facts are rounded when they are read."""
    facts = read_leaf(leaf, written, "x").facts
    numbers = [each for _, fact in facts for each in (
        fact.value if isinstance(fact.value, tuple) else (fact.value,))]
    assert numbers
    for each in numbers:
        assert same_value(rounded_value(each), each)
        assert not isinstance(each, Bounds) or each.hi == rounded(each.hi)
