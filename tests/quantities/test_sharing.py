"""Strings in parallel: shares, limits as connected and with one string out, equalising currents.

The referees are the law of parallel conductances and nodal analysis by numpy, both worked here.
"""

from __future__ import annotations

import numpy as np
import pytest

from garboard.quantities import Figures
from garboard.quantities.topics import sharing
from garboard.values import OUTSIDE_METHOD, Bounds, Unknown
from quantities.boats import figure, figures_of, work_boat

HEAD = """
format: installation-record/1
wiring: {returns: as outgoing}
buses: [{id: bus}]
charging_sources: []
loads: [{id: load, current: 300 A}]
management_systems:
"""
MANAGED = "  - {{id: bms-{0}, trips: {{discharge_current: {2} A}}}}\n"
PACK = ("  - {{id: p{0}, open_circuit_voltage_max: 13.4 V, internal_resistance: {1}, "
        "managed_by: bms-{0}, charge: {{current_max: 50 A}}, discharge: {{current_max: 100 A}}, "
        "voltage_found: {3} V}}\n")
LEAD = "  - {{id: lead-{0}, from: p{0}.positive, to: bus, through: []}}\n"


def bank(*packs: tuple[str, float, float]) -> Figures:
    """A bank of packs on one bus: resistance, trip in A, voltage found."""
    rows = [(number, *pack) for number, pack in enumerate(packs, 1)]
    text = HEAD + "".join(MANAGED.format(*row) for row in rows)
    text += "batteries:\n" + "".join(PACK.format(*row) for row in rows)
    text += "runs:\n" + "".join(LEAD.format(*row) for row in rows)
    return figures_of(text + "  - {id: feed, from: bus, to: load, through: [fuse: {id: f}]}\n")


FOUR = (("4.0 mΩ", 120.0, 13.3), ("4.5 mΩ", 120.0, 13.3), ("5.0 mΩ", 120.0, 13.2),
        ("5.5 mΩ", 120.0, 13.0))
MILLIOHM = np.array([4.0, 4.5, 5.0, 5.5])
VOLTS = np.array([13.3, 13.3, 13.2, 13.0])


def test_shares_of_four_unequal_packs() -> None:
    """Row 65: 4.0, 4.5, 5.0 and 5.5 mΩ share as 29.3, 26.0, 23.4 and 21.3 %."""
    shares = [figure(bank(*FOUR), f"string-p{number}.share") for number in (1, 2, 3, 4)]
    assert [round(100 * share, 1) for share in shares] == [29.3, 26.0, 23.4, 21.3]
    assert sum(shares) == pytest.approx(1.0, rel=1e-11)


def _least(limit: float, milliohm: np.ndarray) -> float:
    shares = (1 / milliohm) / (1 / milliohm).sum()
    return float((limit / shares).min())


CASES = [("discharge_current_limit", 100.0), ("charge_current_limit", 50.0),
         ("discharge_trip", 120.0)]


@pytest.mark.parametrize(("name", "limit"), CASES)
def test_a_bank_gives_less_than_the_sum_of_its_strings(name: str, limit: float) -> None:
    found = figure(bank(*FOUR), f"bank-bus.{name}")
    assert found == pytest.approx(_least(limit, MILLIOHM), rel=1e-11)
    assert found < 4 * limit


@pytest.mark.parametrize(("name", "limit"), CASES)
def test_with_any_one_string_out(name: str, limit: float) -> None:
    left = [_least(limit, np.delete(MILLIOHM, out)) for out in range(4)]
    assert figure(bank(*FOUR), f"bank-bus.{name}_one_out") == pytest.approx(min(left), rel=1e-11)


def test_departure_from_equal_shares() -> None:
    shares = (1 / MILLIOHM) / (1 / MILLIOHM).sum()
    assert figure(bank(*FOUR), "bank-bus.worst_share_departure") == pytest.approx(
        abs(shares * 4 - 1).max(), rel=1e-10)
    equal = bank(*(("4.0 mΩ", 120.0, 13.3),) * 3)
    assert figure(equal, "bank-bus.worst_share_departure") == pytest.approx(0.0, abs=1e-11)


