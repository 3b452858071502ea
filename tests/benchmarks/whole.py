"""A whole assessment in a warm process, from JSON to the bytes of the trail, against its floor.

Run by hand: ``python tests/benchmarks/whole.py``. The floor is what any program in Python with the
same output would have to do: decode the record and validate it with pydantic, invert one matrix of
the size of its network with numpy, encode a trail of the same data as JSON and hash it. What is the
same in every trail (the packs) is encoded once and kept by the program; the floor encodes only the
rest, and copies the packs.
"""

from __future__ import annotations

import hashlib
import importlib
import json
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np

from benchmarks.side_by_side import medians, rounds_of
from garboard.assembly import open_workshop
from garboard.documents import read_document
from garboard.packs import CheckedPack
from garboard.record.models.record import InstallationRecord
from garboard.trail import trail_bytes

EXAMPLE = (Path(__file__).resolve().parents[2] / "examples" / "river-survey-launch"
           / "after-as-fitted.yaml")
PACK = "small-craft-lithium"
#: The parts that are timed apart: what they are called, and the function that does each.
PARTS = (("read the document", "garboard.assembly.workshop", "read_document"),
         ("read the record", "garboard.assembly.workshop", "read_record"),
         ("network", "garboard.assessment.assess", "build_network"),
         ("figures and rules", "garboard.assessment.assess", "_run"),
         ("findings", "garboard.assessment.assess", "findings_of"),
         ("derivations", "garboard.assessment.assess", "derivations_in_trail"),
         ("record in the trail", "garboard.assessment.assess", "record_in_trail"),
         ("places in the file", "garboard.assessment.assess", "places_of"),
         ("trail", "garboard.assessment.assess", "make_trail"))


def json_of_the_example(folder: Path) -> Path:
    """The record of the example as JSON, as other programs hand it over."""
    file = folder / "after-as-fitted.json"
    file.write_text(json.dumps(read_document(EXAMPLE).data, ensure_ascii=False), encoding="utf-8")
    return file


def floor_of(file: Path, canonical: bytes) -> Callable[[], str]:
    """The floor for a record and the canonical bytes of its trail."""
    assessment = json.loads(canonical)
    kept = json.dumps(assessment.pop("packs"), ensure_ascii=False).encode()
    ends = [run[end] for run in assessment["record"]["written"]["runs"] for end in ("from", "to")]
    parts = sum(len(run.get("through", ())) for run in assessment["record"]["written"]["runs"])
    matrix = np.eye(len(set(ends)) + parts) * 2 + 0.01

    def floor() -> str:
        InstallationRecord.model_validate(json.loads(file.read_bytes()))
        np.linalg.inv(matrix)
        text = json.dumps(assessment, ensure_ascii=False, check_circular=False, sort_keys=True,
                          separators=(",", ":"))
        return hashlib.sha256(b"".join((text.encode(), kept))).hexdigest()

    return floor


@contextmanager
def timed_parts() -> Iterator[dict[str, list[float]]]:
    """Seconds taken by each part, noted while the block runs."""
    taken: dict[str, list[float]] = {name: [] for name, _, _ in PARTS}
    originals = []
    for name, module_name, function_name in PARTS:
        module = importlib.import_module(module_name)
        original = getattr(module, function_name)
        originals.append((module, function_name, original))
        setattr(module, function_name, _timed(original, taken[name]))
    try:
        yield taken
    finally:
        for module, function_name, original in originals:
            setattr(module, function_name, original)


def _timed(work: Callable[..., Any], taken: list[float]) -> Callable[..., Any]:
    def timed(*arguments: Any, **named: Any) -> Any:
        start = time.perf_counter()
        result = work(*arguments, **named)
        taken.append(time.perf_counter() - start)
        return result

    return timed


def main() -> None:
    workshop = open_workshop()
    packs: tuple[CheckedPack, ...] = workshop.load_packs([PACK])
    rounds = rounds_of(sys.argv, 60)
    with tempfile.TemporaryDirectory() as folder:
        file = json_of_the_example(Path(folder))

        def whole() -> bytes:
            return trail_bytes(workshop.assess(file, packs).trail)

        assessed = workshop.assess(file, packs)
        floor = floor_of(file, assessed.trail.canonical)
        times = medians({"whole": whole, "floor": floor}, rounds)
        with timed_parts() as taken:
            for _ in range(rounds):
                whole()
    print(f"{len(assessed.trail.findings)} findings, a trail of "
          f"{len(trail_bytes(assessed.trail)) / 1e3:.0f} kB")
    print(f"whole assessment {times['whole']:.1f} ms, floor {times['floor']:.1f} ms, "
          f"ratio {times['whole'] / times['floor']:.1f}")
    for name, each in taken.items():
        print(f"  {name:<20} {median(each) * 1e3:6.2f} ms")


if __name__ == "__main__":
    main()
