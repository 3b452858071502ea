"""What a device is taken to break, from its declared points and the highest voltage."""

from __future__ import annotations

import math

import pytest

from garboard.quantities import Item
from garboard.quantities.topics.protection import breaking_capacity, voltage_rating
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Cause, Unknown

WHY = (Cause(NOT_RECORDED, "source.tolerance"),)


def _points(*points: tuple[float, str | None, float]) -> tuple[Item, ...]:
    return tuple(Item(f"f.breaks[{n}]", "device.breaks", {
        "voltage": voltage, "current": current,
        "voltage.kind": Unknown.because(NOT_RECORDED, f"f.breaks[{n}].voltage.kind")
        if kind is None else kind}, lambda item, name: None)
        for n, (voltage, kind, current) in enumerate(points))


TWO = _points((32, "DC", 10e3), (125, "DC", 5e3))
CASES = [
    ("the point at the voltage itself counts", TWO, 32.0, 10e3),
    ("above it only the higher point counts", TWO, 32.1, 5e3),
    ("above all points nothing is known", TWO, 126.0, OUTSIDE_METHOD),
    ("AC proves nothing on DC", _points((250, "AC", 200e3)), 29.2, OUTSIDE_METHOD),
    ("an AC point beside a DC one is left out", _points((250, "AC", 200e3), (58, "DC", 2e3)),
     29.2, 2e3),
    ("a voltage that is open upwards leaves at least nothing", TWO,
     Bounds(28.0, math.inf, basis=("unrecorded",), causes=WHY), (0.0, 10e3)),
    ("a voltage between two points gives both", TWO, Bounds(30.0, 40.0, 35.0), (5e3, 10e3)),
    ("a point without AC or DC may be worth nothing", _points((58, None, 6e3)), 29.2, (0.0, 6e3)),
    ("no point at all", (), 29.2, OUTSIDE_METHOD),
]


@pytest.mark.parametrize(("what", "points", "voltage", "expected"), CASES,
                         ids=[case[0] for case in CASES])
def test_breaking_capacity(what: str, points: tuple[Item, ...], voltage: object,
                           expected: object) -> None:
    value = breaking_capacity.function("f", points, voltage)
    if isinstance(expected, str):
        assert isinstance(value, Unknown)
        assert (value.reason, value.paths) == (expected, ("f.breaks",))
    elif isinstance(expected, tuple):
        assert isinstance(value, Bounds)
        assert (value.lo, value.hi) == expected
    else:
        assert value == expected


def test_a_voltage_open_upwards_asks_for_what_would_close_it() -> None:
    """No point could be declared high enough; the device's points are asked for below that only."""
    open_above = breaking_capacity.function(
        "f", TWO, Bounds(28.0, math.inf, basis=("unrecorded",), causes=WHY))
    assert [cause.path for cause in open_above.causes] == ["source.tolerance"]
    above_all = breaking_capacity.function(
        "f", TWO, Bounds(28.0, 200.0, basis=("unrecorded",), causes=WHY))
    assert {cause.path for cause in above_all.causes} == {"source.tolerance", "f.breaks"}


def test_voltage_rating_takes_the_highest_dc_voltage() -> None:
    assert voltage_rating.function("f", TWO) == 125
    assert voltage_rating.function("f", _points((250, "AC", 1e3), (32, "DC", 1e3))) == 32
    assert isinstance(voltage_rating.function("f", _points((250, "AC", 1e3))), Unknown)