def test_equalising_currents_by_millman() -> None:
    """The bus settles at the mean of the voltages weighted by conductance."""
    siemens = 1000 / MILLIOHM
    bus = (VOLTS * siemens).sum() / siemens.sum()
    assert figure(bank(*FOUR), "bank-bus.equalising_current") == pytest.approx(
        abs((VOLTS - bus) * siemens).max(), rel=1e-9)


def test_equalising_currents_of_two_packs_by_hand() -> None:
    """13.4 V and 13.0 V over 2 mΩ and 2 mΩ: 0.4 V / 4 mΩ = 100 A."""
    two = bank(("2.0 mΩ", 120.0, 13.4), ("2.0 mΩ", 120.0, 13.0))
    assert figure(two, "bank-bus.equalising_current") == pytest.approx(100.0, rel=1e-11)


@pytest.mark.parametrize(("packs", "cascades"), [
    ((("4.0 mΩ", 160.0, 13.3),) * 3, False),  # two are left for 300 A: 150 A each
    ((("4.0 mΩ", 149.0, 13.3),) * 3, True),
    ((("4.0 mΩ", 150.0, 13.3),) * 3, False),  # exactly at the trip
    ((("4.0 mΩ", 160.0, 13.3), ("4.0 mΩ", 160.0, 13.3), ("8.0 mΩ", 160.0, 13.3)), True),
])
def test_whether_the_rest_trip_in_cascade(packs: tuple[tuple[str, float, float], ...],
                                          cascades: bool) -> None:
    assert figure(bank(*packs), "bank-bus.trips_in_cascade") is cascades


def test_a_single_string_leaves_nothing_when_it_is_out() -> None:
    assert isinstance(figure(bank(FOUR[0]), "bank-bus.discharge_current_limit_one_out"), Unknown)


def test_so_many_strings_are_not_taken_out_in_turn(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each taken out is a network of its own: what is too much is said, with the number."""
    name = "bank-bus.discharge_current_limit_one_out"
    monkeypatch.setattr(sharing, "MOST_TAKEN_OUT", len(FOUR))
    assert isinstance(figure(bank(*FOUR), name), float)
    more = figure(bank(*FOUR, FOUR[0]), name)
    assert isinstance(more, Unknown)
    assert more.reason == OUTSIDE_METHOD
    assert f"at most {len(FOUR)}" in more.causes[0].detail


def test_an_unrecorded_resistance_leaves_the_limits_unknown() -> None:
    packs = bank(("{not_determinable: no label}", 120.0, 13.3), FOUR[1])
    for name in ("discharge_current_limit", "worst_share_departure", "equalising_current"):
        assert isinstance(figure(packs, f"bank-bus.{name}"), Unknown)


def test_tolerances_give_bounds_that_hold_the_nominal_limit() -> None:
    loose = bank(("{value: 4.0 mΩ, plus_minus: 10 %}", 120.0, 13.3), FOUR[2])
    found = figure(loose, "bank-bus.discharge_current_limit")
    assert isinstance(found, Bounds)
    for milliohm in (3.6, 4.0, 4.4):
        assert found.contains(_least(100.0, np.array([milliohm, 5.0])))


@pytest.mark.parametrize("case", ["loads", "sources"])
@pytest.mark.parametrize("bus", ["main-bus", "panel"])
def test_currents_sum_to_nothing_at_a_bus(bus: str, case: str) -> None:
    """Kirchhoff's law, over the parts that end at a bus."""
    boat = work_boat()
    (flows,), graph = boat.items["record"]["currents"].states, boat.network.graph
    into = [flows.signed(edge.id, case) * (1 if edge.end == bus else -1)
            for edge in graph.incident[bus]]
    assert sum(into) == pytest.approx(0.0, abs=1e-8)
