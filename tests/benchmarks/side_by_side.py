"""Times taken in turn, so that a busy machine slows all alike; what counts are the ratios."""

from __future__ import annotations

import gc
import time
from collections.abc import Callable, Mapping
from statistics import median
from typing import Any


def medians(works: Mapping[str, Callable[[], Any]], rounds: int) -> dict[str, float]:
    """The median time of each in ms; one of each per round, after one round to warm up."""
    taken: dict[str, list[float]] = {name: [] for name in works}
    for number in range(rounds + 1):
        for name, work in works.items():
            gc.collect(0)
            start = time.perf_counter()
            work()
            if number:
                taken[name].append((time.perf_counter() - start) * 1e3)
    return {name: median(each) for name, each in taken.items()}


def rounds_of(arguments: list[str], usual: int) -> int:
    """How many rounds the command line asks for: ``--rounds 3``."""
    return int(arguments[arguments.index("--rounds") + 1]) if "--rounds" in arguments else usual
