"""A few hundred bytes that stand for millions of values are refused at once, whatever the file."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

BOMB = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{one}: &{one} [{','.join([f'*{before}'] * 9)}]\n" for before, one in zip("abcdefg", "bcdefgh",
                                                                          strict=True))
CHILD = """
import re, sys, time
from pathlib import Path
from garboard.cli.main import run
start = time.process_time()
code = run(sys.argv[1:])
took = time.process_time() - start
peak = int(re.search(r"VmHWM:\\s*(\\d+)", Path("/proc/self/status").read_text())[1])
print(code, took < 1.0, peak < 100_000)
"""


@pytest.mark.parametrize("kind", ["record", "pack", "dispensations"])
def test_an_alias_bomb_of_300_bytes(kind: str, tmp_path: Path) -> None:
    assert len(BOMB) < 330
    file = tmp_path / "bomb.yaml"
    file.write_text(BOMB, "utf-8")
    record = tmp_path / "fine.yaml"
    record.write_text("format: installation-record/1\nsurvey: {date: 2026-04-18}\n", "utf-8")
    pack = tmp_path / "house"
    pack.mkdir()
    (pack / "pack.yaml").write_text(BOMB, "utf-8")
    arguments = {"record": ["assess", str(file), "--pack", "teaching-first-steps"],
                 "pack": ["pack", "proofread", str(pack)],
                 "dispensations": ["assess", str(record), "--pack", "teaching-first-steps",
                                   "--dispensations", str(file)]}[kind]
    done = subprocess.run([sys.executable, "-c", CHILD, *arguments], cwd=tmp_path,
                          capture_output=True, text=True, check=True)
    assert done.stdout.split()[-3:] == ["3", "True", "True"], done.stderr
    assert "yaml-alias-expansion" in done.stderr
    assert f"{'pack.yaml' if kind == 'pack' else 'bomb.yaml'}:" in done.stderr
