"""``garboard record new``: a sheet that can be assessed at once and never replaces a file."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.cli.main import run


def test_the_sheet_of_a_pack_holds_its_questions_and_can_be_assessed(
        tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str],
        ) -> None:
    monkeypatch.chdir(tmp_path)
    assert run(["record", "new", "launch.yaml", "--pack", "small-craft-lithium"]) == 0
    assert "#   joint-drop:\n" in Path("launch.yaml").read_text("utf-8")
    assert run(["assess", "launch.yaml", "--pack", "small-craft-lithium",
                "--on", "2026-04-18"]) == 2
    assert "batteries" in capsys.readouterr().out


def test_a_file_that_is_there_stays_as_it_is(
        tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    there = tmp_path / "launch.yaml"
    there.write_text("mine", "utf-8")
    assert run(["record", "new", str(there)]) == 3
    assert there.read_text("utf-8") == "mine"
    assert "record-exists" in capsys.readouterr().err
