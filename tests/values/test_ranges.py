"""Texts with two ends and figures with plus_minus: as bounds, as windows, refused."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.errors import CATALOGUE, ReadingError
from garboard.values import (
    DIMENSIONS,
    TOLERANCE,
    UNCERTAINTY,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    read_number,
    read_quantity,
    read_window,
    with_tolerance,
)

from . import draws

INF = math.inf

#: text, dimension, the two ends (None: not limited)
RANGES: list[tuple[str, str, float | None, float | None]] = [
    ("0 .. 45 °C", "temperature", 0.0, 45.0), ("-20 .. 60 °C", "temperature", -20.0, 60.0),
    ("0..45°C", "temperature", 0.0, 45.0), ("0 °C .. 45 °C", "temperature", 0.0, 45.0),
    ("32 °F .. 45 °C", "temperature", 0.0, 45.0), ("32 .. 113 °F", "temperature", 0.0, 45.0),
    ("900 mV .. 1.2 V", "voltage", 0.9, 1.2), ("-5 .. -2 °C", "temperature", -5.0, -2.0),
    ("\u221220 .. 60\u00a0°C", "temperature", -20.0, 60.0),
    ("2 .. 3 mΩ", "resistance", 0.002, 0.003),
    (" 2 .. 3 mΩ ", "resistance", 0.002, 0.003), ("20 .. 80 %", "ratio", 0.2, 0.8),
    (".. 45 °C", "temperature", None, 45.0), ("..45 °C", "temperature", None, 45.0),
    ("0 °C ..", "temperature", 0.0, None), ("0 °C..", "temperature", 0.0, None),
    (".. 12 V", "voltage", None, 12.0), ("12 V ..", "voltage", 12.0, None),
]


@pytest.mark.parametrize(("text", "dimension", "low", "high"), RANGES)
def test_a_window_is_two_ends(text: str, dimension: str, low: float | None,
                              high: float | None) -> None:
    assert read_window(text, dimension) == (low, high)


@pytest.mark.parametrize(("text", "dimension", "low", "high"), RANGES)
def test_a_figure_between_two_ends_is_bounds(text: str, dimension: str, low: float | None,
                                             high: float | None) -> None:
    value = read_quantity(text, dimension, "pack-1.figure")
    least = DIMENSIONS[dimension].least
    floor = -INF if least is None else float(least)
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi) == (floor if low is None else low, INF if high is None else high)
    assert (value.nominal, value.basis) == (None, (TOLERANCE,))
    assert value.causes == (Cause(WITHIN_UNCERTAINTY, "pack-1.figure"),)


def test_an_open_end_below_stands_at_what_nature_allows() -> None:
    resistance = read_quantity(".. 5 mΩ", "resistance")
    assert isinstance(resistance, Bounds)
    assert (resistance.lo, resistance.hi) == (0.0, 0.005)


def test_one_number_and_ends_that_meet_are_exact() -> None:
    assert read_quantity("7 in", "length") == 0.1778
    assert read_quantity("5 .. 5 V", "voltage") == 5.0
    assert read_window("5 .. 5 V", "voltage") == (5.0, 5.0)


#: text, dimension, code, where the trouble starts
REFUSED: list[tuple[Any, str, str, int]] = [
    ("45 .. 0 °C", "temperature", "range-reversed", 5), ("..", "voltage", "range-malformed", 0),
    (" .. V", "voltage", "number-missing", 4), ("0 ... 45 °C", "temperature", "range-malformed", 2),
    ("0 .. 10 .. 20 V", "voltage", "range-malformed", 2),
    ("0 .. 45", "temperature", "unit-missing", 7),
    ("0 °C .. 45", "temperature", "unit-missing", 10), ("0 ..", "temperature", "unit-missing", 1),
    ("0,5 .. 1 V", "voltage", "unit-comma", 1), ("0.5 .. 1,5 V", "voltage", "unit-comma", 8),
    ("0 .. 45 A", "temperature", "unit-mismatch", 8),
    ("0 A .. 45 °C", "temperature", "unit-mismatch", 2),
    ("x .. 45 °C", "temperature", "number-missing", 0),
    ("0 .. x °C", "temperature", "number-missing", 5),
    ("0 .. inf V", "voltage", "number-not-finite", 5),
    ("-1 .. 5 mΩ", "resistance", "number-below-least", 0),
    ("0 .. 45 °C and more", "temperature", "unit-unknown", 8),
    ("0 .. " + "4" * 90 + " V", "voltage", "text-too-long", 80),
    (45, "temperature", "unit-missing", 2),
    (None, "temperature", "number-missing", 0), ("0 to 45 °C", "temperature", "number-twice", 5),
    ("0-45 °C", "temperature", "number-twice", 2),
]


@pytest.mark.parametrize("read", [read_quantity, read_window])
@pytest.mark.parametrize(("text", "dimension", "code", "offset"), REFUSED)
def test_a_range_is_refused(read: Any, text: Any, dimension: str, code: str, offset: int) -> None:
    with pytest.raises(ReadingError) as caught:
        read(text, dimension)
    assert (caught.value.code, caught.value.offset) == (code, offset)
    assert code in CATALOGUE


def test_a_window_needs_two_ends() -> None:
    with pytest.raises(ReadingError) as caught:
        read_window("45 °C", "temperature")
    assert caught.value.code == "range-expected"
    assert ".. 45 °C" in caught.value.hint


#: value, plus_minus, dimension, the ends: exact decimals, rounded once
TOLERANCES = [
    ("2.1 mΩ", "10 %", "resistance", 0.00189, 0.00231), ("26.8 V", "0.1 V", "voltage", 26.7, 26.9),
    ("0.3 V", "0.1 V", "voltage", 0.2, 0.4),  # 0.3 - 0.1 in floats is below 0.2
    ("26.8 V", "50 mV", "voltage", 26.75, 26.85), ("7 in", "1 %", "length", 0.176022, 0.179578),
    ("7 in", "1 in", "length", 0.1524, 0.2032), ("-30 mV/K", "10 %", "temperature_coefficient",
                                                 -0.033, -0.027),
    ("18 °C", "2 °C", "temperature", 16.0, 20.0), ("18 °C", "2 K", "temperature", 16.0, 20.0),
    ("68 °F", "9 °F", "temperature", 15.0, 25.0), ("50 %", "5 %", "ratio", 0.45, 0.55),
    # never below what nature allows
    ("2 mΩ", "150 %", "resistance", 0.0, 0.005),
    ("-270 °C", "10 K", "temperature", -273.15, -260.0),
    ("0 mΩ", "1 mΩ", "resistance", 0.0, 0.001),
]


@pytest.mark.parametrize(("text", "reach", "dimension", "low", "high"), TOLERANCES)
@pytest.mark.parametrize("kind", [TOLERANCE, UNCERTAINTY])
def test_a_figure_with_plus_minus(text: str, reach: str, dimension: str, low: float, high: float,
                                  kind: Any) -> None:
    value = with_tolerance(text, reach, dimension, kind, "a.b")
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi, value.nominal) == (low, high, read_number(text, dimension))
    assert value.basis == (kind,)
    assert value.causes == (Cause(WITHIN_UNCERTAINTY, "a.b"),)


@pytest.mark.parametrize(("text", "reach"), [("26.8 V", "0 %"), ("0 V", "10 %"), ("5 V", "0 V")])
def test_a_figure_that_is_off_by_nothing_is_exact(text: str, reach: str) -> None:
    assert with_tolerance(text, reach, "voltage", "tolerance", "") == read_number(text, "voltage")


@pytest.mark.parametrize(("text", "reach", "dimension", "code"), [
    ("5 V", "-10 %", "voltage", "tolerance-negative"),
    ("5 V", "-1 V", "voltage", "tolerance-negative"),
    ("5 mm", "-1 mm", "length", "tolerance-negative"),
    ("5 V", "±10 %", "voltage", "number-qualified"),
    ("5 V", "+/-10 %", "voltage", "number-qualified"), ("5 V", "1 A", "voltage", "unit-mismatch"),
    ("5 V", "10", "voltage", "unit-missing"), ("5 V", 10, "voltage", "unit-missing"),
    ("5 V", "1,5 %", "voltage", "unit-comma"), ("5 V", "+10 % -5 %", "voltage", "number-twice"),
    ("18 °C", "10 %", "temperature", "tolerance-percent"),
    ("1 .. 2 V", "1 %", "voltage", "tolerance-on-range"),
    ("5 A", "1 V", "voltage", "unit-mismatch"), ("1,5 V", "x", "voltage", "unit-comma"),
    (5, "1 V", "voltage", "unit-missing"), ("5 V", None, "voltage", "number-missing"),
])
def test_a_plus_minus_is_refused(text: Any, reach: Any, dimension: str, code: str) -> None:
    with pytest.raises(ReadingError) as caught:
        with_tolerance(text, reach, dimension, "tolerance", "a")
    assert caught.value.code == code
    assert code in CATALOGUE


@draws.property_test
@given(st.decimals("-1000", "1000", places=3), st.decimals("0.001", "100", places=3),
       st.sampled_from(["V", "mV", "kV"]), st.booleans())
def test_both_ends_are_exact_before_they_are_rounded(number: Any, reach: Any, unit: str,
                                                     share: bool) -> None:
    factor = {"V": Fraction(1), "mV": Fraction(1, 1000), "kV": Fraction(1000)}[unit]
    off = abs(Fraction(number)) * Fraction(reach) / 100 if share else Fraction(reach)
    value = with_tolerance(f"{number:f} {unit}", f"{reach:f} {'%' if share else unit}", "voltage",
                           "tolerance", "")
    if isinstance(value, Bounds):
        assert value.lo == float((Fraction(number) - off) * factor)
        assert value.hi == float((Fraction(number) + off) * factor)
        assert value.nominal == float(Fraction(number) * factor)
    else:
        assert off == 0
