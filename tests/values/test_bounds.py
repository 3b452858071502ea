"""Arithmetic with bounds: the table of what cannot be computed, and true bounds by draws."""

from __future__ import annotations

import copy
import math
import operator
import pickle
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import (
    ASSUMPTION,
    CALCULATION_ERROR,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    TOLERANCE,
    UNCERTAINTY,
    UNRECORDED,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    rounded,
    rounded_value,
)

from . import draws

INF = math.inf
OPERATIONS = {"+": operator.add, "-": operator.sub, "*": operator.mul, "/": operator.truediv}


def of(lo: float, hi: float, nominal: float | None = None) -> Bounds:
    return Bounds(lo, hi, nominal)


RESULTS = [
    ("+", of(1, 2), 3.0, (4.0, 5.0)), ("+", 3, of(1, 2), (4.0, 5.0)),
    ("+", of(1, 2), of(10, 20), (11.0, 22.0)),
    ("-", of(1, 2), 3.0, (-2.0, -1.0)), ("-", 3.0, of(1, 2), (1.0, 2.0)),
    ("-", of(1, 2), of(10, 20), (-19.0, -8.0)),
    ("*", of(1, 2), -3.0, (-6.0, -3.0)), ("*", of(-1, 2), of(-5, 4), (-10.0, 8.0)),
    ("*", 0.5, of(1, 2), (0.5, 1.0)),
    ("/", of(1, 2), 4.0, (0.25, 0.5)), ("/", 4.0, of(1, 2), (2.0, 4.0)),
    ("/", of(-1, 2), of(-4, -2), (-1.0, 0.5)), ("/", of(1, 2), -1, (-2.0, -1.0)),
    # open sides
    ("+", of(0, INF), 1.0, (1.0, INF)), ("-", 1.0, of(0, INF), (-INF, 1.0)),
    ("-", of(0, INF), of(0, INF), (-INF, INF)), ("+", of(-INF, 1), of(0, 1), (-INF, 2.0)),
    ("*", of(0, INF), 2.0, (0.0, INF)), ("*", of(0, INF), -2.0, (-INF, 0.0)),
    ("*", of(0, INF), of(0, 5), (0.0, INF)), ("/", 6.0, of(2, INF), (0.0, 3.0)),
    ("/", of(1, INF), of(1, INF), (0.0, INF)), ("/", of(-INF, -1), of(1, INF), (-INF, 0.0)),
]


@pytest.mark.parametrize(("sign", "left", "right", "ends"), RESULTS)
def test_the_ends_of_a_result(sign: str, left: Any, right: Any, ends: tuple[float, float]) -> None:
    result = OPERATIONS[sign](left, right)
    assert (result.lo, result.hi) == ends


#: what cannot be computed in an authored expression is unknown, outside method
UNDEFINED = [
    ("/", of(1, 2), 0.0), ("/", of(1, 2), 0), ("/", 1.0, of(0, 1)), ("/", 1.0, of(-1, 0)),
    ("/", 1.0, of(-1, 1)), ("/", of(1, 2), of(0, INF)), ("*", of(1e200, 1e201), 1e200),
    ("+", of(0, 1.7e308), 1.7e308), ("*", of(1e200, INF), 1e200), ("+", of(0, 1), INF),
    ("-", of(-INF, 1), -INF), ("+", of(0, 1), math.nan), ("*", of(1, 2), math.nan),
    ("*", of(1.0, INF, 1e308), 10.0),
]


@pytest.mark.parametrize(("sign", "left", "right"), UNDEFINED)
def test_what_cannot_be_computed_is_outside_method(sign: str, left: Any, right: Any) -> None:
    result = OPERATIONS[sign](left, right)
    assert isinstance(result, Unknown)
    assert result.reason == OUTSIDE_METHOD
    assert not result.is_error


def test_nought_times_an_open_side_is_nought() -> None:
    assert of(0, INF) * 0.0 == 0.0
    assert type(of(0, INF) * 0.0) is float


def test_ends_that_meet_become_a_plain_number_unless_assumed() -> None:
    assert type(of(1, 2) * 0.0) is float
    assumed = Bounds(2.0, 2.0, basis=(ASSUMPTION,)) * 3.0
    assert isinstance(assumed, Bounds)
    assert (assumed.lo, assumed.hi, assumed.assumed) == (6.0, 6.0, True)


