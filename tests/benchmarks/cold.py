"""Cold starts: ``--help`` against importing what it must not import, and an assessment.

Run by hand: ``python tests/benchmarks/cold.py``. Each start is a process of its own; they are taken
in turn. Compiled sources are kept in a folder of their own, as an installed package has them.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.side_by_side import medians, rounds_of

ROOT = Path(__file__).resolve().parents[2]
EXAMPLE = ROOT / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
GARBOARD = "from garboard.cli.main import main; main()"
LIBRARIES = "import pydantic, numpy, jsonschema"


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        environment = {**os.environ, "PYTHONPYCACHEPREFIX": folder}
        environment.pop("PYTHONDONTWRITEBYTECODE", None)

        def start(program: str, *arguments: str) -> None:
            done = subprocess.run([sys.executable, "-c", program, *arguments], env=environment,
                                  cwd=folder, stdout=subprocess.DEVNULL, check=False)
            if done.returncode not in (0, 1, 2):
                raise SystemExit(f"{arguments} ended with {done.returncode}")

        times = medians({
            "nothing": lambda: start("pass"),
            "help": lambda: start(GARBOARD, "--help"),
            "libraries": lambda: start(LIBRARIES),
            "assess": lambda: start(GARBOARD, "assess", str(EXAMPLE), "--pack",
                                    "small-craft-lithium"),
        }, rounds_of(sys.argv, 7))
    print(f"Python alone {times['nothing']:.0f} ms, the libraries {times['libraries']:.0f} ms")
    print(f"--help {times['help']:.0f} ms, ratio to the libraries "
          f"{times['help'] / times['libraries']:.2f}")
    print(f"assessment of the example {times['assess']:.0f} ms, ratio to the libraries "
          f"{times['assess'] / times['libraries']:.1f}")


if __name__ == "__main__":
    main()
