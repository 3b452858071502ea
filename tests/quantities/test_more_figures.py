"""Sense points, selectivity by energy, holders, precharge, links, own returns, SAE, critical loads.

Each row is worked by hand beside it, from facts of the work boat with single facts changed.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from garboard.quantities import table
from garboard.quantities.topics.ampacity import metric_engine_space_factor
from garboard.quantities.topics.precharge import making_current
from garboard.quantities.topics.resistances import greatest_resistance_at_20
from garboard.quantities.topics.time_constants import straight_inductance
from garboard.values import NOT_RECORDED, OUTSIDE_METHOD, Bounds, Unknown
from garboard.values.conductor_size import read_size
from quantities.boats import figure, figures_of, work_boat

SENSE = ("    tolerance: 0.1 V\n    stop_time: 0.8 s", "    tolerance: 0.1 V\n    sense_point: {}\n"
         "    stop_time: 0.8 s")
STAGE = 28.5  # V, absorption 28.4 V and the regulator's 0.1 V


def sensing(point: str) -> object:
    return work_boat((SENSE[0], SENSE[1].format(point)))


#: 110 A through 4 m of 35 mm² class 5, hot and out and back with its joints, and the breaker.
DROP = 110 * (2 * (0.554e-3 * 4 * (234.5 + 90) / 254.5 + 0.10e-3) + 0.40e-3)


def test_the_drop_of_a_charging_lead_at_full_output() -> None:
    assert figure(work_boat(), "alternator.charging_drop") == pytest.approx(DROP, rel=1e-9)


@pytest.mark.parametrize(("point", "terminals", "bank"), [
    ("own terminals", STAGE, STAGE - DROP),
    ("battery", STAGE + DROP, STAGE),
    ("bus", (STAGE, STAGE + DROP), (STAGE - DROP, STAGE)),
])
def test_what_the_sense_point_makes_of_the_highest_stage(point: str, terminals: object,
                                                         bank: object) -> None:
    boat = sensing(point)
    for key, expected in (("highest_terminal_voltage", terminals),
                          ("voltage_at_bank_on_full_current", bank)):
        found = figure(boat, f"alternator.{key}")  # type: ignore[arg-type]
        assert (found if isinstance(found, float) else (found.lo, found.hi)) == pytest.approx(
            expected, rel=1e-9)


def test_a_sense_point_nobody_noted_leaves_both_ends_possible() -> None:
    found = figure(work_boat(), "alternator.highest_terminal_voltage")
    assert (found.lo, found.hi) == pytest.approx((STAGE, STAGE + DROP), rel=1e-9)
    assert {cause.path for cause in found.causes} == {"alternator.sense_point"}


F0 = "rating: 160 A, resistance: 0.30 mΩ,"
F1 = "rating: 100 A, resistance: 0.50 mΩ,"


@pytest.mark.parametrize(("melts", "passes", "at", "share", "selective"), [
    ("50000 A²s", "30000 A²s", "30 kA", 0.6, True),
    ("30000 A²s", "30000 A²s", "30 kA", 1.0, False),  # exactly as much as melts the other
    ("20000 A²s", "30000 A²s", "30 kA", 1.5, False),
    ("50000 A²s", "30000 A²s", "1 kA", None, None),   # declared at less than can flow
    (None, "30000 A²s", "30 kA", None, None),
])
def test_selectivity_by_energy(melts: str | None, passes: str, at: str, share: float | None,
                               selective: bool | None) -> None:
    """A fuse stays whole when what melts it is above all the one after it lets through."""
    energy = "" if melts is None else f" melting_energy: {melts},"
    boat = work_boat((F0, F0 + energy),
                     (F1, f"{F1} let_through: {{value: {passes}, at_current: {at}}},"))
    found = figure(boat, "f1.let_through_share_of_those_before")
    verdict = figure(boat, "f1.opens_first_by_energy")
    if share is None:
        assert isinstance(found, Unknown)
        assert isinstance(verdict, Unknown)
    else:
        assert found == pytest.approx(share)
        assert verdict is selective


def test_no_device_before_it_no_selectivity() -> None:
    assert figure(work_boat(), "fa.let_through_share_of_those_before").reason == OUTSIDE_METHOD


@pytest.mark.parametrize(("seconds", "share"), [("0.1 s", 6.0), ("1 s", 0.6)])
def test_a_holder_against_what_its_fuse_lets_through(seconds: str, share: float) -> None:
    """60 000 A²s through a holder that stands (316.2278 A)² = 100 000 A² for so long."""
    holder = "holder: {rating: 300 A}}\n  - id: lead-b"
    boat = work_boat((holder, f"holder: {{rating: 300 A, withstand_current: 316.2278 A, "
                              f"withstand_time: {seconds}}}}}\n  - id: lead-b"))
    assert figure(boat, "fa.holder_let_through_share") == pytest.approx(share, rel=1e-6)
    assert isinstance(figure(boat, "fb.holder_let_through_share"), Unknown)


NOT_KNOWN = Unknown.because(NOT_RECORDED, "bms.precharge_to")
NONE = Unknown.because(OUTSIDE_METHOD, "s.worked_by", "there is none")


@pytest.mark.parametrize(("what", "worked_by", "precharges", "reaches", "expected"), [
    ("an isolator worked by hand", None, NONE, NONE, 5000.0),
    ("a system that does not precharge", "bms", False, NOT_KNOWN, 5000.0),
    ("to 95 %", "bms", True, 0.95, 250.0),
    ("to nobody knows how far", "bms", True, NOT_KNOWN, (0.0, 5000.0)),
    ("whether it does is not recorded", "bms", NOT_KNOWN, NOT_KNOWN, (0.0, 5000.0)),
])
def test_what_a_contactor_closes_on(what: str, worked_by: object, precharges: object,
                                    reaches: object, expected: object) -> None:
    found = making_current.function(5000.0, worked_by, precharges, reaches)
    assert (found if isinstance(found, float) else (found.lo, found.hi)) == pytest.approx(expected)


def test_the_share_of_what_it_is_made_to_close_on() -> None:
    boat = work_boat(
        ("surge_time: 1 s, voltage: {min: 20 V, max: 30 V}, critical: yes",
         "surge_time: 1 s, capacitance: 2 mF, voltage: {min: 20 V, max: 30 V}, critical: yes"),
        ("400 A, surge_time: 1 s,", "400 A, surge_time: 1 s, capacitance: 1 mF,"),
        ("make_current: 1 kA", "make_current: 1 kA, worked_by: none"))
    closes_on = figure(boat, "isolator.inrush_current")
    assert figure(boat, "isolator.making_share") == pytest.approx(closes_on / 1000)


LINKED = """
format: installation-record/1
wiring: {returns: neglected}
places: []
batteries:
  - {id: low, chemistry: AGM, cells_in_series: 3, open_circuit_voltage_max: 6 V, internal_resistance: 2 mΩ}
  - {id: high, chemistry: AGM, cells_in_series: 3, open_circuit_voltage_max: 6 V, internal_resistance: 4 mΩ}
  - {id: whole, chemistry: AGM, cells_in_series: 6, open_circuit_voltage_max: 12 V, internal_resistance: 3 mΩ}
