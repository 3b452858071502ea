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


def test_what_a_motor_declares_flows_back_from_its_terminal(
        garboard: Callable[..., Ran]) -> None:
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    text = text.replace("loads: []\n", "loads: [{id: winch, fault_contribution: 2 kA}]\n")
    text += ("  - {id: winch-feed, from: panel, to: winch, through: "
             "[{conductor: {id: cw, resistance: 1 mΩ}}]}\n")
    Path("winch.yaml").write_text(text, "utf-8")
    ran = garboard("assess", "winch.yaml", "--pack", HERE / "figures-pack.yaml")
    assert ran.code == 1, ran.err
    derivations = ran.trail("winch.trail.json")["assessment"]["derivations"]
    values = {key: each["value"] for key, each in derivations.items()}
    # into a short behind f0 the winch feeds from the other side, so f0 sees the packs alone
    assert values["f0.prospective_current"] == pytest.approx(28672, rel=1e-4)
    assert values["panel.fault_current"] == pytest.approx(13503 + 2000, rel=1e-4)
    # at f1 it arrives over the main bus, as the charger's 500 A above
    others = 1 / 2.72e-3 + 1 / 3.12e-3
    assert values["f1.prospective_current"] == pytest.approx(
        (26.8 * others + 2000) / (1 + 0.20e-3 * others), rel=1e-4)


def test_what_declares_no_contribution_is_named(garboard: Callable[..., Ran]) -> None:
    """The figure is of what is declared; a remark says what is not, a truth that a rule can ask."""
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    text = text.replace("loads: []\n", "loads: [{id: winch, kind: winch}, {id: lamp, kind: "
                        "lighting}]\n")
    text = text.replace("charging_sources: []\n", "charging_sources: [{id: charger}]\n")
    Path("open.yaml").write_text(text, "utf-8")
    ran = garboard("assess", "open.yaml", "--pack", HERE / "figures-pack.yaml")
    derivation = ran.trail("open.trail.json")["assessment"]["derivations"]["f0.prospective_current"]
    assert derivation["value"] == pytest.approx(28672, rel=1e-4)
    assert derivation["remarks"][-1].endswith(": charger, winch")
