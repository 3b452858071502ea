"""How long every kind of report takes from a trail in hand, and how large it is.

Run by hand: ``python tests/benchmarks/reports.py [--runs N]``. Processor time, the least of the
rounds, so that a busy machine disturbs little; ``ratio`` is the page of the large record over that
of the example, to be held against the ratio of their findings.
"""

from __future__ import annotations

import json
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.big_records import record
from benchmarks.side_by_side import rounds_of
from benchmarks.whole import EXAMPLE, PACK
from garboard.assembly import open_workshop
from garboard.reports import json_report, terminal_report
from garboard.reports.files.comma_separated import csv_report
from garboard.reports.files.earl import earl_report
from garboard.reports.files.junit import junit_report
from garboard.reports.files.markdown import markdown_report
from garboard.reports.files.workbook import xlsx_report
from garboard.reports.html import html_report
from garboard.trail import Trail

KINDS: dict[str, Callable[[Trail], str | bytes]] = {
    "terminal": terminal_report, "json": json_report, "html": html_report, "csv": csv_report,
    "xlsx": xlsx_report, "markdown": markdown_report, "junit": junit_report, "earl": earl_report}


def spent(write: Callable[[Trail], str | bytes], trail: Trail, rounds: int) -> tuple[float, int]:
    """Seconds of processor time, the least of the rounds, and the size in bytes."""
    taken = []
    for _ in range(rounds):
        begun = time.process_time()
        drawn = write(trail)
        taken.append(time.process_time() - begun)
    return min(taken), len(drawn.encode() if isinstance(drawn, str) else drawn)


def main() -> None:
    """Print a line for every kind and record."""
    arguments = sys.argv[1:]
    runs = int(arguments[arguments.index("--runs") + 1]) if "--runs" in arguments else 500
    rounds = rounds_of([each for each in arguments if each not in ("--runs", str(runs))], 3)
    workshop = open_workshop()
    packs = workshop.load_packs([PACK])
    with tempfile.TemporaryDirectory() as folder:
        large = Path(folder) / "large.json"
        large.write_text(json.dumps(record("tree", runs)), "utf-8")
        trails = {"example": workshop.assess(str(EXAMPLE), packs, None).trail,
                  f"{runs} runs": workshop.assess(str(large), packs, None).trail}
    pages = []
    for name, trail in trails.items():
        print(f"{name}: {len(trail.findings)} findings")
        for kind, write in KINDS.items():
            seconds, size = spent(write, trail, rounds)
            print(f"  {kind:<9} {seconds * 1000:7.0f} ms {size / 1000:8.0f} kB")
            if kind == "html":
                pages.append(seconds)
    print(f"page of the large record to that of the example: ratio {pages[1] / pages[0]:.1f}")


if __name__ == "__main__":
    main()
