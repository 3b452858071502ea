"""The bench circuit's figures through the command line, against a nodal solve and ngspice."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import HERE, Ran

# Figures agreed by a nodal solve and by ngspice to 0.1 %, in A.
FIGURES = {
    "f0.prospective_current": 28672, "f1.prospective_current": 16211,
    "f2.prospective_current": 15544, "f3.prospective_current": 15451,
    "f0.through_current": 24707, "f1.through_current": 14462, "panel.fault_current": 13503,
}


@pytest.fixture
def derivations(garboard: Callable[..., Ran]) -> dict[str, dict[str, object]]:
    ran = garboard("assess", HERE / "three-packs.yaml", "--pack", HERE / "figures-pack.yaml")
    assert ran.code == 1, ran.err
    return ran.trail("three-packs.trail.json")["assessment"]["derivations"]


@pytest.mark.parametrize("key", FIGURES)
def test_figure(derivations: dict[str, dict[str, object]], key: str) -> None:
    assert derivations[key]["value"] == pytest.approx(FIGURES[key], rel=1e-4)


def test_bounds_with_every_internal_resistance_ten_percent_either_way(
        garboard: Callable[..., Ran]) -> None:
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    for written in ("2.1 mΩ", "2.4 mΩ"):
        text = text.replace(f"internal_resistance: {written}",
                            f"internal_resistance: {{value: {written}, plus_minus: 10 %}}")
    Path("wide.yaml").write_text(text, "utf-8")
    ran = garboard("assess", "wide.yaml", "--pack", HERE / "figures-pack.yaml")
    assert ran.code == 1, ran.err
    trail = ran.trail("wide.trail.json")["assessment"]
    value = trail["derivations"]["f0.prospective_current"]["value"]
    assert (value["lo"], value["nominal"], value["hi"]) == pytest.approx(
        (26593, 28672, 31103), rel=1e-4)
    assert value["basis"] == ["tolerance"]
    outcomes = {each["id"]: each["outcome"] for each in trail["findings"]}
    assert outcomes["figures/breaks/f0"] == "failed"
    assert outcomes["figures/breaks/f1"] == "passed"


def test_common_practice_of_the_trade_four_batteries_of_ten_kiloamperes(
        garboard: Callable[..., Ran]) -> None:
    """Common practice: four batteries of 10 kA give 40 kA at the bus, beyond one fuse of 20 kA;
    each battery's own fuse sees the other three, 30 kA, for a fault at its battery."""
    batteries = "\n".join(
        f"  - {{id: pack-{n}, chemistry: LFP, open_circuit_voltage_max: 13.4 V, "
        f"short_circuit_current: {{value: 10 kA, credits_electronics: no}}}}" for n in range(1, 5))
    runs = "\n".join(
        f"  - {{id: lead-{n}, from: pack-{n}, to: main-bus, through: [{{fuse: {{id: f{n}, "
        f"resistance: 0 mΩ, breaks: [{{current: 20 kA, voltage: 125 V DC}}]}}}}]}}"
        for n in range(1, 5))
    Path("four.yaml").write_text(
        "format: installation-record/1\nsurvey: {date: 2026-01-15}\nwiring: {returns: neglected}\n"
        f"batteries:\n{batteries}\nbuses: [{{id: main-bus}}, {{id: panel}}]\n"
        f"charging_sources: []\nruns:\n{runs}\n"
        "  - {id: feed, from: main-bus, to: panel, through: [{fuse: {id: f0, resistance: 0 mΩ, "
        "breaks: [{current: 20 kA, voltage: 125 V DC}]}}]}\n", "utf-8")
    ran = garboard("assess", "four.yaml", "--pack", HERE / "figures-pack.yaml")
    trail = ran.trail("four.trail.json")["assessment"]
    values = {key: each["value"] for key, each in trail["derivations"].items()}
    assert values["main-bus.fault_current"] == pytest.approx(40000)
    assert values["f0.prospective_current"] == pytest.approx(40000)
    for n in range(1, 5):
        assert values[f"f{n}.prospective_current"] == pytest.approx(30000)
    failed = {each["item"] for each in trail["findings"]
              if each["rule"] == "breaks" and each["outcome"] == "failed"}
    assert failed == {"f0", "f1", "f2", "f3", "f4"}
