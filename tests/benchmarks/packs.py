"""Loading packs: 100 rules in three layers against reading the same YAML with the same parser.

Run by hand: ``python tests/benchmarks/packs.py``. The packs are the shipped kind of thing: rules
with conditions, limits, citations and texts; the layers above add rules, tighten and relax. Loading
is reading, resolving, checking every name and dimension, and compiling to Python. Nothing is kept
from one round to the next, but where it says so.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.packs_material import write_layers
from benchmarks.side_by_side import medians, rounds_of
from garboard.assembly import open_workshop
from garboard.documents import read_document
from garboard.packs import Shelf, checked, load_pack, sealed_bytes


def main() -> None:
    vocabulary = open_workshop().vocabulary
    with tempfile.TemporaryDirectory() as name:
        files = write_layers(Path(name))
        shelf = Shelf((Path(name),))
        top = files[-1]

        def load_anew() -> None:
            checked.forget()
            load_pack(top, vocabulary, shelf)

        pack = load_pack(top, vocabulary, shelf).pack
        sealed = Path(name) / "one.sealed.json"
        sealed.write_bytes(sealed_bytes(pack))

        def open_anew() -> None:
            checked.forget()
            load_pack(sealed, vocabulary, shelf)

        times = medians({
            "reading": lambda: [read_document(each) for each in files],
            "loading": load_anew,
            "kept": lambda: load_pack(top, vocabulary, shelf),
            "sealed": open_anew,
        }, rounds_of(sys.argv, 7))
    print(f"{len(pack.rules)} rules in three layers")
    for what, said in (("loading", "load, resolve, check and compile"),
                       ("kept", "the same, compiled before"),
                       ("sealed", "the same, sealed into one file")):
        print(f"{said}: {times[what]:.0f} ms, ratio {times[what] / times['reading']:.2f} "
              f"to reading the YAML alone ({times['reading']:.0f} ms)")


if __name__ == "__main__":
    main()
