"""What conductors of the work boat carry in each load case, by hand.

The inverter of 1100 W draws 1100 / 22 = 50 A at its cut-out, the windlass 60 A (surge 150 A), the
pump, the only critical load, 8 A (surge 20 A); alternator and charger give 110 A and 40 A. Of what
the bank as a whole carries pack-a's lead takes 0.5955606 (worked/continuous_current.yaml).
"""

from __future__ import annotations

from typing import Any

import pytest

from quantities.boats import figure, work_boat

COLD = 229.5 / 254.5
BRANCH_A = 0.002 + 2 * 0.5 / 58 / 50 * COLD + 0.0002
BRANCH_B = 0.003 + 2 * 0.8 / 58 / 50 * COLD + 0.0002
SHARE = BRANCH_B / (BRANCH_A + BRANCH_B)
NOT_NOTED = ("voltage: {min: 18 V, max: 32 V}, critical: no", "voltage: {min: 18 V, max: 32 V}")
CASES: list[tuple[str, tuple[tuple[str, str], ...], str, Any]] = [
    ("all loads", (), "wa.all_loads_current", 118 * SHARE),
    ("critical only", (), "wa.critical_loads_current", 8 * SHARE),
    ("critical only, starting", (), "wa.critical_loads_surge_current", 20 * SHARE),
    ("all charging", (), "wa.all_charging_current", 150 * SHARE),
    ("a load nobody noted may be critical", (NOT_NOTED,), "wa.critical_loads_current",
     (8 * SHARE, 68 * SHARE)),
]


@pytest.mark.parametrize(("what", "changes", "key", "expected"), CASES,
                         ids=[row[0] for row in CASES])
def test_load_case(what: str, changes: tuple[tuple[str, str], ...], key: str,
                   expected: Any) -> None:
    found = figure(work_boat(*changes), key)
    if isinstance(expected, tuple):
        assert (found.lo, found.hi) == pytest.approx(expected, rel=1e-7)
    else:
        assert found == pytest.approx(expected, rel=1e-7)


def test_the_continuous_current_is_the_greatest_case() -> None:
    boat = work_boat()
    for conductor in boat.subjects["conductor"]:
        greatest = max(conductor["all_loads_current"], conductor["all_charging_current"])
        assert conductor["continuous_current"] == pytest.approx(greatest, rel=1e-11)
        assert conductor["critical_loads_current"] <= conductor["all_loads_current"]


def test_a_battery_of_another_voltage_takes_its_share_by_resistance_alone() -> None:
    """The flows are those of equal EMFs: what evens out between strings is a figure of its own."""
    boat = work_boat(("open_circuit_voltage_max: 26.8 V\n    internal_resistance: {value: 3.0 mΩ",
                      "open_circuit_voltage_max: 27.2 V\n    internal_resistance: {value: 3.0 mΩ"))
    assert figure(boat, "wa.all_loads_current") == pytest.approx(118 * SHARE, rel=1e-7)
    assert figure(boat, "wb.all_loads_current") == pytest.approx(118 * (1 - SHARE), rel=1e-7)
