"""Batteries: resting voltages of cells, source resistance, the lead-acid forms of IEC 61660-1."""

from __future__ import annotations

import math

import pytest

from garboard.quantities import table
from garboard.quantities.topics.batteries import battery_fault_current, battery_source_resistance
from garboard.quantities.topics.lead_acid import (
    iec61660_emf,
    one_second_fault_current,
    peak_fault_current,
)
from garboard.quantities.topics.smallest_faults import (
    greatest_source_resistance,
    open_circuit_voltage_min,
    resistance_found_with_dc,
    resting_voltage_full,
)
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Unknown, quotient

NOT_KNOWN = Unknown.because(NOT_RECORDED, "b.fact")


def test_iec_61660_peak_and_one_second() -> None:
    """Row 64, form from memory: 13.2 V and 4 mΩ give 3 667 A and 3 135 A."""
    assert peak_fault_current.function(13.2, 4e-3).value == pytest.approx(3667, abs=0.5)
    assert one_second_fault_current.function(13.2, 4e-3).value == pytest.approx(3135, abs=0.5)


def test_the_lead_acid_forms_lie_around_ohms_law() -> None:
    """What needs nobody's memory: the peak is above E/R, a second later it is below."""
    plain = 13.2 / 4e-3
    assert one_second_fault_current.function(13.2, 4e-3).value < plain
    assert peak_fault_current.function(13.2, 4e-3).value > plain


@pytest.mark.parametrize("chemistry", list(table("chemistries").rows))
def test_the_lead_acid_forms_are_for_lead_acid_only(chemistry: str) -> None:
    value = iec61660_emf.function(chemistry, 13.2, 6).value
    if chemistry in ("AGM", "gel", "flooded", "lead-carbon"):
        assert value == 13.2
        assert iec61660_emf.function(chemistry, NOT_KNOWN, 6).value == pytest.approx(12.6)
    else:
        assert isinstance(value, Unknown)
        assert value.reason == OUTSIDE_METHOD


UNITS = [  # rows 60 to 63
    ("60: 2S3P of 2 400 A units", 3 * 2400.0, 7200, 0),
    ("61: 13.3 V over 4 mΩ", battery_fault_current.function(13.3, 4e-3), 3325, 1e-6),
    ("62: four of them, 0.5 mΩ each and 3 mΩ common", quotient(13.3, 4.5e-3 / 4 + 3e-3), 3224, 1),
    ("63: one and 3 m of 50 mm² class 5", quotient(13.3, 4e-3 + 3 * 0.386e-3), 2579, 2),
]


@pytest.mark.parametrize(("what", "found", "expected", "tolerance"), UNITS,
                         ids=[row[0] for row in UNITS])
def test_series_and_parallel(what: str, found: float, expected: float, tolerance: float) -> None:
    assert found == pytest.approx(expected, abs=tolerance)


@pytest.mark.parametrize(("chemistry", "cells"), [("LFP", 4), ("LFP", 16), ("NMC", 4),
                                                  ("flooded", 6)])
def test_resting_voltages_lie_in_order(chemistry: str, cells: int) -> None:
    low = open_circuit_voltage_min.function(chemistry, cells).value
    high = resting_voltage_full.function(chemistry, cells).value
    assert low < high


def test_charge_limits_of_cells_lie_above_their_rest() -> None:
    """Row 84: 4S LFP charges to 14.6 V, 16S to 58.4 V; a full one rests below."""
    assert pytest.approx(14.6) == 4 * 3.65
    assert resting_voltage_full.function("LFP", 4).value < 14.6
    assert resting_voltage_full.function("LFP", 16).value < 58.4
    assert resting_voltage_full.function("NMC", 4).value == pytest.approx(16.8)


def test_a_chemistry_without_a_row_is_outside_the_method() -> None:
    value = open_circuit_voltage_min.function("nickel-cadmium", 20).value
    assert isinstance(value, Unknown)
    assert value.reason == OUTSIDE_METHOD


AGEING = [
    ("found cold and empty", "LFP", -5.0, 0.15, -5.0, 2e-3),
    ("found warm", "LFP", 18.0, 0.15, -5.0, "open"),
    ("found full", "LFP", -5.0, 0.9, -5.0, "open"),
    ("nobody noted the temperature", "LFP", NOT_KNOWN, 0.15, -5.0, "open"),
    ("nobody knows how cold it gets", "LFP", -5.0, 0.15, NOT_KNOWN, "open"),
    ("lead-acid, wherever", "AGM", 18.0, 0.9, -5.0, 3.4e-3),
]


@pytest.mark.parametrize(("what", "chemistry", "at", "charge", "coldest", "expected"), AGEING,
                         ids=[row[0] for row in AGEING])
def test_greatest_source_resistance(what: str, chemistry: str, at: object, charge: object,
                                    coldest: object, expected: object) -> None:
    value = greatest_source_resistance.function("b", 2e-3, chemistry, at, charge, True,
                                                coldest).value
    if expected == "open":
        assert isinstance(value, Bounds)
        assert (value.lo, value.hi) == (2e-3, float("inf"))
        assert "b.internal_resistance" in {cause.path for cause in value.causes}
    else:
        assert value == pytest.approx(expected)


DECLARED = [
    ("as measured", 2e-3, 10e3, False, 2e-3),
    ("from the declared current", NOT_KNOWN, 10e3, False, 2.68e-3),
    ("not when that credits the electronics", NOT_KNOWN, 10e3, True, None),
    ("nor when nobody says so", NOT_KNOWN, 10e3, NOT_KNOWN, None),
    ("nothing known", NOT_KNOWN, NOT_KNOWN, False, None),
]


@pytest.mark.parametrize(("what", "measured", "declared", "electronics", "expected"), DECLARED,
                         ids=[row[0] for row in DECLARED])
def test_source_resistance(what: str, measured: object, declared: object, electronics: object,
                           expected: float | None) -> None:
    value = battery_source_resistance.function(measured, 26.8, declared, electronics)
    if expected is None:
        assert isinstance(value, Unknown)
    else:
        assert value == pytest.approx(expected)


@pytest.mark.parametrize(("how", "expected"), [
    ("10 s DC pulse", True), ("load step of 50 A", True), ("1 kHz impedance meter", False),
    ("AC bridge", False), ("conductance tester", False), ("DC pulse after 1 kHz reading", False),
    ("with an instrument", None), ("decreased load", None)])
def test_how_a_resistance_was_found(how: str, expected: bool | None) -> None:
    value = resistance_found_with_dc.function(how)
    if expected is None:
        assert isinstance(value, Unknown)
    else:
        assert value is expected


def test_a_resistance_found_with_ac_is_a_lower_end() -> None:
    value = greatest_source_resistance.function("b", 2e-3, "LFP", -5.0, 0.1, False, -5.0).value
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi) == (2e-3, float("inf"))


@pytest.mark.parametrize(("charge", "certain"), [(0.2, True), (0.21, False)])
def test_a_battery_counts_as_empty_up_to_a_fifth(charge: float, certain: bool) -> None:
    """Common practice; above it what was found is the least there may be."""
    found = greatest_source_resistance.function("b", 0.002, "LFP", 5.0, charge, True, 5.0).value
    assert (found == 0.002) if certain else (found.lo == 0.002 and found.hi == math.inf)
