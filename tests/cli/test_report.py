"""``garboard report``: every ending writes its file; a missing library is told, nothing written."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import Ran
from garboard.trail import trail_bytes
from trail.launch import launch_trail

STARTS = {"html": b"<!DOCTYPE html>", "csv": b"kind,id,", "md": b"# Assessment", "xlsx": b"PK",
          "xml": b"<?xml", "jsonld": b"{"}


@pytest.mark.parametrize("ending", STARTS)
def test_every_ending_writes_its_kind(ending: str, garboard: Callable[..., Ran]) -> None:
    Path("launch.trail.json").write_bytes(trail_bytes(launch_trail()))
    ran = garboard("report", "launch.trail.json", "--to", f"launch.{ending}")
    assert ran.code == 0, ran.err
    assert Path(f"launch.{ending}").read_bytes().startswith(STARTS[ending])


def test_a_missing_library_is_told_and_nothing_is_written(
        garboard: Callable[..., Ran], monkeypatch: pytest.MonkeyPatch) -> None:
    Path("launch.trail.json").write_bytes(trail_bytes(launch_trail()))
    monkeypatch.setitem(sys.modules, "xlsxwriter", None)
    ran = garboard("report", "launch.trail.json", "--to", "launch.xlsx")
    assert ran.code == 3
    assert "report-library-missing" in ran.err.splitlines()[0]
    assert not Path("launch.xlsx").exists()
