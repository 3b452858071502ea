"""Temperature compensation in the cold, by hand."""

from __future__ import annotations

import math

import pytest

from garboard.quantities.topics.cold import highest_stage_voltage_in_cold
from garboard.values import NOT_RECORDED, Bounds, Unknown

MISSING = Unknown.because(NOT_RECORDED, "s.temperature_compensation")
CASES = [
    ("48 mV/K at -4 °C: 24 K to 29 K below", 28.8, -0.048, (-4.0, 10.0), (29.952, 30.192)),
    ("switched off", 28.8, 0.0, (-4.0,), 28.8),
    ("warm places add nothing", 28.8, -0.048, (30.0,), 28.8),
    ("not recorded", 28.8, MISSING, (-4.0,), (28.8, math.inf)),
    ("how cold it gets is not recorded", 28.8, -0.048, (MISSING,), (28.8, math.inf)),
    ("no stage", MISSING, -0.048, (-4.0,), None),
]


@pytest.mark.parametrize(("what", "stage", "compensation", "coldest", "expected"), CASES,
                         ids=[case[0] for case in CASES])
def test_stage_in_the_cold(what: str, stage: object, compensation: object, coldest: object,
                           expected: object) -> None:
    value = highest_stage_voltage_in_cold.function(stage, compensation, coldest).value
    if expected is None:
        assert isinstance(value, Unknown)
    elif isinstance(expected, tuple):
        assert isinstance(value, Bounds)
        assert (value.lo, value.hi) == pytest.approx(expected)
    else:
        assert value == expected