def test_nominals_go_through_the_same_operation() -> None:
    assert (of(1, 3, 2) * of(10, 30, 20)).nominal == 40.0  # type: ignore[union-attr]
    assert (of(1, 3, 2) + 1).nominal == 3.0  # type: ignore[union-attr]
    assert (of(1, 3, 2) + of(1, 2)).nominal is None  # type: ignore[union-attr]
    assert (-of(1, 3, 2)).nominal == -2.0
    assert abs(of(-3, 1, -2)).nominal == 2.0


@pytest.mark.parametrize(("value", "ends"), [
    (of(1, 2), (1, 2)), (of(-2, -1), (1, 2)), (of(-3, 2), (0, 3)), (of(-INF, 2), (0, INF))])
def test_magnitude(value: Bounds, ends: tuple[float, float]) -> None:
    assert (abs(value).lo, abs(value).hi) == ends


def test_basis_and_causes_of_both_sides_are_kept() -> None:
    one = Bounds(1.0, 2.0, 1.5, basis=(TOLERANCE,), causes=(Cause(WITHIN_UNCERTAINTY, "a"),))
    other = Bounds(0.0, INF, basis=(UNRECORDED,), causes=(Cause(NOT_RECORDED, "b"),))
    both = one + other
    assert isinstance(both, Bounds)
    assert both.basis == (TOLERANCE, UNRECORDED)
    assert both.causes == (Cause(NOT_RECORDED, "b"), Cause(WITHIN_UNCERTAINTY, "a"))


@pytest.mark.parametrize("arguments", [
    {"lo": 2.0, "hi": 1.0}, {"lo": math.nan, "hi": 1.0}, {"lo": 0.0, "hi": math.nan},
    {"lo": INF, "hi": INF}, {"lo": -INF, "hi": -INF}, {"lo": 0.0, "hi": 1.0, "nominal": 2.0},
    {"lo": 0.0, "hi": 1.0, "nominal": math.nan}, {"lo": 0.0, "hi": 1.0, "basis": ("guess",)},
    {"lo": 0.0, "hi": 1.0, "nominal": 0.5, "basis": (ASSUMPTION,)},
    {"lo": 0.0, "hi": 1.0, "nominal": 0.5, "basis": (TOLERANCE, UNRECORDED)},
    {"lo": 0.0, "hi": 1.0, "causes": (Cause(CALCULATION_ERROR),)},
])
def test_what_are_no_bounds_is_refused(arguments: dict[str, Any]) -> None:
    with pytest.raises(ValueError):
        Bounds(**arguments)


@pytest.mark.parametrize("other", ["text", None, True, [1.0]])
def test_bounds_calculate_with_numbers_only(other: Any) -> None:
    for operation in OPERATIONS.values():
        with pytest.raises(TypeError):
            operation(of(1, 2), other)
        with pytest.raises(TypeError):
            operation(other, of(1, 2))
    with pytest.raises(TypeError):
        _ = of(1, 2) <= other
    assert (of(1, 2) == other) is False
    assert (of(1, 2) != other) is True


finite_numbers = st.one_of(
    st.integers(-20, 20).map(float),
    st.floats(-1e6, 1e6, allow_nan=False, allow_infinity=False),
    st.floats(allow_nan=False, allow_infinity=False))


@st.composite
def bounds_and_point(draw: st.DrawFn) -> tuple[Any, float]:
    """A number as the engine knows it, and a value it could have."""
    low, high = sorted((draw(finite_numbers) + 0.0, draw(finite_numbers) + 0.0))
    point = draw(st.floats(low, high))
    kind = draw(st.sampled_from(["exact", "closed", "open low", "open high"]))
    if kind == "exact":
        return point, point
    return Bounds(-INF if kind == "open low" else low,
                  INF if kind == "open high" else high), point


trees = st.recursive(bounds_and_point(), lambda inner: st.tuples(
    st.sampled_from(sorted(OPERATIONS)), inner, inner), max_leaves=6)


