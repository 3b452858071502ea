"""Pages of arithmetic worked by hand for figures of the work boat, number for number.

Each page of ``worked/`` names a figure and goes to it step by step; a step is a name and a line of
arithmetic over facts written on the page and the steps before. Every step states its result.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest

from garboard.documents import read_document
from quantities.boats import figure, work_boat

PAGES = [(file.stem, page) for file in sorted(Path(__file__).parent.glob("worked/*.yaml"))
         for page in [read_document(file).data]]
KNOWN = {"sqrt": math.sqrt, "ln": math.log, "exp": math.exp, "min": min, "max": max}


def test_there_are_ten_pages() -> None:
    assert len({page["figure"].partition(".")[2] for _, page in PAGES}) >= 10


@pytest.mark.parametrize("page", [page for _, page in PAGES], ids=[name for name, _ in PAGES])
def test_page(page: dict[str, Any]) -> None:
    known: dict[str, Any] = dict(KNOWN)
    for name, fact in page["facts"].items():
        known[name] = float(fact)
    last = 0.0
    for step in page["steps"]:
        name, _, rest = step.partition(" = ")
        working, _, stated = rest.rpartition(" = ")
        last = eval(working, {"__builtins__": {}}, known)
        assert last == pytest.approx(float(stated), rel=5e-6), step
        known[name] = last
    found = figure(work_boat(), page["figure"])
    assert found == pytest.approx(last, rel=1e-11), page["figure"]
