"""Eighty rules on sixty things: the compiled program against a function written by hand.

Run by hand: ``python tests/benchmarks/rules.py``. Both give the same outcomes and operands,
which is
checked before anything is measured; the program gives flags as well. Times are the least of many
runs that alternate, so a busy machine slows both alike; what counts is the ratio.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.rules_by_hand import by_hand
from benchmarks.rules_material import LIMITS, RULES, VOCABULARY, record
from garboard.expressions import Program, RuleSource, compile_rules, read_expression


def program() -> Program:
    """The rules of the material, compiled."""
    infos = {name: info for name, (info, _) in LIMITS.items()}
    values = {name: value for name, (_, value) in LIMITS.items()}
    return compile_rules([
        RuleSource(f"rule-{number}", read_expression(holds, VOCABULARY, about, infos),
                   None if applies is None else read_expression(applies, VOCABULARY, about, infos),
                   values)
        for number, (about, applies, holds) in enumerate(RULES)])


def same(mine: list[Any], other: list[Any]) -> None:
    """Both give the same rows; unknowns are compared by their reasons and paths."""
    one = {(row[0], row[1]): (row[2], _plain(row[3]), tuple(map(_plain, row[4]))) for row in mine}
    two = {(row[0], row[1]): (row[2], _plain(row[3]), tuple(map(_plain, row[4]))) for row in other}
    differing = [key for key in one.keys() | two.keys() if one.get(key) != two.get(key)]
    if differing or len(mine) != len(other):
        key = min(differing, default=None)
        raise SystemExit(f"the two differ at {key}: {one.get(key)} and {two.get(key)}")


def _plain(value: Any) -> Any:
    return value.causes if hasattr(value, "causes") else value


def least_times(works: list[Callable[[], Any]], rounds: int = 400) -> list[float]:
    """The least time of each, in microseconds, taken in turn."""
    best = [float("inf")] * len(works)
    for _ in range(rounds):
        for place, work in enumerate(works):
            start = time.perf_counter()
            work()
            best[place] = min(best[place], time.perf_counter() - start)
    return [seconds * 1e6 for seconds in best]


def main() -> None:
    start = time.perf_counter()
    compiled = program()
    took = (time.perf_counter() - start) * 1e3
    print(f"{len(RULES)} rules read, checked and compiled in {took:.1f} ms")
    for missing in (0.0, 0.05):
        things = record(random.Random(7), missing)
        rows = compiled.run(things)
        same(rows, by_hand(things))
        hand, ours = least_times([lambda t=things: by_hand(t), lambda t=things: compiled.run(t)])
        unknown = sum(row[2] == "not assessed" for row in rows)
        print(f"{missing:4.0%} missing: {len(rows)} rows ({unknown} not assessed), by hand "
              f"{hand:.0f} µs, compiled {ours:.0f} µs, ratio {ours / hand:.2f}")


if __name__ == "__main__":
    main()
