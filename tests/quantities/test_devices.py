"""Devices among each other: polarity, side by side, in series, opening, time constants, withstand.

Sources stand beside the rows; the inductance of a circle is held against Neumann's integral.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from garboard.quantities.topics.time_constants import greatest_inductance
from garboard.values import Bounds, Unknown
from quantities.boats import figure, work_boat

ON_THE_BOAT = [
    # facts of the wiring: who can feed whom
    ("pump breaker, fed from the bank only", (), "b1.fed_from_both_sides", False),
    ("alternator breaker, between bank and alternator", (), "b2.fed_from_both_sides", True),
    ("a string's fuse, between two batteries", (), "fa.fed_from_both_sides", True),
    ("one-way breaker fed one way", (), "b1.polarity_suits", True),
    ("one-way breaker fed both ways", (), "b2.polarity_suits", False),
    ("one-way breaker the wrong way round",
     (("polarity_correct: yes, breaks: [{current: 5 kA, voltage: 65",
       "polarity_correct: no, breaks: [{current: 5 kA, voltage: 65"),), "b1.polarity_suits", False),
    ("breaker that breaks both ways, fed both ways",
     (("rating: 150 A, resistance: 0.40 mΩ, polarity_sensitive: yes",
       "rating: 150 A, resistance: 0.40 mΩ, polarity_sensitive: no"),), "b2.polarity_suits", True),
    ("breaker whose polarity nobody noted, fed both ways",
     (("rating: 150 A, resistance: 0.40 mΩ, polarity_sensitive: yes, polarity_correct: yes,",
       "rating: 150 A, resistance: 0.40 mΩ,"),), "b2.polarity_suits", None),
    # row 72: gG 160 A before 100 A is as 1.60, before 125 A (1.28) it is not enough; from memory
    ("160 A before 100 A", (), "f1.series_ratio", 1.6),
    ("160 A before 100 A, gG", (), "f1.opens_before_those_before_it", True),
    ("160 A before 102 A, gG: 1.569, as little enough as the 250 A before 160 A of the series",
     (("rating: 100 A, resistance: 0.50", "rating: 102 A, resistance: 0.50"),),
     "f1.opens_before_those_before_it", False),
    ("160 A before 125 A, gG",
     (("rating: 100 A, resistance: 0.50", "rating: 125 A, resistance: 0.50"),),
     "f1.opens_before_those_before_it", False),
    ("250 A before 160 A is 1.5625", (), "f0.series_ratio", 1.5625),
    ("a string's fuse has none before it", (), "fa.series_ratio", None),
    ("class T fuses have no ratio", (), "f0.opens_before_those_before_it", None),
    ("declared time constant of the point that covers", (), "f0.declared_time_constant", 0.015),
    ("no point covers the current", (), "b2.declared_time_constant", None),
    ("withstand of the isolator", (), "isolator.withstand_energy", 25e6),
    ("withstand of the bus", (), "main-bus.withstand_energy", 40e6),
    ("let-through nobody declared", (), "isolator.let_through", None),
]


@pytest.mark.parametrize(("what", "changes", "key", "expected"), ON_THE_BOAT,
                         ids=[row[0] for row in ON_THE_BOAT])
def test_on_the_boat(what: str, changes: tuple[tuple[str, str], ...], key: str,
                     expected: object) -> None:
    value = figure(work_boat(*changes), key)
    if expected is None:
        assert isinstance(value, Unknown)
    else:
        assert value == expected


def test_fuses_side_by_side() -> None:
    boat = work_boat(("  - id: windlass-feed\n    from: panel", """  - id: second-feed
    from: main-bus
    to: panel
    through:
      - fuse: {id: f9, class: gG, rating: 160 A}
  - id: windlass-feed
    from: panel"""))
    assert figure(boat, "f9.devices_in_parallel") == 2
    assert figure(boat, "f0.devices_in_parallel") == 2
    assert figure(boat, "fa.devices_in_parallel") == 1


def _neumann(radius: float, thin: float) -> float:
    """Mutual inductance of a circle and itself at the mean distance of a round wire's filaments."""
    distance = thin * math.exp(-0.25)
    angle = np.concatenate([np.geomspace(1e-9, math.pi, 400_001)])
    values = np.cos(angle) / np.sqrt(4 * radius**2 * np.sin(angle / 2) ** 2 + distance**2)
    return float(4e-7 * math.pi * radius**2 * np.trapezoid(values, angle))


@pytest.mark.parametrize(("wire", "area"), [(1.0, 50.0), (6.0, 35.0), (16.0, 25.0), (12.0, 4.0)])
def test_inductance_of_a_circle_by_neumann(wire: float, area: float) -> None:
    radius, thin = wire / (2 * math.pi), math.sqrt(area / math.pi) / 1000
    assert greatest_inductance(wire, area) == pytest.approx(_neumann(radius, thin), rel=0.005)


@pytest.mark.parametrize("apart", [0.02, 0.1, 0.5, 1.0])
def test_two_parallel_wires_have_less_than_the_circle(apart: float) -> None:
    """Of the same wire: a line of two wires, so far apart, whose ends take their part of it."""
    wire, area = 6.0, 35.0
    thin, long = math.sqrt(area / math.pi) / 1000, wire / 2 - apart
    line = 4e-7 * long * (math.log(apart / thin) + 0.25)
    assert line < greatest_inductance(wire, area)


def test_time_constant_of_common_figures() -> None:
    """Row 66: 2 µH and 5 mΩ are 0.40 ms; 63.2 %, 95.0 % and 99.3 % after one, three and five."""
    tau = 2e-6 / 5e-3
    assert tau == pytest.approx(0.40e-3)
    assert [round(1 - math.exp(-n), 3) for n in (1, 3, 5)] == [0.632, 0.950, 0.993]


def test_longest_time_constant_of_the_boat_is_that_of_a_conductor_alone() -> None:
    boat = work_boat()
    found = figure(boat, "f0.longest_time_constant")
    each = [greatest_inductance(2 * length, area) / figure(boat, f"{name}.loop_resistance")
            for name, length, area in [("wa", 0.5, 50), ("wb", 0.8, 50), ("w0", 3, 35),
                                       ("w1", 8, 25), ("w2", 6, 4), ("w3", 1.5, 25),
                                       ("w4", 4, 35), ("w5", 2, 10)]]
    assert isinstance(found, Bounds)
    assert (found.lo, found.hi) == (0.0, pytest.approx(max(each), rel=1e-9))
