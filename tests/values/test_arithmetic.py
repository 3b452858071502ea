"""Quotients, sums, least and greatest of exact, bounded and unknown numbers."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import (
    ASSUMPTION,
    CALCULATION_ERROR,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    UNRECORDED,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    finite,
    largest,
    quotient,
    same_value,
    smallest,
    total,
)

from . import draws

INF = math.inf
U = Unknown.because(NOT_RECORDED, "u")
V = Unknown.because(NOT_RECORDED, "v")
E = Unknown.because(CALCULATION_ERROR, detail="e")
WITHIN = (Cause(WITHIN_UNCERTAINTY),)


def between(lo: float, hi: float, nominal: float | None = None, path: str = "") -> Bounds:
    return Bounds(lo, hi, nominal, causes=(Cause(WITHIN_UNCERTAINTY, path),))


def at_most(hi: float, *causes: Cause) -> Bounds:
    return Bounds(-INF, hi, basis=(UNRECORDED,), causes=causes)


@pytest.mark.parametrize(("dividend", "divisor", "result"), [
    (6.0, 3.0, 2.0), (6.0, between(2.0, 3.0), between(2.0, 3.0)), (U, 2.0, U), (2.0, U, U),
    (E, 0.0, E), (2.0, E, E)])
def test_a_quotient(dividend: Any, divisor: Any, result: Any) -> None:
    assert same_value(quotient(dividend, divisor), result)


@pytest.mark.parametrize(("dividend", "divisor"), [
    (6.0, 0.0), (6.0, -0.0), (0.0, 0.0), (U, 0.0), (U, 0), (between(1.0, 2.0), 0.0),
    (1.0, between(-1.0, 1.0)), (1.0, between(0.0, 1.0)), (1e300, 1e-300), (10 ** 400, 2.0)])
def test_a_quotient_that_cannot_be_computed_is_outside_method(dividend: Any, divisor: Any) -> None:
    result = quotient(dividend, divisor)
    assert isinstance(result, Unknown)
    assert result.reason == OUTSIDE_METHOD
    assert (result & False) is False


@pytest.mark.parametrize("number", [INF, -INF, math.nan])
def test_what_overflowed_is_outside_method(number: float) -> None:
    for result in (finite(number), total([number, 1.0]), smallest([number]), largest([number]),
                   total([number, between(0.0, 1.0)])):
        assert isinstance(result, Unknown)
        assert result.reason == OUTSIDE_METHOD


@pytest.mark.parametrize("number", [1.0, U, between(0.0, 1.0), Bounds(0.0, INF)])
def test_what_is_finite_is_left_alone(number: Any) -> None:
    assert finite(number) is number


LEAST = [
    ([3.0, 1.0, 2.0], 1.0), ([7.0], 7.0), ([U], U), ([U, V], U.joined(V)),
    ([E], E), ([1.0, E], E), ([E, U], E), ([between(1.0, 2.0), E, U], E),
    ([between(1.0, 4.0), 3.0], between(1.0, 3.0)),
    ([between(1.0, 4.0, 2.0), 3.0], between(1.0, 3.0, 2.0)),
    ([between(1.0, 4.0, 3.5), 3.0], between(1.0, 3.0, 3.0)),
    # a part above all of another has no say: neither its causes nor its missing nominal count
    ([between(1.0, 2.0, 1.5), between(5.0, 6.0, None, "far")], between(1.0, 2.0, 1.5)),
    ([1.0, between(5.0, 6.0)], 1.0), ([1.0, Bounds(5.0, INF)], 1.0),
    ([between(1.0, 2.0, 1.5), Bounds(5.0, 6.0, basis=(ASSUMPTION,))], between(1.0, 2.0, 1.5)),
    # an unknown part leaves one side open
    ([1.0, U], at_most(1.0, *U.causes)), ([U, 1.0, V], at_most(1.0, *U.joined(V).causes)),
    ([between(1.0, 2.0), U], Bounds(-INF, 2.0, basis=("tolerance", UNRECORDED),
                                    causes=(*U.causes, *WITHIN))),
    ([Bounds(0.0, INF, basis=(UNRECORDED,), causes=V.causes), U], U.joined(V)),
]


@pytest.mark.parametrize(("numbers", "result"), LEAST)
def test_the_least(numbers: list[Any], result: Any) -> None:
    assert same_value(smallest(numbers), result)
    assert same_value(smallest(reversed(numbers)), result)


@pytest.mark.parametrize(("numbers", "result"), LEAST)
def test_the_greatest_is_the_mirror(numbers: list[Any], result: Any) -> None:
    assert same_value(largest([-number for number in numbers]), -result)


def test_an_open_side_still_decides() -> None:
    assert (smallest([5.0, U]) <= 5.0) is True
    assert (largest([5.0, U]) > 4.0) is True
    assert isinstance(smallest([5.0, U]) <= 4.0, Unknown)


@pytest.mark.parametrize("function", [smallest, largest])
def test_least_and_greatest_of_nothing_are_outside_method(function: Any) -> None:
    result = function([])
    assert isinstance(result, Unknown)
    assert result.reason == OUTSIDE_METHOD


@pytest.mark.parametrize(("numbers", "result"), [
    ([], 0.0), ([1.0, 2.0], 3.0), ([0.1] * 10, 1.0), ([1e100, 1.0, -1e100], 1.0),
    ([1.0, U, V], U.joined(V)), ([U, E], E),
    ([between(1.0, 2.0), 3.0, 4], between(8.0, 9.0)),
    ([between(1.0, 2.0, 1.5), between(1.0, 2.0, 1.5)], between(2.0, 4.0, 3.0)),
    ([between(1.0, 2.0, 1.5), between(1.0, 2.0)], between(2.0, 4.0)),
    ([Bounds(0.0, INF), 1.0], Bounds(1.0, INF)),
    ([between(1.0, 2.0), U], Unknown((*WITHIN, *U.causes)))])
def test_a_sum(numbers: list[Any], result: Any) -> None:
    assert same_value(total(numbers), result)
    assert same_value(total(reversed(numbers)), result)


@pytest.mark.parametrize("numbers", [
    [1.7e308, 1.7e308], [between(1e308, 1.7e308), 1.7e308], [Bounds(1.7e308, INF), 1.7e308]])
def test_a_sum_that_overflows_is_outside_method(numbers: list[Any]) -> None:
    result = total(numbers)
    assert isinstance(result, Unknown)
    assert result.reason == OUTSIDE_METHOD


numbers = st.floats(-1e6, 1e6)


@st.composite
def parts_and_points(draw: st.DrawFn) -> tuple[list[Any], list[float]]:
    parts: list[Any] = []
    points: list[float] = []
    for _ in range(draw(st.integers(1, 5))):
        low, high = sorted((draw(numbers) + 0.0, draw(numbers) + 0.0))
        point = draw(st.floats(low, high))
        parts.append(draw(st.sampled_from([point, Bounds(low, high), Bounds(low, INF),
                                           Bounds(-INF, high), U])))
        points.append(point)
    return parts, points


@draws.property_test
@given(parts_and_points(), st.sampled_from([(total, math.fsum), (smallest, min), (largest, max)]))
def test_results_contain_those_of_every_point(drawn: Any, functions: Any) -> None:
    parts, points = drawn
    result, point = functions[0](parts), functions[1](points)
    if isinstance(result, Bounds):
        assert result.contains(point)
    elif isinstance(result, float):
        assert result == point
