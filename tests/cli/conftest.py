"""The command line, run in this process, in a folder of its own."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import Ran
from garboard.cli.main import run


@pytest.fixture
def garboard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
             capsys: pytest.CaptureFixture[str]) -> Callable[..., Ran]:
    """Runs the command line in an empty folder."""
    monkeypatch.chdir(tmp_path)

    def ran(*arguments: str | Path) -> Ran:
        code = run([str(each) for each in arguments])
        shown = capsys.readouterr()
        return Ran(code, shown.out, shown.err, tmp_path)

    return ran
