"""When devices have opened by their standards, and how long a fault lasts in a conductor.

UL 248-14: at 1.35 times its rating within an hour, at twice within 2 min (to 30 A) or 4 min (35 A
to 60 A). UL 248-2: at 1.6 times within 2 h (61 A to 200 A) or 4 h (to 1200 A). The UL 248 series:
1.1 times for at least 15 min (to 200 A) or 30 min (to 600 A). All as reprinted.
"""

from __future__ import annotations

from typing import Any

import pytest

from garboard.quantities.topics.heating import final_temperature, let_through_share
from garboard.quantities.topics.opening import (
    clearing_time,
    opening_points,
    opening_time,
    opens_within,
)
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Unknown
from garboard.values.conductor_size import read_size
from quantities.boats import figure, work_boat

GATES = [
    ("row 70: 30 A at 200 % opens within 120 s", 60.0, 30.0, "UL 248-14", 120.0),
    ("31 A has no gates", 62.0, 31.0, "UL 248-14", None),
    ("35 A at 200 % opens within 240 s", 70.0, 35.0, "UL 248-14", 240.0),
    ("60 A at 135 % opens within an hour", 81.0, 60.0, "UL 248-14", 3600.0),
    ("row 69: 61 A at 135 % is outside that part", 82.35, 61.0, "UL 248-14", None),
    ("at 134 % no time is given", 40.2, 30.0, "UL 248-14", None),
    ("a current known to be at least 200 %", Bounds(70.0, 300.0), 30.0, "UL 248-14", 120.0),
    ("a current that may be less than 135 %", Bounds(0.0, 300.0), 30.0, "UL 248-14", None),
    ("Class C, 200 A at 160 %", 320.0, 200.0, "UL 248-2 (Class C)", 7200.0),
    ("Class C, 201 A at 160 %", 321.6, 201.0, "UL 248-2", 14400.0),
    ("Class C, 200 A at 159 %", 318.0, 200.0, "UL 248-2", None),
    ("Class C, 60 A has no gate", 600.0, 60.0, "UL 248-2", None),
    ("Class C, beyond 1200 A there is none", 9000.0, 1201.0, "UL 248-2", None),
    ("Class T: it only says what it carries", 4000.0, 200.0, "UL 248-15", None),
    ("another part whose number begins alike", 400.0, 200.0, "UL 248-20", None),
    ("road vehicles: nothing was confirmed", 500.0, 30.0, "ISO 8820-3", None),
    ("gG: from memory, so it does not count", 500.0, 30.0, "IEC 60269-2", None),
]


@pytest.mark.parametrize(("what", "current", "rating", "standard", "expected"), GATES,
                         ids=[row[0] for row in GATES])
def test_opening_gates(what: str, current: object, rating: float, standard: str,
                       expected: float | None) -> None:
    points = opening_points.function(rating, standard).value
    value = points if isinstance(points, Unknown) else opening_time.function(current, points)
    if expected is None:
        assert isinstance(value, Unknown)
        assert value.reason == OUTSIDE_METHOD
    else:
        assert (value.lo, value.hi) == (0.0, expected)


POINTS = [
    (30.0, "UL 248-14", "40.5 A opened within 3600 s; 60 A opened within 120 s"),
    (100.0, "UL 248-2", "110 A carried for 900 s; 160 A opened within 7200 s"),
    (225.0, "UL 248-15", "247.5 A carried for 1800 s"),
]


@pytest.mark.parametrize(("rating", "standard", "points"), POINTS)
def test_points_as_the_trail_writes_them(rating: float, standard: str, points: str) -> None:
    found = opening_points.function(rating, standard)
    assert found.value == points
    assert len(found.table_rows) == points.count(";") + 1


def test_what_is_carried_opens_nothing() -> None:
    assert isinstance(opens_within("110 A carried for 900 s", 1e6), Unknown)


def test_the_virtual_time_of_a_declared_let_through() -> None:
    """60000 A²s of the fuse over the square of the largest fault current through its lead in A."""
    boat = work_boat()
    current = figure(boat, "wa.largest_fault_current")
    assert current > 1000
    assert figure(boat, "wa.clearing_time") == pytest.approx(60000 / current**2, rel=1e-9)


MISSING = Unknown.because(NOT_RECORDED, "f.let_through")
TIMES = [
    ("one device with a gate at or below the current", MISSING, 500.0, (POINTS[0][2],),
     Bounds(0.0, 120.0)),
    ("a current below its gates", MISSING, 40.0, (POINTS[0][2],), None),
    ("two devices, of which each takes a part", MISSING, 500.0, (POINTS[0][2], POINTS[0][2]), None),
    ("a device without confirmed points", MISSING, 500.0, (Unknown.because(OUTSIDE_METHOD),), None),
    ("a let-through counts before gates", 1000.0, 500.0, (POINTS[0][2],), 0.004),
]


@pytest.mark.parametrize(("what", "passed", "current", "points", "expected"), TIMES,
                         ids=[row[0] for row in TIMES])
def test_how_long_a_conductor_waits(what: str, passed: Any, current: float, points: Any,
                                    expected: Any) -> None:
    value = clearing_time.function(passed, current, points)
    if isinstance(expected, Bounds):
        assert (value.lo, value.hi) == (expected.lo, expected.hi)
    elif expected is None:
        assert isinstance(value, Unknown)
    else:
        assert value == pytest.approx(expected)


def test_the_adiabatic_form_ends_at_five_seconds() -> None:
    assert let_through_share.function(8.0, 16.0, 5.0).value == 0.5
    for quantity, inputs in ((let_through_share, (8.0, 16.0)),
                             (final_temperature, (8.0, read_size("6 mm2"), 90.0, True))):
        beyond = quantity.function(*inputs, 5.001).value
        assert isinstance(beyond, Unknown)
        assert beyond.reason == OUTSIDE_METHOD