buses: [{id: bus}]
charging_sources: []
loads: []
runs:
  - {id: link, from: low.positive, to: high.negative, through: [{conductor: {id: wl, resistance: 1 mΩ}}]}
  - {id: lead, from: high.positive, to: bus, through: [{conductor: {id: wh, resistance: 1 mΩ}}]}
  - {id: other, from: whole.positive, to: bus, through: [{conductor: {id: wo, resistance: 1 mΩ}}]}
"""  # noqa: E501


def test_a_short_between_two_batteries_of_a_string() -> None:
    """To the return from low's positive: low gives 6 V over 2 mΩ; the other string pushes 12 V
    less high's 6 V backwards through 3 + 1 + 1 + 4 mΩ and the link's 1 mΩ. From high's negative the
    link is in low's way instead."""
    at_low = 6 / 2e-3 + (12 - 6) / (3e-3 + 1e-3 + 1e-3 + 4e-3 + 1e-3)
    at_high = 6 / 3e-3 + (12 - 6) / (3e-3 + 1e-3 + 1e-3 + 4e-3)
    found = figures_of(LINKED)
    assert figure(found, "string-low.largest_link_fault_current") == pytest.approx(
        max(at_low, at_high))
    assert figure(found, "string-whole.largest_link_fault_current").reason == OUTSIDE_METHOD


def test_the_smallest_of_such_shorts() -> None:
    """Low alone, worn, or the other string alone; the least at either end of the link. No greatest
    resistance is on record, so at most the figures of those that are."""
    found = figure(figures_of(LINKED), "string-low.smallest_link_fault_current")
    empty = 1.9
    ways = [3 * empty / (1.7 * 2e-3), 3 * empty / (1.7 * 2e-3 + 1e-3)]
    assert isinstance(found, Bounds)
    assert found.hi <= min(ways) * (1 + 1e-9)


def _straight(wire: float, thin: float) -> float:
    """Neumann's integral of a straight wire and itself at the mean distance of its filaments."""
    distance = thin * math.exp(-0.25)
    apart = np.concatenate([[0.0], np.geomspace(1e-6, wire, 200_001)])
    along = (wire - apart) / np.sqrt(apart**2 + distance**2)
    return float(2 * 1e-7 * np.trapezoid(along, apart))


@pytest.mark.parametrize(("wire", "area"), [(0.5, 50.0), (3.0, 35.0), (8.0, 25.0), (6.0, 4.0)])
def test_inductance_of_straight_wire_by_neumann(wire: float, area: float) -> None:
    thin = math.sqrt(area / math.pi) / 1000
    assert straight_inductance(wire, area) == pytest.approx(_straight(wire, thin), rel=0.01)


