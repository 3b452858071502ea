"""Eighty rules with their traces kept as bytes: the program against a function written by hand.

Run by hand: ``python tests/benchmarks/kept.py``. Both evaluate the same rules on the same things,
say for each row its rule, item, outcome, what is missing and its operands as JSON data, write those
as bytes, and hash the bytes. The hand writes with ``json`` as it comes; the program gives flags as
well and writes canonical bytes (numbers as ECMAScript spells them, text in NFC, keys in order),
which is checked to say the same. Apart from that the findings of a trail are timed: they hold three
times as much (names, reasons, data keys of every operand, which truths decided), against the rows
by hand and the encoding of those same findings alone.
"""

from __future__ import annotations

import hashlib
import json
import math
import random
import re
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import SimpleNamespace
from typing import Any

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from benchmarks.rules import least_times, program
from benchmarks.rules_by_hand import by_hand
from benchmarks.rules_material import RULES, record
from benchmarks.side_by_side import rounds_of
from garboard.assessment.findings import findings_of
from garboard.expressions import Program
from garboard.trail import canonical_bytes, causes_as_data, value_as_data
from garboard.trail.digest import digest_of_bytes
from garboard.values import Bounds, Unknown

Things = Mapping[str, Sequence[Any]]


def hand_value(value: Any) -> Any:
    """A value as JSON data, as one writes it for this purpose alone."""
    kind = value.__class__
    if kind is float or kind is str or kind is bool or kind is int:
        return value
    if kind is Unknown:
        return {"unknown": hand_causes(value)}
    if kind is Bounds:
        low, high = (None if math.isinf(end) else end for end in (value.lo, value.hi))
        return {"lo": low, "hi": high, "nominal": value.nominal,
                "basis": list(value.basis), "causes": hand_causes(value)}
    if kind is tuple:
        return [hand_value(each) for each in value]
    return value["id"] if isinstance(value, dict) else value


def hand_causes(value: Unknown | Bounds) -> list[dict[str, str]]:
    return [{"reason": each.reason, "path": each.path, "detail": each.detail}
            for each in value.causes]


def kept_by_hand(things: Things) -> bytes:
    """The rows by hand as bytes."""
    rows = [{"rule": rule, "item": item, "outcome": outcome,
             "missing": [] if unknown is None else hand_causes(unknown),
             "operands": [hand_value(each) for each in operands]}
            for rule, item, outcome, unknown, operands in by_hand(things)]
    return json.dumps(rows, ensure_ascii=False, separators=(",", ":")).encode()


def kept(compiled: Program, things: Things) -> bytes:
    """The rows of the program as canonical bytes."""
    return canonical_bytes([
        {"rule": rule, "item": item, "outcome": outcome,
         "missing": [] if unknown is None else causes_as_data(unknown),
         "operands": [_value(each) for each in operands], "flags": list(flags)}
        for rule, item, outcome, unknown, operands, flags in compiled.run(things)])


def _value(value: object) -> Any:
    if isinstance(value, dict):
        return value["id"]
    if isinstance(value, tuple):
        return [_value(each) for each in value]
    return value_as_data(value)


def as_findings(compiled: Program, things: Things) -> Callable[[], list[dict[str, Any]]]:
    """The findings of a trail, made of the program's rows as an assessment makes them."""
    rules = [SimpleNamespace(id=f"rule-{number}", about=about, covers=None)
             for number, (about, _, _) in enumerate(RULES)]
    checked: Any = SimpleNamespace(pack=SimpleNamespace(name="eighty", retired=(), rules=rules),
                                   program=compiled)
    figures: Any = SimpleNamespace(
        items={item["id"]: item for listed in things.values() for item in listed},
        roots={name: things[name][0] for name in ("record", "vessel")})
    return lambda: findings_of(checked, figures, True, compiled.run(things))


def check(mine: bytes, other: bytes) -> None:
    """Both say the same, in whatever order and spelling."""
    if _rows(mine) != _rows(other):
        raise SystemExit("the two do not say the same")


def _rows(kept_as: bytes) -> list[tuple[Any, ...]]:
    return sorted((row["rule"], row["item"], row["outcome"], _spelled(row["missing"]),
                   _spelled(row["operands"])) for row in json.loads(kept_as))


def _spelled(data: Any) -> str:
    """The data with whole numbers spelled in one way."""
    return re.sub(r"\b(\d+)\.0\b", r"\1", json.dumps(data, sort_keys=True))


def main() -> None:
    compiled = program()
    for missing in (0.0, 0.05):
        things = record(random.Random(7), missing)
        check(kept(compiled, things), kept_by_hand(things))
        findings = as_findings(compiled, things)
        alike = findings()
        hand, ours, whole, hand_whole = least_times([
            lambda t=things: hashlib.sha256(kept_by_hand(t)).hexdigest(),
            lambda t=things: digest_of_bytes(kept(compiled, t)),
            lambda f=findings: digest_of_bytes(canonical_bytes(f())),
            lambda t=things, a=alike: hashlib.sha256(_encoded_by_hand(t, a)).hexdigest()],
            rounds=rounds_of(sys.argv, 60))
        size, more = len(kept(compiled, things)), len(canonical_bytes(alike))
        print(f"{missing:4.0%} missing: {size / 1e3:.0f} kB, by hand {hand:.0f} µs, the program "
              f"{ours:.0f} µs, ratio {ours / hand:.2f}; as findings of a trail {more / 1e3:.0f} kB "
              f"{whole:.0f} µs, {whole / hand_whole:.2f} times the encoding of the same alone")


def _encoded_by_hand(things: Things, findings: list[dict[str, Any]]) -> bytes:
    """The rows by hand, and the findings of the program encoded: only made by hand for free."""
    by_hand(things)
    return json.dumps(findings, ensure_ascii=False, separators=(",", ":")).encode()


if __name__ == "__main__":
    main()
