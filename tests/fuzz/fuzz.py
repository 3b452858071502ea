"""Coverage-guided fuzzing of all that reads files of strangers; run by hand, never by pytest.

    pip install atheris
    python tests/fuzz/fuzz.py --seconds 1200 --corpus /somewhere/corpus

The first byte of an input chooses the reader: rule language, document, record, pack, or a whole
assessment of a record. Refusing an input is right; any other exception, more than ten seconds or
more than a gigabyte for one input is a finding, and stops the run with the input in a file. What
was found and mended is kept as a test in the floor it belongs to.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

import atheris

with atheris.instrument_imports(include=["garboard"]):
    from garboard.assembly import open_workshop
    from garboard.documents import read_text
    from garboard.errors import Refused
    from garboard.expressions import ExpressionRefused, parse
    from garboard.packs import check_pack, read_pack_text
    from garboard.record import read_record

TESTS = Path(__file__).parents[1]
WORKSHOP = open_workshop()
PACKS = WORKSHOP.load_packs(["small-craft-lithium"])
FOLDER = TemporaryDirectory()
FILE = Path(FOLDER.name) / "fuzzed.yaml"


def expression(text: str) -> None:
    parse(text)


def document(text: str) -> None:
    read_text(text, "fuzzed.json" if text[:1] == "{" else "fuzzed.yaml")


def record(text: str) -> None:
    read_record(read_text(text, "fuzzed.yaml"))


def pack(text: str) -> None:
    check_pack(read_pack_text(text, "fuzzed.yaml"), WORKSHOP.vocabulary)


def assessment(text: str) -> None:
    FILE.write_text(text, encoding="utf-8", newline="")
    WORKSHOP.assess(FILE, PACKS)


READERS: tuple[Callable[[str], None], ...] = (expression, document, record, pack, assessment)


def one_input(data: bytes) -> None:
    """Give one input to the reader that its first byte chooses."""
    if not data:
        return
    text = data[1:].decode("utf-8", "replace")
    try:
        READERS[data[0] % len(READERS)](text)
    except (Refused, ExpressionRefused) as refused:
        str(refused)


def plant(corpus: Path) -> None:
    """Begin with what is known to be read: the examples, the shipped packs, expressions."""
    corpus.mkdir(parents=True, exist_ok=True)
    records = [*(TESTS.parent / "examples").glob("*/*.yaml"),
               *(TESTS / "quantities").glob("*.yaml")]
    packs = [*(TESTS.parent / "rulepacks").glob("*/pack.yaml"),
             *(TESTS.parent / "rulepacks").glob("*/rules/*.yaml")]
    seeds = [(reader, file.read_bytes()) for file in records for reader in (1, 2, 4)]
    seeds += [(reader, file.read_bytes()) for file in packs for reader in (1, 3)]
    seeds += [(0, text) for text in (
        b"device.breaking_capacity >= device.prospective_current",
        b"all(b.chemistry == 'LFP' for b in bank.batteries) and 3 % < x or not (a in (\"b\", 1 V))",
        b"max(max(d.rating for d in r.devices) for r in bus.runs if count(r.devices) > 0)")]
    for number, (reader, data) in enumerate(seeds):
        (corpus / f"seed-{number:04}").write_bytes(bytes([reader]) + data)


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--seconds", type=int, default=1200)
    options.add_argument("--corpus", type=Path, required=True)
    options.add_argument("--found", type=Path, default=Path())
    chosen = options.parse_args()
    plant(chosen.corpus)
    chosen.found.mkdir(parents=True, exist_ok=True)
    atheris.Setup([sys.argv[0], f"-max_total_time={chosen.seconds}", "-timeout=10",
                   "-rss_limit_mb=1024", "-max_len=20000", "-print_final_stats=1",
                   f"-artifact_prefix={chosen.found}/", str(chosen.corpus)], one_input)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
