"""Figures against limits: passed, failed or undecided, under guarded and simple acceptance."""

from __future__ import annotations

import math
import operator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import (
    ASSUMPTION,
    NOT_RECORDED,
    UNRECORDED,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    read_number,
    same_value,
    with_tolerance,
)

from . import draws

INF = math.inf
PASSED, FAILED, UNDECIDED = "passed", "failed", "undecided"


def word(verdict: Any) -> str:
    return UNDECIDED if isinstance(verdict, Unknown) else PASSED if verdict else FAILED


def nominal_of(value: Any) -> Any:
    return value.collapsed() if isinstance(value, Bounds) else value


#: figure, limit 10 from above: guarded, simple
UPPER = [
    (9.0, PASSED, PASSED), (10.0, PASSED, PASSED), (10.1, FAILED, FAILED),
    (Bounds(8.0, 9.0, 8.5), PASSED, PASSED),
    (Bounds(9.0, 10.0, 9.5), PASSED, PASSED),      # the upper end exactly at the limit
    (Bounds(10.0, 11.0, 10.5), UNDECIDED, FAILED),  # the lower end exactly at the limit
    (Bounds(10.0, 11.0, 10.0), UNDECIDED, PASSED),  # the nominal exactly at the limit
    (Bounds(10.1, 11.0, 10.5), FAILED, FAILED),
    (Bounds(8.7, 10.3, 9.5), UNDECIDED, PASSED), (Bounds(9.5, 11.1, 10.3), UNDECIDED, FAILED),
    # without a nominal a straddle stays undecided under either rule
    (Bounds(8.0, 11.0), UNDECIDED, UNDECIDED),
    (Bounds(8.0, 11.0, basis=(ASSUMPTION,)), UNDECIDED, UNDECIDED),
    (Bounds(8.0, 9.0, basis=(ASSUMPTION,)), PASSED, PASSED),
    (Bounds(8.0, 11.0, basis=(UNRECORDED,)), UNDECIDED, UNDECIDED),
    # open sides
    (Bounds(0.0, INF, basis=(UNRECORDED,)), UNDECIDED, UNDECIDED),
    (Bounds(11.0, INF, basis=(UNRECORDED,)), FAILED, FAILED),
    (Bounds(-INF, 9.0, basis=(UNRECORDED,)), PASSED, PASSED),
    (Unknown.because(NOT_RECORDED, "a"), UNDECIDED, UNDECIDED),
]


@pytest.mark.parametrize(("figure", "guarded", "simple"), UPPER)
def test_against_an_upper_limit(figure: Any, guarded: str, simple: str) -> None:
    assert word(figure <= 10.0) == guarded
    assert word(nominal_of(figure) <= 10.0) == simple
    assert word(operator.ge(10.0, figure)) == guarded


@pytest.mark.parametrize(("figure", "guarded", "simple"), UPPER)
def test_a_lower_limit_is_the_mirror(figure: Any, guarded: str, simple: str) -> None:
    assert word(-figure >= -10.0) == guarded
    assert word(nominal_of(-figure) >= -10.0) == simple
    assert word(operator.le(-10.0, -figure)) == guarded


@pytest.mark.parametrize(("figure", "below", "above"), [
    (10.0, FAILED, FAILED), (Bounds(9.0, 10.0), UNDECIDED, FAILED),
    (Bounds(10.0, 11.0), FAILED, UNDECIDED), (Bounds(9.0, 9.9), PASSED, FAILED),
    (Bounds(10.1, 11.0), FAILED, PASSED), (Bounds(9.0, 11.0), UNDECIDED, UNDECIDED)])
def test_a_strict_limit_excludes_its_boundary(figure: Any, below: str, above: str) -> None:
    assert word(figure < 10.0) == below
    assert word(figure > 10.0) == above


@pytest.mark.parametrize(("figure", "limit", "verdict"), [
    (Bounds(8.0, 9.0), Bounds(9.0, 10.0), PASSED), (Bounds(8.0, 9.1), Bounds(9.0, 10.0), UNDECIDED),
    (Bounds(10.0, 11.0), Bounds(9.0, 10.0), UNDECIDED),
    (Bounds(10.1, 11.0), Bounds(9.0, 10.0), FAILED)])
def test_a_limit_may_have_bounds_too(figure: Bounds, limit: Bounds, verdict: str) -> None:
    assert word(figure <= limit) == verdict


@pytest.mark.parametrize(("figure", "equal"), [
    (10.0, PASSED), (Bounds(9.0, 11.0), UNDECIDED), (Bounds(9.0, 10.0), UNDECIDED),
    (Bounds(8.0, 9.0), FAILED), (Bounds(10.0, 10.0, basis=(ASSUMPTION,)), PASSED)])
def test_equality(figure: Any, equal: str) -> None:
    opposite = {PASSED: FAILED, FAILED: PASSED, UNDECIDED: UNDECIDED}
    assert word(figure == 10.0) == equal
    assert word(operator.eq(10.0, figure)) == equal
    assert word(figure != 10.0) == opposite[equal]


