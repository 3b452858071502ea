"""Figures for people: digits, units, bounds, and that they read back as what they show."""

from __future__ import annotations

import datetime
import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import (
    DIMENSIONS,
    NOT_RECORDED,
    Bounds,
    Unknown,
    format_number,
    format_value,
    read_number,
    read_size,
)

from . import draws

INF = math.inf

METRIC = [
    (28672.0, "current", "28.67 kA"), (0.00012, "resistance", "0.12 mΩ"),
    (0.35, "length", "0.35 m"),
    (26593.0, "current", "26.59 kA"), (31103.0, "current", "31.10 kA"),
    (0.1778, "length", "0.1778 m"),
    (250.0, "current", "250 A"), (900.0, "current", "900 A"), (1000.0, "current", "1 kA"),
    (0.05, "current", "50 mA"), (99.996, "current", "100.0 A"), (999.96, "current", "1000 A"),
    (14.4, "voltage", "14.4 V"), (0.05, "voltage", "50 mV"), (160.0, "voltage", "160 V"),
    (0.5, "resistance", "0.5 Ω"), (0.05, "resistance", "50 mΩ"), (0.0021, "resistance", "2.1 mΩ"),
    (0.00005, "resistance", "50 µΩ"),
    (1 / 3, "resistance", "0.3333 Ω"), (2.2e6, "resistance", "2.2 MΩ"), (0.0, "resistance", "0 Ω"),
    (0.05, "length", "50 mm"), (3000.0, "length", "3000 m"), (50.0, "area", "50 mm²"),
    (10000.0, "area", "100 cm²"), (5120.0, "energy", "5.12 kWh"), (600.0, "energy", "600 Wh"),
    (280.0, "charge", "280 Ah"), (1728.0, "power", "1.728 kW"), (45.0, "temperature", "45 °C"),
    (-5.0, "temperature", "-5 °C"), (0.0, "temperature", "0 °C"),
    (5.0, "temperature_difference", "5 K"),
    (23.0, "mass", "23 kg"), (0.0004, "time", "0.4 ms"), (90.0, "time", "90 s"),
    (600.0, "time", "10 min"),
    (5400.0, "time", "1.5 h"), (9.0, "torque", "9 N·m"), (52000.0, "let_through", "52000 A²s"),
    (-0.03, "temperature_coefficient", "-30 mV/K"), (0.03, "ratio", "3 %"), (1.5, "ratio", "150 %"),
    (0.0, "ratio", "0 %"), (30.0, "angle", "30°"), (0.0047, "capacitance", "4700 µF"),
    (2e-6, "inductance", "2 µH"), (-28672.0, "current", "-28.67 kA"),
    (1e-30, "resistance", "1e-24 µΩ"),
    (1.2345678e12, "let_through", "1.235e+12 A²s"), (-0.0, "voltage", "0 V"),
    (0.1 + 0.2, "voltage", "0.3 V"), (12.0, None, "12"), (2 / 3, None, "0.6667"),
    (INF, "voltage", "not known"), (math.nan, "voltage", "not known"),
]


@pytest.mark.parametrize(("value", "dimension", "text"), METRIC)
def test_a_figure_in_metric_units(value: float, dimension: str | None, text: str) -> None:
    assert format_number(value, dimension) == text


@pytest.mark.parametrize(("value", "dimension", "text"), [
    (0.1778, "length", "7 in"), (1.8288, "length", "72 in"), (3.048, "length", "10 ft"),
    (0.35, "length", "13.78 in"), (45.0, "temperature", "113 °F"), (-40.0, "temperature", "-40 °F"),
    (5.0, "temperature_difference", "9 °F"), (22.6796185, "mass", "50 lb"),
    (400.339945373445, "force", "90 lbf"), (2580.64, "area", "4 in²"),
    (9.038786322209336, "torque", "80 lbf·in"), (40.674538449942, "torque", "30 lbf·ft"),
    (0.0, "length", "0 in"), (0.0, "resistance", "0 Ω"), (28672.0, "current", "28.67 kA"),
])
def test_a_figure_in_us_customary_units(value: float, dimension: str, text: str) -> None:
    assert format_number(value, dimension, "us") == text


def test_more_digits_on_request() -> None:
    assert format_number(28672.3, "current", digits=6) == "28.6723 kA"
    assert format_value(28672.3, "current", digits=6) == "28.6723 kA"


@pytest.mark.parametrize(("value", "dimension", "text"), [
    (Bounds(26593.0, 31103.0, 28672.0), "current", "26.59 kA to 31.10 kA"),
    (Bounds(-INF, 28672.0), "current", "at most 28.67 kA"),
    (Bounds(0.0, INF), "resistance", "at least 0 Ω"),
    (Bounds(0.0, 0.005), "resistance", "at most 5 mΩ"),
    (Bounds(-273.15, 45.0), "temperature", "at most 45 °C"), (Bounds(0.0, 45.0), "temperature",
                                                            "0 °C to 45 °C"),
    (Bounds(-INF, INF), "voltage", "not known"), (Bounds(1.0, 2.0), None, "1 to 2"),
    (Unknown.because(NOT_RECORDED, "a"), "voltage", "not known"), (12.0, "voltage", "12 V"),
    (3, None, "3"), (3, "voltage", "3 V"), (True, None, "yes"), (False, "voltage", "no"),
    ("AGM", None, "AGM"), (datetime.date(2026, 4, 18), None, "2026-04-18"), (None, None, "none"),
    ((), None, "none"), ((1.0, 2.0), "voltage", "1 V, 2 V"), (["a", "b"], None, "a, b"),
    (read_size("2/0 AWG"), None, "2/0 AWG"), (12345678901, None, "12345678901"),
])
def test_any_value(value: Any, dimension: str | None, text: str) -> None:
    assert format_value(value, dimension) == text


def test_bounds_in_us_customary_units() -> None:
    assert format_value(Bounds(0.1778, 1.016), "length", "us") == "7 in to 40 in"


@draws.property_test
@given(st.sampled_from(sorted(DIMENSIONS)), st.floats(1e-9, 1e9), st.sampled_from(["metric", "us"]))
def test_what_is_shown_reads_back(dimension: str, value: float, system: Any) -> None:
    back = read_number(format_number(value, dimension, system), dimension)
    shift = 273.15 if dimension == "temperature" else 0.0  # degrees Fahrenheit start elsewhere
    assert math.isclose(back, value, rel_tol=5.1e-4, abs_tol=shift * 1e-3)


@draws.property_test
@given(st.sampled_from(sorted(set(DIMENSIONS) - {"time"})), st.integers(1, 9999),
       st.integers(-3, 3))
def test_four_digits_are_shown_exactly(dimension: str, number: int, power: int) -> None:
    value = float(f"{number}e{power}")
    assert read_number(format_number(value, dimension), dimension) == value
