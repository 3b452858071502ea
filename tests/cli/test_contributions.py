"""What a charging source declares to add to a fault is added; what is not declared is not."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import HERE, Ran

SOURCE = ("charging_sources: [{{id: charger, fault_contribution: {amount}}}]\n",
          "  - {{id: charger-feed, from: charger, to: main-bus, through: "
          "[{{conductor: {{id: cc, resistance: 1 mΩ}}}}]}}\n")


@pytest.mark.parametrize(("declared", "f0", "f1"), [
    ("0 A", 28672, 16211),
    # the charger's 500 A divide at the bus: all of it into a short behind f0; into a short at the
    # battery side of f1, whose lead is 0.20 mΩ, it shares that lead with packs 2 and 3:
    # I = (E·G + 500) / (1 + 0.20e-3·G) with G = 1/2.72e-3 + 1/3.12e-3
    ("500 A", 28672 + 500, (26.8 * (1 / 2.72e-3 + 1 / 3.12e-3) + 500)
     / (1 + 0.20e-3 * (1 / 2.72e-3 + 1 / 3.12e-3))),
])
def test_contribution(garboard: Callable[..., Ran], declared: str, f0: float, f1: float) -> None:
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    text = text.replace("charging_sources: []\n", SOURCE[0].format(amount=declared))
    Path("charged.yaml").write_text(text + SOURCE[1].format(), "utf-8")
    ran = garboard("assess", "charged.yaml", "--pack", HERE / "figures-pack.yaml")
    assert ran.code == 1, ran.err
    derivations = ran.trail("charged.trail.json")["assessment"]["derivations"]
    assert derivations["f0.prospective_current"]["value"] == pytest.approx(f0, rel=1e-4)
    assert derivations["f1.prospective_current"]["value"] == pytest.approx(f1, rel=1e-4)


def test_what_a_motor_declares_opens_the_fault_upwards_by_no_more_than_that(
        garboard: Callable[..., Ran]) -> None:
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    text = text.replace("loads: []\n", "loads: [{id: winch, fault_contribution: 2 kA}]\n")
    text += ("  - {id: winch-feed, from: panel, to: winch, through: "
             "[{conductor: {id: cw, resistance: 1 mΩ}}]}\n")
    Path("winch.yaml").write_text(text, "utf-8")
    ran = garboard("assess", "winch.yaml", "--pack", HERE / "figures-pack.yaml")
    assert ran.code == 1, ran.err
    value = ran.trail("winch.trail.json")["assessment"]["derivations"][
        "f0.prospective_current"]["value"]
    assert (value["lo"], value["hi"]) == pytest.approx((28672, 30672), rel=1e-4)
    assert value["nominal"] is None