def test_a_straddle_names_the_facts_that_would_decide_it() -> None:
    figure = Bounds(8.0, 11.0, 9.5, causes=(Cause(WITHIN_UNCERTAINTY, "pack-1.voltage"),))
    limit = Bounds(9.0, 10.0, 9.5, causes=(Cause(NOT_RECORDED, "pack-1.trip"),))
    verdict = figure <= limit
    assert isinstance(verdict, Unknown)
    assert verdict.paths == ("pack-1.trip", "pack-1.voltage")
    assert verdict.reason == NOT_RECORDED
    assert same_value(Bounds(8.0, 11.0) <= 10.0, Unknown.because(WITHIN_UNCERTAINTY))


#: value, plus_minus and dimension of a figure, the limit: guarded, simple. The guard-band rows are
#: the worked figures of ILAC-G8:09/2019 for an upper limit of 10 and an expanded uncertainty of 0.8
STATED = [
    ("9.1 V", "0.8 V", "voltage", "10 V", PASSED, PASSED),
    ("9.2 V", "0.8 V", "voltage", "10 V", PASSED, PASSED),
    ("9.5 V", "0.8 V", "voltage", "10 V", UNDECIDED, PASSED),
    ("10.3 V", "0.8 V", "voltage", "10 V", UNDECIDED, FAILED),
    ("10.9 V", "0.8 V", "voltage", "10 V", FAILED, FAILED),
    ("100 mm", "1 %", "length", "101 mm", PASSED, PASSED),
    ("100 mm", "1 %", "length", "0.101 m", PASSED, PASSED),
    ("0.7 V", "0.1 V", "voltage", "0.8 V", PASSED, PASSED),  # 0.7 + 0.1 in floats is below 0.8
    ("0.1 V", "0.2 V", "voltage", "0.3 V", PASSED, PASSED),  # 0.1 + 0.2 in floats is above 0.3
]


@pytest.mark.parametrize(("value", "reach", "dimension", "limit", "guarded", "simple"), STATED)
def test_a_figure_with_a_stated_tolerance(value: str, reach: str, dimension: str, limit: str,
                                          guarded: str, simple: str) -> None:
    figure = with_tolerance(value, reach, dimension, "uncertainty", "a")
    at_most = read_number(limit, dimension)
    assert word(figure <= at_most) == guarded
    assert word(nominal_of(figure) <= at_most) == simple


#: a limit met exactly passes, in whatever units the two are written
SAME = [
    ("7 in", "0.1778 m", "length"), ("7 in", "177.8 mm", "length"), ("40 in", "1016 mm", "length"),
    ("72 in", "182.88 cm", "length"), ("1 ft", "12 in", "length"),
    ("2.1 mΩ", "2100 µΩ", "resistance"),
    ("0.0021 Ω", "2.1 mohm", "resistance"), ("2.1 mΩ", "2.1 mOhm", "resistance"),
    ("2.1 Ω", "0.0021 kOhm", "resistance"), ("90 lbf", "400.339945373445 N", "force"),
    ("28.67 kA", "28670 A", "current"), ("150 %", "1.5 ratio", "ratio"),
    ("113 °F", "45 °C", "temperature"), ("32 °F", "0 °C", "temperature"),
    ("318.15 K", "45 °C", "temperature"), ("-40 °F", "-40 °C", "temperature"),
    ("1 in2", "645.16 mm2", "area"), ("600 Wh", "0.6 kWh", "energy"),
    ("600 Wh", "2160 kJ", "energy"),
    ("10 lb", "4.5359237 kg", "mass"), ("40 ms", "0.04 s", "time"), ("90 min", "1.5 h", "time"),
    ("3 mV/K", "0.003 V/°C", "temperature_coefficient"), ("9 °F", "5 K", "temperature_difference"),
    ("1 lbf·ft", "12 in·lbf", "torque"), ("1.2 kV", "1200000 mV", "voltage"),
]


@pytest.mark.parametrize(("one", "other", "dimension"), SAME)
def test_a_limit_met_exactly_passes_in_every_unit(one: str, other: str, dimension: str) -> None:
    figure, limit = read_number(one, dimension), read_number(other, dimension)
    assert figure == limit
    assert figure <= limit and limit <= figure


@draws.property_test
@given(st.floats(-1e3, 1e3), st.floats(0, 10), st.floats(0, 10), st.floats(-1e3, 1e3))
def test_simple_acceptance_decides_more_and_never_otherwise(
        nominal: float, below: float, above: float, limit: float) -> None:
    figure = Bounds(nominal - below, nominal + above, nominal)
    guarded, simple = word(figure <= limit), word(nominal_of(figure) <= limit)
    assert simple != UNDECIDED
    assert guarded in (simple, UNDECIDED)
    assert (guarded == UNDECIDED) == (figure.lo <= limit < figure.hi)
