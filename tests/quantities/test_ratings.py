"""Conventional currents of gG fuses, breaking capacity by cranking current, charging power."""

from __future__ import annotations

import pytest

from garboard.quantities.topics.batteries import battery_energy_content
from garboard.quantities.topics.ratings import (
    breaking_capacity_of_branch,
    breaking_capacity_of_main,
    charging_power,
    conventional_fusing_current,
    conventional_non_fusing_current,
    conventional_time,
)
from garboard.values import NOT_RECORDED, Bounds, Unknown
from quantities.boats import figure, figures_of, work_boat

GG = [  # row 71, and the neighbours of its group; all from memory
    (63.0, 78.75, 100.8, 3600.0), (80.0, 100.0, 128.0, 7200.0), (100.0, 125.0, 160.0, 7200.0),
    (160.0, 200.0, 256.0, 7200.0), (200.0, 250.0, 320.0, 10800.0), (500.0, 625.0, 800.0, 14400.0)]


@pytest.mark.parametrize(("rating", "carries", "opens", "within"), GG)
def test_gg_fuses(rating: float, carries: float, opens: float, within: float) -> None:
    assert conventional_non_fusing_current.function("gG", rating).value == carries
    assert conventional_fusing_current.function("gG", rating).value == pytest.approx(opens)
    assert conventional_time.function("gG", rating).value == within


@pytest.mark.parametrize(("of", "rating"), [("T", 100.0), ("gPV", 100.0), ("aM", 100.0),
                                            ("gG", 10.0), ("gG", 1600.0)])
def test_other_fuses_have_no_gg_currents(of: str, rating: float) -> None:
    assert isinstance(conventional_fusing_current.function(of, rating).value, Unknown)


CRANKING = [  # rows 73 and 74 (as reprinted), and the edges of the groups
    (650.0, 14.4, 1500, 750), (651.0, 14.4, 3000, 1500), (900.0, 28.8, 3000, 1500),
    (1100.0, 28.8, 3000, 1500), (1200.0, 28.8, 5000, 2500),
    (Bounds(600.0, 700.0), 14.4, 3000, 1500)]


@pytest.mark.parametrize(("cranking", "voltage", "main", "branch"), CRANKING)
def test_breaking_capacity_by_cranking(cranking: object, voltage: float, main: float,
                                       branch: float) -> None:
    assert breaking_capacity_of_main.function(cranking, voltage).value == main
    assert breaking_capacity_of_branch.function(cranking, voltage).value == branch


def test_at_48_volts_cranking_says_nothing() -> None:
    assert isinstance(breaking_capacity_of_main.function(900.0, 57.6).value, Unknown)


STARTER = """
format: installation-record/1
batteries:
  - {id: a, chemistry: AGM, cold_cranking_current: 600 A}
  - {id: b, chemistry: CHEMISTRY, cold_cranking_current: 500 A}
charging_sources: []
buses: [{id: bus}]
runs:
  - {id: lead-a, from: a.positive, to: bus, through: []}
  - {id: lead-b, from: b.positive, to: bus, through: []}
"""


def test_strings_in_parallel_add_their_cranking_currents() -> None:
    boat = figures_of(STARTER.replace("CHEMISTRY", "flooded"))
    assert figure(boat, "bank-bus.cold_cranking_current") == 1100
    lithium = figures_of(STARTER.replace("CHEMISTRY", "LFP"))
    assert isinstance(figure(lithium, "bank-bus.cold_cranking_current"), Unknown)


@pytest.mark.parametrize(("amperes", "volts", "watts"), [(60.0, 28.8, 1728.0),
                                                         (80.0, 28.8, 2304.0)])
def test_charging_power(amperes: float, volts: float, watts: float) -> None:
    """Row 36: the two sides of 46 CFR's 2 kW."""
    assert charging_power.function(amperes, volts) == pytest.approx(watts)


def test_charging_power_of_the_boat() -> None:
    """(110 A + 40 A) at 28.4 V + 0.1 V, wherever a battery of the bank stands."""
    assert figure(work_boat(), "bank-main-bus.charging_power") == pytest.approx(150 * 28.5)
    assert figure(work_boat(), "locker.charging_power") == pytest.approx(150 * 28.5)
    assert figure(work_boat(), "engine-room.charging_power") == 0.0


@pytest.mark.parametrize(("capacity", "energy"), [(46.875, 600.0), (47.0, 601.6)])
def test_energy_on_either_side_of_600_wh(capacity: float, energy: float) -> None:
    """Rows 37 and 87: 12.8 V times 46.875 Ah is 600 Wh exactly."""
    stated = Unknown.because(NOT_RECORDED, "b.energy")
    assert battery_energy_content.function(stated, 12.8, capacity) == pytest.approx(energy,
                                                                                    rel=1e-15)
