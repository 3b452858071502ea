"""Published check values of devices, placement, pulls and joints, each with its source; rows by
number as in the table the others go by."""

from __future__ import annotations

import pytest

from garboard.quantities import Figures
from garboard.quantities.topics.federal import (
    movement_under_test_pull,
    rated_current_at_60,
)
from garboard.quantities.topics.federal import (
    test_pull as asked_pull,
)
from garboard.quantities.topics.resistances import joint_drop, joint_loss
from garboard.values import OUTSIDE_METHOD, Unknown, rounded
from quantities.boats import figure, figures_of

POUND, POUND_FORCE = 0.45359237, 4.4482216152605

FUSED = """
format: installation-record/1
wiring: {returns: neglected}
places: []
batteries: [{id: b, chemistry: LFP, open_circuit_voltage_max: EMF, internal_resistance: RESISTANCE}]
buses: [{id: bus}]
charging_sources: [SOURCE]
loads: []
runs:
  - {id: lead, from: b.positive, to: bus, through: [{conductor: {id: w, resistance: 1 mΩ, length: LENGTH, sheathed: SHEATHED}}, {fuse: {id: f, breaks: [BREAKS]}}]}
"""  # noqa: E501


def fused(emf: str = "13 V", resistance: str = "3 mΩ", source: str = "", breaks: str = "",
          length: str = "0.1 m", sheathed: str = "no") -> Figures:
    text = FUSED
    for old, new in (("EMF", emf), ("RESISTANCE", resistance), ("SOURCE", source),
                     ("BREAKS", breaks), ("LENGTH", length), ("SHEATHED", sheathed)):
        text = text.replace(old, new)
    return figures_of(text)


STRIP = "{current: 2 kA, voltage: 32 V DC}"  # ISO 8820-5:2015, read


def test_67_a_strip_fuse_cannot_break_three_kiloamperes() -> None:
    """ISO 8820-5:2015 (read): 2 000 A at 32 V. 12 V over 3 + 1 mΩ is 3 000 A."""
    boat = fused(emf="12 V", breaks=STRIP)
    assert figure(boat, "f.prospective_current") == pytest.approx(3000)
    assert figure(boat, "f.breaking_capacity") == 2000


def test_68_a_32_v_fuse_on_sixteen_cells() -> None:
    """ISO 8820-5:2015 (read); 16 cells of 3.65 V charge to 58.4 V (recomputed)."""
    charger = "{id: c, current_max: 30 A, stages: {absorption: 58.4 V}, tolerance: 0 V, " \
              "equalising_enabled: no}"
    boat = figures_of(FUSED.replace("EMF", "54 V").replace("RESISTANCE", "3 mΩ").replace(
        "SOURCE", charger).replace("BREAKS", STRIP).replace("LENGTH", "0.1 m").replace(
        "SHEATHED", "no") + "  - {id: charge, from: c.positive, to: bus, through: []}\n")
    assert figure(boat, "f.highest_system_voltage") == pytest.approx(16 * 3.65)
    assert figure(boat, "f.voltage_rating") == 32.0
    assert figure(boat, "f.breaking_capacity").reason == OUTSIDE_METHOD


def test_75_a_figure_for_alternating_current_proves_nothing_on_direct() -> None:
    """UL 248 (as reprinted): ratings on DC are optional and may differ from those on AC."""
    boat = fused(breaks="{current: 200 kA, voltage: 300 V AC}")
    for name in ("breaking_capacity", "voltage_rating"):
        found = figure(boat, f"f.{name}")
        assert isinstance(found, Unknown)
        assert found.reason == OUTSIDE_METHOD


@pytest.mark.parametrize(("row", "inches", "limit", "within"), [
    (27, 6.9, 7, True), (28, 7.1, 7, False), (29, 39, 40, True), (29, 41, 40, False),
    # row 30 from memory; the arithmetic of inches does not rest on it
    (30, 72, 72, True), (30, 73, 72, False)])
def test_27_to_30_lengths_before_the_first_device(row: int, inches: float, limit: float,
                                                  within: bool) -> None:
    """33 CFR 183.455(b) (read), 183.460(a) (from memory), in inches of exactly 25.4 mm."""
    boat = fused(length=f"{inches} in", sheathed="yes")
    found = figure(boat, "b.unprotected_length")
    assert found == pytest.approx(inches * 0.0254, rel=1e-12)
    assert (found <= limit * 0.0254) is within
    assert figure(boat, "b.unprotected_zone_sheathed") is True


@pytest.mark.parametrize(("pounds", "force"), [(40, 80), (45, 90), (60, 90)])
def test_31_the_pull_on_a_battery(pounds: float, force: float) -> None:
    """33 CFR 183.420(a) (read): twice its weight, but no more than 90 pounds."""
    assert asked_pull.function(pounds * POUND).value == pytest.approx(force * POUND_FORCE, rel=1e-9)


@pytest.mark.parametrize(("inches", "passes"), [(1.0, True), (1.1, False)])
def test_32_how_far_it_may_move(inches: float, passes: bool) -> None:
    """33 CFR 183.420(a) (read): one inch under that pull."""
    needed = rounded(asked_pull.function(40 * POUND).value)
    moved = movement_under_test_pull.function(inches * 0.0254, needed, needed)
    assert (moved <= 0.0254) is passes


def test_35_an_alternator_rated_at_60_degrees() -> None:
    """33 CFR 183.460(b) (from memory): 120 % of 100 A. That a hot rating is kept needs none."""
    assert 1.2 * rated_current_at_60.function(100.0, 60.0).value == pytest.approx(120.0)
    assert rated_current_at_60.function(100.0, 25.0).value.hi == 100.0


def test_86_a_joint_of_half_a_milliohm() -> None:
    """200 A: 20 W and 0.1 V, by Ohm and Joule."""
    assert joint_loss.function(0.5e-3, 200.0) == pytest.approx(20.0)
    assert joint_drop.function(0.5e-3, 200.0) == pytest.approx(0.1)
