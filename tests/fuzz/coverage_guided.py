"""A coverage-guided fuzzer over everything a stranger can hand in; a script, not a test.

    pip install atheris
    python tests/fuzz/coverage_guided.py FOLDER --seconds 1200

It looks for exceptions that are no refusals, and for inputs that take longer than two seconds. It
goes on after each. What it found is in FOLDER/found (the input, and the traceback beside it); how
often each way in was tried is in FOLDER/summary.json. What libFuzzer learnt stands in
FOLDER/corpus, so that a later time begins where this one ended.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
import traceback
from collections import Counter
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

import atheris

sys.path.insert(0, str(Path(__file__).parents[1]))
with atheris.instrument_imports(include=["garboard"]):
    from fuzz.inputs import (
        WAYS_IN,
        changed,
        seeds,
        whole_packs,
        whole_records,
    )

    for _way, _text in [*list(seeds())[-1:], ("document", "a: [1]"), ("expression", "1 < 2")]:
        WAYS_IN[_way](_text)
    WAYS_IN["assessment"](json.dumps(whole_records()[0]))

SLOW: Final = 2.0
#: libFuzzer leaves without a word, so what was done is written down now and then, in seconds.
TOLD_EVERY: Final = 5.0
#: The first byte of an input chooses: texts as they are, or right data with places changed.
KINDS: Final = ("expression", "document", "record", "pack", "changed record", "changed pack",
                "changed record", "changed pack", "changed assessment")


class Fuzzer:
    """Counts what was tried and keeps what was found, one of each place in the code."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.tried: Counter[str] = Counter()
        self.slowest = dict.fromkeys(WAYS_IN, 0.0)
        self.places: set[str] = set()
        self.hangs = 0
        self.started = self.told = time.monotonic()

    def __call__(self, raw: bytes) -> None:
        if len(raw) < 2:
            return
        kind = KINDS[raw[0] % len(KINDS)]
        way = kind.removeprefix("changed ")
        text = _text_of(kind, raw[1:])
        started = time.perf_counter()
        try:
            WAYS_IN[way](text)
        except Exception as error:  # noqa: BLE001 - whatever is raised is what is looked for
            self._keep(way, text, error)
        taken = time.perf_counter() - started
        self.tried[kind] += 1
        self.slowest[way] = max(self.slowest[way], taken)
        if taken > SLOW:
            self.hangs += 1
            self._write(f"slow-{way}-{sha256(text.encode(errors='replace')).hexdigest()[:12]}",
                        text, f"{taken:.1f} s")
        if time.monotonic() - self.told > TOLD_EVERY:
            self.tell()

    def _keep(self, way: str, text: str, error: Exception) -> None:
        last = traceback.extract_tb(error.__traceback__)[-1]
        place = f"{type(error).__name__}-{Path(last.filename).stem}-{last.lineno}"
        if place not in self.places:
            self.places.add(place)
            self._write(f"{way}-{place}", text, "".join(traceback.format_exception(error)))

    def _write(self, name: str, text: str, said: str) -> None:
        found = self.folder / "found"
        found.mkdir(exist_ok=True)
        (found / f"{name}.txt").write_text(text, "utf-8", errors="surrogateescape")
        (found / f"{name}.said").write_text(said, "utf-8")

    def tell(self) -> None:
        """The summary, in the folder."""
        self.told = time.monotonic()
        told = {"seconds": round(time.monotonic() - self.started), "tried": dict(self.tried),
                "executions": sum(self.tried.values()), "crashes": sorted(self.places),
                "slower than two seconds": self.hangs,
                "slowest in seconds": {way: round(taken, 3)
                                       for way, taken in self.slowest.items()}}
        (self.folder / "summary.json").write_text(json.dumps(told, indent=1) + "\n", "utf-8")


def _text_of(kind: str, raw: bytes) -> str:
    if not kind.startswith("changed"):
        return raw.decode("utf-8", "replace")
    provider = atheris.FuzzedDataProvider(raw)
    whole: tuple[Any, ...] = whole_packs() if kind.endswith("pack") else whole_records()

    def choose(several: int) -> int:
        return int(provider.ConsumeIntInRange(0, several - 1)) if several > 1 else 0

    return json.dumps(changed(whole[choose(len(whole))], choose, 1 + choose(4)))


def _begin(folder: Path) -> Path:
    corpus = folder / "corpus"
    corpus.mkdir(parents=True, exist_ok=True)
    for way, text in seeds():
        raw = bytes([KINDS.index(way)]) + text.encode()
        (corpus / sha256(raw).hexdigest()[:16]).write_bytes(raw)
        if way == "record":
            raw = bytes([KINDS.index("document")]) + text.encode()
            (corpus / sha256(raw).hexdigest()[:16]).write_bytes(raw)
    for kind in ("changed record", "changed pack", "changed assessment"):
        for number in range(64):
            raw = bytes([KINDS.index(kind)]) + sha256(f"{kind}{number}".encode()).digest()
            (corpus / sha256(raw).hexdigest()[:16]).write_bytes(raw)
    words = ("and ", "or ", "not ", " in ", " if ", " else ", " for ", "all(", "sum(", "count(",
             "battery.", "record.", "limit", "answer.", "- ", ": ", "&a ", "*a", "<<: ", "|\\x0a",
             ">-\\x0a", "!!python/object ", "---\\x0a", "[", "{", " #", "'", "\\x22", "must_hold: ",
             "rules:", "batteries:", "value: ", "plus_minus: ", " mm2", " V", " A", " .. ")
    (folder / "words.dict").write_text("".join(f'"{each}"\n' for each in words), "utf-8")
    return corpus


def main() -> None:
    """Fuzz for the time given, then tell."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path, help="where to keep what is learnt and found")
    parser.add_argument("--seconds", type=int, default=1200, help="how long (default: 1200)")
    asked = parser.parse_args()
    corpus = _begin(asked.folder)
    fuzzer = Fuzzer(asked.folder)
    atheris.Setup([sys.argv[0], f"-max_total_time={asked.seconds}", "-max_len=6000", "-timeout=120",
                   "-rss_limit_mb=3000", f"-dict={asked.folder / 'words.dict'}",
                   "-print_final_stats=1", str(corpus)], fuzzer)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
