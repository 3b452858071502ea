"""Tests that need a referee: run where it is, skipped with a reason where not, errors under CI."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from house.sources import REPOSITORY

TEST = """
import pytest

@pytest.mark.{marker}
def test_with_referee():
    pass

def test_without():
    pass
"""


@pytest.mark.parametrize(("marker", "programs"), [
    ("ngspice", ["ngspice"]), ("browser", ["chromium", "chromedriver"])])
@pytest.mark.parametrize(("there", "ci", "code", "words"), [
    (True, None, 0, ["2 passed"]), (True, "true", 0, ["2 passed"]),
    (False, None, 0, ["1 passed, 1 skipped", "not installed"]),
    (False, "true", 1, ["1 passed, 1 error", "CI=true"])])
def test_referee(tmp_path: Path, marker: str, programs: list[str], there: bool, ci: str | None,
                 code: int, words: list[str]) -> None:
    shutil.copy(REPOSITORY / "tests" / "conftest.py", tmp_path)
    shutil.copy(REPOSITORY / "pyproject.toml", tmp_path)
    (tmp_path / "test_it.py").write_text(TEST.format(marker=marker))
    (tmp_path / "bin").mkdir()
    for program in programs if there else programs[1:]:
        (tmp_path / "bin" / program).write_text("#!/bin/sh\n")
        (tmp_path / "bin" / program).chmod(0o755)
    environment = {**os.environ, "PATH": str(tmp_path / "bin"), "CI": ci or ""}
    done = subprocess.run([sys.executable, "-m", "pytest", "-rs", "test_it.py"], cwd=tmp_path,
                          env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == code, done.stdout + done.stderr
    assert all(word in done.stdout for word in words), done.stdout
