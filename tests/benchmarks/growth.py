"""How time and memory of an assessment grow from 10 to 2,000 runs, from JSON, report and trail.

Run by hand: ``python tests/benchmarks/growth.py``, or with the names of shapes (see
``big_records``) and ``--runs 10,200,2000``. Every assessment is a process of its own. Linear growth
shows as a last column that does not grow.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.big_records import record

SIZES = "10,200,1000,2000"
#: An assessment in a process of its own; its last line says the most memory it held, in kB. What
#: ``resource`` says would count the process that started it as well.
PROGRAM = """
import re, sys
from pathlib import Path
from garboard.cli.main import run
code = run(sys.argv[1:])
print(re.search(r"VmHWM:\\s*(\\d+)", Path("/proc/self/status").read_text())[1], file=sys.stderr)
sys.exit(code)
"""


class Taken(NamedTuple):
    """What one assessment took, and its findings."""

    seconds: float
    megabytes: float
    findings: int


def assessed(shape: str, runs: int, *options: str) -> Taken:
    """One assessment of a record of a shape and size."""
    with tempfile.TemporaryDirectory() as folder:
        file, trail = Path(folder) / "record.json", Path(folder) / "trail.json"
        file.write_text(json.dumps(record(shape, runs)), encoding="utf-8")
        start = time.perf_counter()
        done = subprocess.run(
            [sys.executable, "-c", PROGRAM, "assess", str(file), "--pack", "small-craft-lithium",
             "--trail", str(trail), *options], capture_output=True, text=True, check=False,
            env={**os.environ, "PYTHONIOENCODING": "utf-8"})
        seconds = time.perf_counter() - start
        if done.returncode not in (0, 1, 2):
            raise SystemExit(f"{shape}, {runs} runs: {done.stderr}")
        findings = len(json.loads(trail.read_bytes())["assessment"]["findings"])
    return Taken(seconds, int(done.stderr.split()[-1]) / 1024, findings)


def main() -> None:
    arguments = sys.argv[1:]
    sizes = SIZES
    if "--runs" in arguments:
        at = arguments.index("--runs")
        sizes = arguments[at + 1]
        del arguments[at:at + 2]
    print(f"{'shape':<8}{'runs':>6}{'findings':>10}{'s':>8}{'MB':>8}{'ms more per run':>18}")
    for shape in arguments or ("tree", "star", "chain"):
        least: tuple[int, Taken] | None = None
        for runs in map(int, sizes.split(",")):
            taken = assessed(shape, runs)
            least = least or (runs, taken)
            more = ((taken.seconds - least[1].seconds) / (runs - least[0]) * 1e3
                    if runs > least[0] else 0.0)
            print(f"{shape:<8}{runs:>6}{taken.findings:>10}{taken.seconds:>8.2f}"
                  f"{taken.megabytes:>8.0f}{more:>18.2f}")


if __name__ == "__main__":
    main()
