"""At which string voltage the management disconnects: two batteries of 8 cells in series."""

from __future__ import annotations

from typing import Any

import pytest

from garboard.values import NOT_RECORDED, Bounds
from quantities.boats import figure, figures_of

BOAT = """
format: installation-record/1
wiring: {returns: neglected}
buses: [{id: bar}]
loads: []
charging_sources:
  - {id: charger, stages: {absorption: 57.6 V}, equalising_enabled: no, tolerance: 0.2 V}
batteries:
  - {id: low, chemistry: LFP, cells_in_series: 8, managed_by: LOW}
  - {id: high, chemistry: LFP, cells_in_series: 8, managed_by: HIGH}
management_systems:
  - {id: one, trips: {ONE}}
  - {id: two, trips: {TWO}}
runs:
  - {id: r0, from: low.positive, to: high.negative, through: [conductor: {id: w0}]}
  - {id: r1, from: high.positive, to: bar, through: [fuse: {id: f1}]}
  - {id: r2, from: charger.positive, to: bar, through: [fuse: {id: f2}]}
"""
BOTH = "voltage_high: 58.4 V, cell_voltage_high: 3.7 V"
HALF = "voltage_high: 29 V, cell_voltage_high: 3.7 V"


def _trip(low: str, high: str, one: str, two: str) -> Any:
    text = BOAT.replace("LOW", low).replace("HIGH", high).replace("ONE", one).replace("TWO", two)
    return figure(figures_of(text), "charger.lowest_overvoltage_trip")


@pytest.mark.parametrize(("low", "high", "one", "two", "trip"), [
    ("one", "one", BOTH, HALF, 58.4),  # one system over all 16 cells: 58.4 V, or 16 x 3.7 = 59.2 V
    ("one", "two", HALF, HALF, 58.0),  # one for each battery: 2 x 29 V
    ("one", "two", HALF, HALF.replace("29 V", "28.5 V"), 57.0),  # the more timid one decides
    ("one", "two", HALF, "cell_voltage_high: 3.6 V, voltage_high: 30 V", 57.6),  # 16 x 3.6 V
])
def test_the_first_management_to_disconnect_decides(low: str, high: str, one: str, two: str,
                                                    trip: float) -> None:
    assert _trip(low, high, one, two) == pytest.approx(trip, rel=1e-11)


def test_an_unrecorded_trip_may_lie_lower() -> None:
    found = _trip("one", "two", HALF, "voltage_high: 29 V")
    assert isinstance(found, Bounds)
    assert found.hi == 58.0
    assert {(cause.reason, cause.path) for cause in found.causes} == {
        (NOT_RECORDED, "two.trips.cell_voltage_high")}


def test_the_stage_is_held_against_the_trip_of_the_string() -> None:
    text = BOAT.replace("LOW", "one").replace("HIGH", "two").replace("ONE", HALF).replace(
        "TWO", HALF)
    share = figure(figures_of(text), "charger.highest_stage_share_of_trip")
    assert share == pytest.approx(57.8 / 58.0, rel=1e-11)
