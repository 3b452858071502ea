"""A record far larger than any boat: assessed within a gigabyte, a finding for every item."""

from __future__ import annotations

import json
import resource
import subprocess
import sys
from collections import Counter
from pathlib import Path

from benchmarks.big_records import record

RUNS = 2000
GIGABYTE = 2**30
#: Far more than it takes, since the machine may be busy with other things.
SECONDS = 120
PROGRAM = "from garboard.cli.main import main; main()"


def _limited() -> None:
    resource.setrlimit(resource.RLIMIT_AS, (GIGABYTE, GIGABYTE))


def test_two_thousand_runs_within_a_gigabyte(tmp_path: Path) -> None:
    data = record("tree", RUNS)
    (tmp_path / "record.json").write_text(json.dumps(data), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, "assess", "record.json", "--pack", "small-craft-lithium"],
        cwd=tmp_path, preexec_fn=_limited, capture_output=True, timeout=SECONDS, check=False)
    assert (done.returncode, done.stderr) == (1, b"")
    assert len(done.stdout.splitlines()) < 2 * RUNS
    assessment = json.loads((tmp_path / "record.trail.json").read_bytes())["assessment"]
    found = Counter(finding["rule"] for finding in assessment["findings"])
    aboard = {
        "battery": 6, "string": 6, "bank": 1, "place": 1, "run": RUNS, "conductor": RUNS,
        "device": RUNS, "bus": len(data["buses"]), "load": len(data["loads"])}
    (pack,) = assessment["packs"]
    assert found == {rule["id"]: aboard.get(rule["about"], 1)
                     for rule in pack["resolved"]["rules"]}