OWN = """
format: installation-record/1
wiring: {returns: own runs}
places: [{id: hold, temperature: 20 .. 40 °C}]
batteries: [{id: b, open_circuit_voltage_max: 12 V, internal_resistance: 4 mΩ}]
buses: [{id: plus}, {id: minus}]
charging_sources: []
loads: [{id: lamp, current: 5 A}]
runs:
  - {id: r1, from: b.positive, to: plus, through: [{conductor: {id: w1, size: 50 mm2, length: 1 m, crosses: [hold]}}, {fuse: {id: f1}}]}
  - {id: r2, from: b.negative, to: minus, through: [{conductor: {id: w2, size: 50 mm2, length: 2 m, crosses: [hold]}}]}
  - {id: r3, from: plus, to: lamp.positive, through: [{fuse: {id: f2}}, {conductor: {id: w3, size: 4 mm2, length: 5 m, crosses: [hold]}}]}
  - {id: r4, from: lamp.negative, to: minus, through: [{conductor: {id: w4, size: 4 mm2, length: 5 m, crosses: [hold]}}]}
"""  # noqa: E501


@pytest.mark.parametrize("device", ["f1", "f2"])
def test_a_time_constant_over_returns_of_their_own(device: str) -> None:
    """What carries current to a short at either fuse: the battery's two leads, by themselves at
    most their straight inductance over their resistance at 20 °C. No loop they may form has more,
    whatever its shape; the lamp's leads carry none of it."""
    each = [straight_inductance(length, 50.0) / (length / 58 / 50) for length in (1.0, 2.0)]
    found = figure(figures_of(OWN), f"{device}.longest_time_constant")
    assert (found.lo, found.hi) == (0.0, pytest.approx(sum(each), rel=1e-9))


@pytest.mark.parametrize("apart", [0.01, 0.05, 0.2, 0.5, 1.0])
def test_no_rectangle_of_the_same_wire_exceeds_it(apart: float) -> None:
    """Two leads of 1.5 m side by side, joined at their ends: L of a pair over its resistance."""
    thin = math.sqrt(50 / math.pi) / 1000
    pair = 4e-7 * 1.5 * (math.log(max(apart, 3 * thin) / thin) + 0.25)
    each = 2 * straight_inductance(1.5, 50.0) / (1.5 / 58 / 50)
    assert pair / (3 / 58 / 50) < each


@pytest.mark.parametrize(("size", "row", "pure"), [
    ("2 SAE", "4", 62450), ("2/0 SAE", "1/0", 125100), ("3 AWG", "4", 52635),
    ("4 AWG", "4", 41741)])
def test_sae_and_awg_lie_between_copper_and_the_next_smaller_wire(size: str, row: str,
                                                                  pure: float) -> None:
    """Circular mils of SAE J1127 (as reprinted) and ASTM B258 at 10.371 Ω·cmil/ft; FAA AC 43.13-1B
    Table 11-9 above."""
    found = greatest_resistance_at_20.function(read_size(size), 304.8, NOT_KNOWN, NOT_KNOWN, True,
                                               NOT_KNOWN).value
    assert isinstance(found, Bounds)
    assert found.lo == pytest.approx(1000 * 10.371 / pure, rel=1e-3)
    assert found.hi == pytest.approx(table("resistance-ac43-13-1b").rows[row]["tinned"])


@pytest.mark.parametrize(("insulation", "factor"), [
    (60.0, None), (70.0, 0.75), (90.0, 0.82), (105.0, 0.86), (110.0, 0.86), (125.0, 0.89),
    (200.0, 1.0)])
def test_metric_engine_space_factors(insulation: float, factor: float | None) -> None:
    """From memory; what needs nobody's memory: none is above one, and hotter insulation keeps
    more, as the factors for 50 °C of 33 CFR 183.425 do."""
    found = metric_engine_space_factor.function(True, insulation).value
    assert isinstance(found, Unknown) if factor is None else found == factor
    assert metric_engine_space_factor.function(False, insulation).value == 1.0
    row = list(table("engine-space-factor-iso10133").rows["engine space"].values())
    assert row == sorted(row) and row[-1] <= 1.0


def test_the_critical_loads_alone() -> None:
    """Of inverter, windlass and pump only the pump is critical, 8 A; one nobody noted may count."""
    assert figure(work_boat(), "bank-main-bus.critical_load_current") == 8.0
    open_one = work_boat(("voltage: {min: 18 V, max: 32 V}, critical: no",
                          "voltage: {min: 18 V, max: 32 V}"))
    found = figure(open_one, "bank-main-bus.critical_load_current")
    assert (found.lo, found.hi) == (8.0, 68.0)