def both_ways(tree: Any) -> tuple[Any, float | None]:
    """The value with bounds, and the value of the points (``None`` where it is undefined)."""
    if len(tree) == 2:
        return tree
    (left, left_point), (right, right_point) = both_ways(tree[1]), both_ways(tree[2])
    value: Any = None
    try:
        value = OPERATIONS[tree[0]](left, right)
    except ZeroDivisionError:
        value = Unknown.because(OUTSIDE_METHOD)
    if left_point is None or right_point is None:
        return value, None
    try:
        point = OPERATIONS[tree[0]](left_point, right_point)
    except ZeroDivisionError:
        return value, None
    return value, point if math.isfinite(point) else None


@draws.property_test
@given(trees)
def test_bounds_contain_the_result_of_every_point_inside(tree: Any) -> None:
    value, point = both_ways(tree)
    if point is None:
        return
    if isinstance(value, Bounds):
        assert value.contains(point)
        assert rounded_value(value).contains(rounded(point))  # type: ignore[attr-defined]
    elif isinstance(value, float) and math.isfinite(value):
        assert value == point


@draws.property_test
@given(bounds_and_point(), bounds_and_point(), st.sampled_from(sorted(draws.SIGNS)))
def test_no_comparison_contradicts_the_points(one: Any, other: Any, sign: str) -> None:
    verdict = draws.SIGNS[sign](one[0], other[0])
    if not isinstance(verdict, Unknown):
        assert verdict == draws.SIGNS[sign](one[1], other[1])


@draws.property_test
@given(bounds_and_point(), st.floats(0, 10), st.sampled_from(sorted(OPERATIONS)), finite_numbers)
def test_wider_bounds_give_wider_results(pair: Any, more: float, sign: str, other: float) -> None:
    narrow = pair[0]
    if not isinstance(narrow, Bounds):
        narrow = Bounds(narrow, narrow)
    wide = Bounds(max(narrow.lo - more, -INF), narrow.hi + more)
    if sign == "/" and other == 0:
        return
    small, large = OPERATIONS[sign](narrow, other), OPERATIONS[sign](wide, other)
    if isinstance(small, Bounds) and isinstance(large, Bounds):
        assert large.lo <= small.lo and small.hi <= large.hi
    elif isinstance(small, float) and isinstance(large, Bounds):
        assert large.contains(small)


VALUES = [of(1, 2), of(1, 3, 2), of(0, INF),
          Bounds(1.0, 2.0, basis=(UNCERTAINTY,), causes=(Cause(WITHIN_UNCERTAINTY, "a.b"),))]


@pytest.mark.parametrize("copied", [lambda x: pickle.loads(pickle.dumps(x)), copy.copy,
                                    copy.deepcopy])
@pytest.mark.parametrize("value", VALUES)
def test_a_copy_is_the_same(copied: Any, value: Bounds) -> None:
    assert copied(value).same_as(value)
    assert hash(copied(value)) == hash(value)


def test_same_as_tells_bounds_apart() -> None:
    for at, one in enumerate(VALUES):
        for other in VALUES[at + 1:]:
            assert not one.same_as(other)
    assert not of(1, 1).same_as(1.0)


@pytest.mark.parametrize(("number", "twelve"), [
    (0.1 + 0.2, 0.3), (-0.0, 0.0), (28672.123456789012, 28672.1234568),
    (1e300 / 3, 3.33333333333e299),
    (2 / 3, 0.666666666667), (INF, INF)])
def test_figures_are_rounded_to_twelve_digits(number: float, twelve: float) -> None:
    assert rounded(number) == twelve
    assert math.copysign(1, rounded(number)) == 1


def test_rounding_reaches_the_ends_and_leaves_the_rest() -> None:
    value = rounded_value(Bounds(0.1 + 0.2, 1.0, 2 / 3, causes=(Cause(NOT_RECORDED, "a"),)))
    assert isinstance(value, Bounds)
    assert (value.lo, value.hi, value.nominal) == (0.3, 1.0, 0.666666666667)
    assert value.causes == (Cause(NOT_RECORDED, "a"),)
    unknown = Unknown.because(NOT_RECORDED)
    assert rounded_value(unknown) is unknown
    assert rounded_value("text") == "text"
    assert rounded_value(7) == 7
