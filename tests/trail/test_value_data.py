"""Values as data and back, exactly; and what is no value."""

from __future__ import annotations

import json
import math
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.trail import canonical_bytes, value_as_data, value_from_data
from garboard.values import REASONS, Bounds, Cause, Unknown
from garboard.values.conductor_size import read_size

CAUSE = Cause("not recorded", "f1.breaks", "no label")
UNSAID = {"reason": "within uncertainty", "path": "", "detail": ""}
VALUES: list[tuple[Any, Any]] = [
    (0.0021, 0.0021), (-0.0, -0.0), (0.0, 0.0), (3, 3), (3.0, 3.0), (True, True), (False, False),
    ("LFP", "LFP"), ("", ""), (None, None),
    (date(2026, 4, 18), {"date": "2026-04-18"}),
    (("NH", "T"), ["NH", "T"]), ((), []),
    ((1.5, Unknown([CAUSE])), [1.5, {"unknown": [
        {"reason": "not recorded", "path": "f1.breaks", "detail": "no label"}]}]),
    (Bounds(1.0, 2.0, 1.5), {"lo": 1.0, "hi": 2.0, "nominal": 1.5, "basis": ["tolerance"],
                             "causes": [UNSAID]}),
    (Bounds(0.0, math.inf, basis=("unrecorded",), causes=(CAUSE,)),
     {"lo": 0.0, "hi": None, "nominal": None, "basis": ["unrecorded"],
      "causes": [{"reason": "not recorded", "path": "f1.breaks", "detail": "no label"}]}),
    (Bounds(-math.inf, 45.0, basis=("assumption", "uncertainty")),
     {"lo": None, "hi": 45.0, "nominal": None, "basis": ["assumption", "uncertainty"],
      "causes": [UNSAID]}),
    (read_size("50 mm2"), {"size": "50", "system": "mm2", "area_mm2": 50.0, "written": "50 mm2"}),
]


def _same(one: Any, other: Any) -> bool:
    """Equal with the same types, the sign of zero included."""
    if isinstance(one, (Bounds, Unknown)):
        return one.same_as(other)
    if isinstance(one, (tuple, list)):
        return (type(one) is type(other) and len(one) == len(other)
                and all(map(_same, one, other)))
    if isinstance(one, float):
        return type(other) is float and repr(one) == repr(other)
    return type(one) is type(other) and bool(one == other)


@pytest.mark.parametrize(("value", "data"), VALUES)
def test_there_and_back(value: Any, data: Any) -> None:
    assert _same(value_as_data(value), data)
    assert _same(value_from_data(data), value)


_CAUSES = st.builds(Cause, st.sampled_from(REASONS), st.text("ab.-1", max_size=6),
                    st.text(max_size=6))
_RESOLVABLE = _CAUSES.filter(lambda cause: cause.reason != "calculation error")
_FINITE = st.floats(allow_nan=False, allow_infinity=False)


@st.composite
def _bounds(draw: st.DrawFn) -> Bounds:
    lo, nominal, hi = sorted((draw(_FINITE), draw(_FINITE), draw(_FINITE)))
    return Bounds(draw(st.sampled_from([lo, -math.inf])), draw(st.sampled_from([hi, math.inf])),
                  draw(st.sampled_from([nominal, None])),
                  basis=tuple(draw(st.sets(st.sampled_from(["tolerance", "uncertainty"])))),
                  causes=Unknown(draw(st.lists(_RESOLVABLE, min_size=1, max_size=3))).causes)


_VALUES = st.one_of(_FINITE, st.integers(), st.booleans(), st.text(), st.none(), st.dates(),
                    _bounds(), st.builds(Unknown, st.lists(_CAUSES, min_size=1, max_size=3)))


@given(st.one_of(_VALUES, st.lists(_VALUES, max_size=4).map(tuple)))
def test_any_value_comes_back(value: Any) -> None:
    assert _same(value_from_data(value_as_data(value)), value)


@given(_FINITE)
def test_a_number_comes_back_from_bytes(number: float) -> None:
    read = value_from_data(json.loads(canonical_bytes(value_as_data(number))), "number")
    assert type(read) is float
    assert read == number


@pytest.mark.parametrize("thing", [object(), {"a": 1}, {1}, b"x", 1j])
def test_what_is_no_value(thing: object) -> None:
    with pytest.raises(TypeError):
        value_as_data(thing)
