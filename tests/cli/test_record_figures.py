"""``garboard record figures``: the figures of an assessment, asked for by name."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from garboard.cli.main import run

RECORD = str(Path(__file__).parent.parent.parent / "examples" / "river-survey-launch"
             / "after-as-fitted.yaml")


def figures(capsys: pytest.CaptureFixture[str], *names: str) -> list[dict[str, Any]]:
    assert run(["record", "figures", RECORD, *names, "--json"]) == 0
    return json.loads(capsys.readouterr().out)  # type: ignore[no-any-return]


def test_figures_are_those_of_an_assessment(
        tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    trail = tmp_path / "t.json"
    run(["assess", RECORD, "--pack", "small-craft-lithium", "--trail", str(trail)])
    derivations = json.loads(trail.read_text("utf-8"))["assessment"]["derivations"]
    capsys.readouterr()
    (asked,) = figures(capsys, "device.prospective_current")
    assert asked["unit"] == "A"
    assert len(asked["values"]) > 4
    for item, value in asked["values"].items():
        assert derivations[f"{item}.prospective_current"]["value"] == value


def test_only_the_things_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    (asked, other) = figures(capsys, "conductor.ampacity", "bus.fault_current", "--of", "w1")
    assert (list(asked["values"]), list(other["values"])) == (["w1"], [])


def test_without_names_the_main_figures_come_as_text(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["record", "figures", RECORD]) == 0
    assert "• main-bus: 28.03 kA to 33.10 kA" in capsys.readouterr().out


@pytest.mark.parametrize(("arguments", "code"), [
    (["bus.fault_curent"], "quantity-unknown"), (["fault_current"], "quantity-unknown"),
    (["bus.fault_current", "--of", "nothing"], "item-unknown")])
def test_a_name_that_nothing_has_is_refused(
        arguments: list[str], code: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["record", "figures", RECORD, *arguments]) == 3
    assert code in capsys.readouterr().err
