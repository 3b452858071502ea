"""The highest stage of a charging source: what is not recorded never lowers it."""

from __future__ import annotations

import math

import pytest

from garboard.quantities.topics.voltages import highest_stage_voltage
from garboard.values import NOT_RECORDED, Bounds, Unknown

NAMES = ("bulk", "absorption", "float_stage", "equalising", "equalising_enabled", "tolerance")

CASES = [
    ((None, 28.4, 27.0, None, False, 0.2), 28.6),
    ((29.0, 28.4, 27.0, None, False, 0.0), 29.0),
    ((None, 28.4, 27.0, 31.0, True, 0.2), 31.2),
    ((None, 28.4, 27.0, 31.0, False, 0.2), 28.6),
    ((None, 28.4, 27.0, 31.0, None, 0.0), (28.4, 31.0, "equalising_enabled")),
    ((None, 28.4, 27.0, None, True, 0.0), (28.4, math.inf, "equalising")),
    ((None, 28.4, 27.0, None, None, 0.0), (28.4, math.inf, "equalising")),
    ((None, 28.4, 27.0, None, False, None), (28.4, math.inf, "tolerance")),
    ((None, None, 27.0, None, False, 0.0), (27.0, math.inf, "absorption")),
    ((None, None, None, None, False, 0.0), ("unknown", "absorption")),
]


@pytest.mark.parametrize(("given", "expected"), CASES)
def test_highest_stage(given: tuple[object, ...], expected: object) -> None:
    arguments = {name: Unknown.because(NOT_RECORDED, f"s.{name}") if value is None else value
                 for name, value in zip(NAMES, given, strict=True)}
    value = highest_stage_voltage.function(**arguments)
    if isinstance(expected, float):
        assert value == pytest.approx(expected, rel=1e-12)
    elif isinstance(expected, tuple) and expected[0] == "unknown":
        assert isinstance(value, Unknown)
        assert f"s.{expected[1]}" in value.paths
    else:
        assert isinstance(value, Bounds)
        lo, hi, path = expected
        assert (value.lo, value.hi, value.nominal) == (lo, hi, None)
        assert f"s.{path}" in {cause.path for cause in value.causes}
