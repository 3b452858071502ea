"""Standard output on a full disk: a line that says so and a refusal, not a traceback."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

FULL = Path("/dev/full")


@pytest.mark.skipif(not FULL.exists(), reason="no /dev/full on this system")
@pytest.mark.parametrize("command", [["quantities"], ["--version"]])
def test_what_cannot_be_printed_is_said(command: list[str]) -> None:
    with FULL.open("w") as full:
        done = subprocess.run([sys.executable, "-m", "garboard", *command], stdout=full,
                              stderr=subprocess.PIPE, text=True, check=False)
    assert done.returncode == 3
    assert "Traceback" not in done.stderr
    assert done.stderr.strip()
