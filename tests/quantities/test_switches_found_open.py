"""Switches found open: what guards an upper limit takes them as closed or as found, the worse.

Worked by hand beside each figure: two 12 V banks of one battery each, joined by a combiner.
"""

from __future__ import annotations

import pytest

from garboard.quantities import Figures
from quantities.boats import figure, figures_of

RECORD = """
format: installation-record/1
wiring: {returns: neglected}
places: []
batteries:
  - {id: house, chemistry: AGM, cells_in_series: 6, open_circuit_voltage_max: 12 V, internal_resistance: 4 mΩ, charge: {current_max: 50 A}, discharge: {current_max: 200 A}}
  - {id: twin, chemistry: AGM, cells_in_series: 6, open_circuit_voltage_max: 12 V, internal_resistance: 4 mΩ, charge: {current_max: 50 A}, discharge: {current_max: 200 A}}
  - {id: start, chemistry: AGM, cells_in_series: 6, open_circuit_voltage_max: 12 V, internal_resistance: 4 mΩ}
buses: [{id: house-bus}, {id: start-bus}]
charging_sources: [{id: alternator, current_max: 90 A}]
loads: [{id: heater, current: 60 A}]
runs:
  - {id: r1, from: house.positive, to: house-bus, through: [{conductor: {id: w1, resistance: 2 mΩ}}, {fuse: {id: f1, resistance: 0 mΩ}}]}
  - {id: r2, from: twin.positive, to: house-bus, through: [{conductor: {id: w2, resistance: 2 mΩ}}, {switch: {id: twin-isolator, resistance: 0 mΩ, found: TWIN}}]}
  - {id: r3, from: start.positive, to: start-bus, through: [{conductor: {id: w3, resistance: 2 mΩ}}]}
  - {id: r4, from: start-bus, to: house-bus, through: [{switch: {id: combiner, resistance: 0 mΩ, found: COMBINER}}]}
  - {id: r5, from: house-bus, to: heater, through: [{conductor: {id: w5, resistance: 1 mΩ}}]}
  - {id: r6, from: alternator, to: start-bus, through: []}
"""  # noqa: E501


def boat(twin: str = "closed", combiner: str = "closed") -> Figures:
    return figures_of(RECORD.replace("TWIN", twin).replace("COMBINER", combiner))


@pytest.mark.parametrize(("twin", "combiner"), [("closed", "closed"), ("open", "closed"),
                                                ("closed", "open"), ("open", "open")])
def test_the_largest_fault_has_every_switch_closed(twin: str, combiner: str) -> None:
    """Three batteries of 12 V over 6 mΩ; into a short at the battery side of f1 the other two."""
    found = boat(twin, combiner)
    assert figure(found, "house-bus.fault_current") == pytest.approx(6000)
    assert figure(found, "f1.prospective_current") == pytest.approx(4000)


@pytest.mark.parametrize(("twin", "combiner", "amperes"), [
    ("closed", "closed", 30.0),  # a third of 60 A, less than a third of the alternator's 90 A
    ("open", "closed", 45.0),    # half of the 90 A, for two batteries are left
    ("closed", "open", 30.0),    # half of the 60 A; the alternator cannot reach it
    ("open", "open", 60.0),      # all of the heater's
])
def test_a_lead_carries_the_more_of_both_states(twin: str, combiner: str, amperes: float) -> None:
    assert figure(boat(twin, combiner), "w1.continuous_current") == pytest.approx(amperes)


def test_a_switch_found_open_carries_what_it_would_closed() -> None:
    """A laid-up boat with everything off is not one without currents: all 60 A over the combiner,
    of which the start battery gives a third."""
    found = boat("open", "open")
    assert figure(found, "twin-isolator.carried_current") == pytest.approx(30.0)
    assert figure(found, "w5.continuous_current") == 60.0


@pytest.mark.parametrize(("twin", "charging", "discharging"), [
    ("closed", 100.0, 400.0),  # both strings in equal parts
    ("open", 50.0, 200.0),     # what was connected: the house battery alone
])
def test_limits_of_the_bank_as_connected(twin: str, charging: float, discharging: float) -> None:
    found = boat(twin, "open")
    assert figure(found, "bank-house-bus.charge_current_limit") == pytest.approx(charging)
    assert figure(found, "bank-house-bus.discharge_current_limit") == pytest.approx(discharging)


def test_drops_take_the_more_of_both_states() -> None:
    """The way from where the strings meet to the heater is the same; its 60 A too."""
    closed, opened = (figure(boat("closed", each), "heater.voltage_drop")
                      for each in ("closed", "open"))
    assert opened.lo == pytest.approx(closed.lo)


def test_the_smallest_fault_takes_the_lesser_of_both_states() -> None:
    """6 cells of 1.9 V over 1.7 times 4 mΩ and a lead: no switch lies between; with a second way
    over another switch found open, the longer one is left."""
    plain = figure(boat(), "house-bus.smallest_fault_current")
    assert plain.hi == pytest.approx(11.4 / (6.8e-3 + 2e-3))
    second = RECORD.replace("\n  - {id: r6", """
  - {id: r7, from: start-bus, to: house-bus, through: [{conductor: {id: w7, resistance: 4 mΩ}}]}
  - {id: r6""").replace("TWIN", "closed")
    for word, way in (("closed", 0.0), ("open", 4e-3)):
        found = figures_of(second.replace("COMBINER", word))
        assert figure(found, "house-bus.smallest_fault_current").hi == pytest.approx(
            11.4 / (6.8e-3 + 2e-3 + way))
