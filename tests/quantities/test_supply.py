"""Voltages at loads, surges against trips, loss of the bank, inrush: single facts changed."""

from __future__ import annotations

import pytest

from garboard.quantities.topics.window import undervoltage_trip
from garboard.values import Bounds, Unknown
from quantities.boats import figure, work_boat

PUMP = "surge_time: 1 s, voltage: {min: 20 V, max: 30 V}, critical: yes, second_supply: no}"
WINDLASS = "{id: windlass, kind: windlass, current: 60 A, surge_current: 400 A, surge_time: 1 s,"
START = ("  - id: lead-b", """  - {id: start-lead, from: start.positive, to: start-bus, through: []}
  - id: lead-b""")
START_BATTERY = ("  - id: pack-b", """  - {id: start, chemistry: AGM}
  - id: pack-b""")
START_BUS = ("  - {id: panel, rating: 150 A}",
             "  - {id: panel, rating: 150 A}\n  - {id: start-bus}")


def _pump(rest: str) -> tuple[str, str]:
    return PUMP, PUMP.replace("second_supply: no", rest)


ROWS = [
    ("the pump falls below its 20 V", (), "pump.works_at_all_voltages", False),
    ("a pump that works from 19 V does not",
     ((PUMP, PUMP.replace("min: 20 V", "min: 19 V")),), "pump.works_at_all_voltages", True),
    ("charging goes above what it stands",
     ((PUMP, PUMP.replace("min: 20 V, max: 30 V", "min: 19 V, max: 28 V")),),
     "pump.works_at_all_voltages", False),
    ("its window is not recorded",
     ((PUMP, PUMP.replace("voltage: {min: 20 V, max: 30 V}, ", "")),),
     "pump.works_at_all_voltages", None),
    ("458 A for 1 s trip at 369 A only after 5 s", (), "windlass.surge_trips_bank", False),
    ("a windlass that takes 6 s trips it",
     ((WINDLASS, WINDLASS.replace("surge_time: 1 s", "surge_time: 6 s")),),
     "windlass.surge_trips_bank", True),
    ("of unknown length it may", ((WINDLASS, WINDLASS.replace(", surge_time: 1 s", "")),),
     "windlass.surge_trips_bank", None),
    ("250 A for 6 s leave the whole bank up",
     ((WINDLASS, WINDLASS.replace("400 A, surge_time: 1 s", "250 A, surge_time: 6 s")),),
     "windlass.surge_trips_bank", False),
    ("and trip what is left with one string out",
     ((WINDLASS, WINDLASS.replace("400 A, surge_time: 1 s", "250 A, surge_time: 6 s")),),
     "windlass.surge_trips_bank_one_out", True),
    ("no second supply", (), "pump.loses_supply_with_bank", True),
    ("a second supply from elsewhere",
     (_pump("second_supply: yes, second_supply_from: start-bus"), START, START_BATTERY, START_BUS),
     "pump.loses_supply_with_bank", False),
    ("a second supply on the same bus",
     (_pump("second_supply: yes, second_supply_from: panel"),),
     "pump.loses_supply_with_bank", True),
    ("a second supply from a pack of the same bank",
     (_pump("second_supply: yes, second_supply_from: pack-a"),),
     "pump.loses_supply_with_bank", True),
    ("a second supply from none", (_pump("second_supply: yes, second_supply_from: none"),),
     "pump.loses_supply_with_bank", True),
    ("nobody noted a second supply", ((PUMP, PUMP.replace(", second_supply: no", "")),),
     "pump.loses_supply_with_bank", None),
    ("inrush of a load whose capacitance nobody noted", (), "isolator.inrush_current", None),
    ("a power load without a cut-out draws at least 1100 W / 20.8 V",
     ((", cut_out: 22 V", ""), ("voltage: {min: 21 V, max: 30 V}, ", "")),
     "inverter.continuous_current", 1100 / 20.8),
    ("a power load at its cut-out", (), "inverter.continuous_current", 50.0),
    ("a power load without a cut-out at the least voltage it works at",
     ((", cut_out: 22 V", ""),), "inverter.continuous_current", 1100 / 21),
]


@pytest.mark.parametrize(("what", "changes", "key", "expected"), ROWS,
                         ids=[row[0] for row in ROWS])
def test_supply(what: str, changes: tuple[tuple[str, str], ...], key: str,
                expected: object) -> None:
    value = figure(work_boat(*changes), key)
    if expected is None:
        assert isinstance(value, Unknown)
    elif isinstance(expected, float):
        assert (value.lo if isinstance(value, Bounds) else value) == pytest.approx(expected,
                                                                                   rel=1e-11)
    else:
        assert value is expected


def test_an_empty_capacitor_draws_what_a_short_draws() -> None:
    boat = work_boat((PUMP, PUMP.replace("surge_time: 1 s", "surge_time: 1 s, capacitance: 2 mF")),
                     (WINDLASS, WINDLASS + " capacitance: 1 mF,"))
    assert figure(boat, "isolator.inrush_current") == figure(boat, "windlass.fault_current")


@pytest.mark.parametrize(("pack", "cell", "cells", "expected"), [
    (20.0, None, 8, 20.0), (None, 2.8, 8, 22.4), (20.0, 2.8, 8, 22.4), (23.0, 2.8, 8, 23.0)])
def test_the_first_of_two_low_trips_counts(pack: float | None, cell: float | None, cells: int,
                                           expected: float) -> None:
    given = [Unknown.because("not recorded", "x") if each is None else each
             for each in (pack, cell)]
    assert undervoltage_trip.function(*given, cells) == pytest.approx(expected, rel=1e-12)


def test_surge_adds_its_current_over_the_whole_way() -> None:
    """340 A more, over feed and own circuit: 0.3 + 0.1 + 0.5 mΩ and both conductors, hot."""
    boat = work_boat()
    way = 0.9e-3 + sum(figure(boat, f"{each}.greatest_loop_resistance") for each in ("w0", "w1"))
    added = figure(boat, "windlass.surge_voltage_drop") - figure(boat, "windlass.voltage_drop")
    assert added == pytest.approx(340 * way, rel=1e-9)


@pytest.mark.parametrize(("key", "why"), [
    ("windlass.voltage_drop", ("joint_resistance: 0.10 mΩ, crosses: [engine-room]}\n  - id: pump",
                               "crosses: [engine-room]}\n  - id: pump"))])
def test_an_unrecorded_joint_leaves_at_least_the_figure(key: str, why: tuple[str, str]) -> None:
    whole, found = figure(work_boat(), key), figure(work_boat(why), key)
    assert isinstance(found, Bounds)
    assert found.hi == float("inf")
    assert 0.9 * whole < found.lo < whole
    assert {cause.path for cause in found.causes} == {"w1.joint_resistance"}
