"""The bench circuit's figures through the command line, against a nodal solve and ngspice."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

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


def test_a_fuse_whose_resistance_nobody_noted_is_assessed_as_if_it_had_none(
        garboard: Callable[..., Ran]) -> None:
    """In the largest fault devices have no resistance unless it is on record: 26.8 V over packs of
    2.1, 2.1 and 2.4 mΩ with leads of 0.32, 0.42 and 0.52 mΩ in parallel."""
    text = (HERE / "three-packs.yaml").read_text("utf-8")
    for written in ("resistance: 0.2 mΩ, ", "resistance: 0.15 mΩ, "):
        assert written in text
        text = text.replace(written, "")
    trail = _trail(garboard, text.replace("current: 20 kA", "current: 1 kA"))
    value = trail["derivations"]["f0.prospective_current"]["value"]
    assert value == pytest.approx(26.8e3 * (1 / 2.42 + 1 / 2.52 + 1 / 2.92), rel=1e-9)
    assert trail["derivations"]["f0.through_current"]["value"] == value
    outcomes = {each["id"]: each["outcome"] for each in trail["findings"]}
    assert outcomes["figures/breaks/f0"] == "failed"


def test_of_two_fuses_side_by_side_neither_hides_behind_the_other(
        garboard: Callable[..., Ran]) -> None:
    """One without resistance would draw all of the current; each may be the one that carries it."""
    text = (HERE / "three-packs.yaml").read_text("utf-8").replace("resistance: 0.15 mΩ, ", "")
    text += ("  - {id: second-feed, from: main-bus, to: panel, through: [{fuse: {id: f9, "
             "breaks: [{current: 20 kA, voltage: 125 V DC}]}}, "
             "{conductor: {id: c9, resistance: 0.9 mΩ}}]}\n")
    beyond = _trail(garboard, text)["derivations"]["f0.prospective_current"]["value"]
    assert beyond == pytest.approx(28672, rel=1e-4)
    meeting = text.replace(", {conductor: {id: c9, resistance: 0.9 mΩ}}", "").replace(
        "      - conductor: {id: c0, resistance: 0.9 mΩ}\n", "")
    trail = _trail(garboard, meeting)
    for device in ("f0", "f9"):
        for name in ("prospective", "through"):
            value = trail["derivations"][f"{device}.{name}_current"]["value"]
            assert value == pytest.approx(28672, rel=1e-4)


def _trail(garboard: Callable[..., Ran], text: str) -> dict[str, Any]:
    Path("record.yaml").write_text(text, "utf-8")
    ran = garboard("assess", "record.yaml", "--pack", HERE / "figures-pack.yaml")
    return ran.trail("record.trail.json")["assessment"]


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
