"""What two coupled banks bring to their buses: hand-worked division of the charging currents."""

from __future__ import annotations

import pytest

from quantities.boats import figure, figures_of

COUPLED = """
format: installation-record/1
wiring: {returns: neglected}
buses: [{id: house-bus}, {id: start-bus}]
loads: []
charging_sources: [{id: alternator, current_max: 160 A}, {id: charger, current_max: 20 A}]
batteries:
  - {id: house, open_circuit_voltage_max: 13 V, internal_resistance: 2 mΩ}
  - {id: start, open_circuit_voltage_max: 13 V, internal_resistance: 6 mΩ}
runs:
  - {id: r1, from: house.positive, to: house-bus, through: [fuse: {id: f1, resistance: 0 mΩ}]}
  - {id: r2, from: start.positive, to: start-bus, through: [fuse: {id: f2, resistance: 0 mΩ}]}
  - {id: r3, from: start-bus, to: house-bus, through: [switch: {id: combiner, resistance: 1 mΩ}]}
  - {id: r4, from: alternator, to: start-bus, through: [fuse: {id: f4, resistance: 0 mΩ}]}
  - {id: r5, from: charger, to: house-bus, through: [fuse: {id: f5, resistance: 0 mΩ}]}
"""


def test_a_part_with_batteries_behind_it_may_take_as_well_as_deliver() -> None:
    """Of the alternator's 160 A 3/9 enter the start battery and 6/9 pass the combiner; of the
    charger's 20 A 7/9 enter the house battery and 2/9 pass the combiner the other way. All that
    comes to the start bus is the alternator's 160 A; to the house bus come 20 A and 102.2 A.
    """
    figures = figures_of(COUPLED)
    through = 160 * 6 / 9 - 20 * 2 / 9
    assert figure(figures, "start-bus.continuous_current") == pytest.approx(160.0, rel=1e-9)
    assert figure(figures, "house-bus.continuous_current") == pytest.approx(20 + through, rel=1e-9)
