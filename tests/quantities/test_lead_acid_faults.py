"""IEC 61660-1 (from memory) beyond a conductor: two lead-acid strings on one bus, by hand.

Each battery has 13.2 V and 4 mΩ; its lead is 2 m of 50 mm² with a return as the outgoing one, cold
at 5 °C: 2 · 2 / 58 / 50 · (234.5 + 5) / 254.5 = 1.2980 mΩ; the fuse 0.2 mΩ. One string gives a peak
of 13.2 / (0.9 · 4 + 1.4980) mΩ = 2589.3 A and 0.95 · 13.2 / (4 + 1.4980) mΩ = 2280.8 A after a
second. Row 64 is the same without a conductor: 3667 A and 3135 A.
"""

from __future__ import annotations

import math
from typing import Any

import pytest

from garboard.values import OUTSIDE_METHOD, Unknown
from quantities.boats import figure, figures_of

BOAT = """
format: installation-record/1
vessel: {name: Bittern, kind: workboat, nominal_voltage: 12 V}
survey: {date: 2026-05-04}
places: [{id: locker, temperature: 5 .. 30 °C}]
batteries:
  - id: a
    chemistry: AGM
    open_circuit_voltage_max: 13.2 V
    internal_resistance: 4 mΩ
    place: locker
  - id: b
    chemistry: AGM
    open_circuit_voltage_max: 13.2 V
    internal_resistance: 4 mΩ
    place: locker
buses: [{id: main}]
charging_sources: []
loads: []
runs:
"""
RUN = """
  - id: lead-{0}
    from: {0}.positive
    to: main
    return: as outgoing
    through:
      - conductor: {{id: w{0}, size: 50 mm2, length: 2 m, material: copper, crosses: [locker]}}
      - fuse: {{id: f{0}, rating: 200 A, resistance: 0.2 mΩ}}
"""
BOTH = BOAT + RUN.format("a") + RUN.format("b")
ONE = BOAT.replace(BOAT[BOAT.index("  - id: b"):BOAT.index("buses:")], "") + RUN.format("a")
LOOP = 4 / 58 / 50 * 239.5 / 254.5 + 0.0002
PEAK, SECOND = 13.2 / (0.0036 + LOOP), 0.95 * 13.2 / (0.004 + LOOP)
ROWS = [
    ("one string", ONE, "main.peak_fault_current", PEAK),
    ("one string after a second", ONE, "main.one_second_fault_current", SECOND),
    ("two alike give twice as much", BOTH, "main.peak_fault_current", 2 * PEAK),
    ("two alike after a second", BOTH, "main.one_second_fault_current", 2 * SECOND),
    ("a fuse passes what the other gives or its own", BOTH, "fa.one_second_fault_current",
     0.95 * 13.2 / (0.004 + LOOP - 0.0002)),
    ("without a conductor: row 64", ONE, "a.peak_fault_current", 11000 / 3),
    ("without a conductor: row 64, a second", ONE, "a.one_second_fault_current", 3135.0),
]


@pytest.mark.parametrize(("what", "text", "key", "expected"), ROWS, ids=[row[0] for row in ROWS])
def test_currents(what: str, text: str, key: str, expected: float) -> None:
    found: Any = figure(figures_of(text), key)
    assert found == pytest.approx(expected, rel=1e-9)


def test_the_figures_of_the_page() -> None:
    assert pytest.approx(2589.3, abs=0.1) == PEAK
    assert pytest.approx(2280.8, abs=0.1) == SECOND


MIXED = BOTH.replace("id: b\n    chemistry: AGM", "id: b\n    chemistry: LFP")


@pytest.mark.parametrize("key", ["main.peak_fault_current", "main.one_second_fault_current"])
def test_a_lithium_battery_beside_it_is_outside_the_method(key: str) -> None:
    found = figure(figures_of(MIXED), key)
    assert isinstance(found, Unknown)
    assert found.reason == OUTSIDE_METHOD


@pytest.mark.parametrize(("key", "own"), [
    ("fa.peak_fault_current", 13.2 / (0.0036 + LOOP - 0.0002)),
    ("fa.one_second_fault_current", 0.95 * 13.2 / (0.004 + LOOP - 0.0002))])
def test_through_a_device_its_own_battery_is_the_least(key: str, own: float) -> None:
    """For a short on the bus side of fuse a; the other way is open."""
    found = figure(figures_of(MIXED), key)
    assert found.lo == pytest.approx(own, rel=1e-9)
    assert found.hi == math.inf
