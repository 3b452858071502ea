"""The working of a rule as lines of text."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from garboard.expressions import Compared, Step, Working, reason_of
from garboard.packs import Rule
from garboard.values import Unknown
from garboard.values.units import System, format_value


def working_lines(rule: Rule, work: Working, system: System = "metric") -> Iterator[str]:
    """Condition and requirement with values put in, every part with its value, what decides."""
    yield f"{rule.id}: {rule.title}"
    for label, text, filled, part in (("applies when", rule.applies_when, work.condition,
                                       "condition"),
                                      ("must hold", rule.must_hold, work.requirement,
                                       "requirement")):
        if text is None:
            continue
        yield ""
        yield f"{label}: {text}"
        if filled is None:
            yield "  not looked at"
            continue
        yield f"  that is: {filled}"
        seen = dict.fromkeys(_step(step, system) for step in work.steps
                             if step.part == part and step.kind in ("number", "count", "text",
                                                                    "date", "truth"))
        yield from (f"    {line}" for line in seen)
    if work.compared:
        yield ""
        yield "comparisons ('*' decides):"
        for each in work.compared:
            yield from _compared(each, system, "  ")
    row = work.row
    reason = reason_of(row)
    yield ""
    yield f"outcome: {row[2]}" + ("" if reason is None else f", {reason}")
    if row[3] is not None:
        for cause in row[3].causes:
            yield f"  missing: {' '.join(part for part in (cause.path, cause.detail) if part)}"
    for flag in row[5]:
        yield f"  {flag}"


def _step(step: Step, system: System) -> str:
    return f"{step.text} = {_value(step.value, step.dimension, system)}"


def _value(value: Any, dimension: str | None, system: System) -> str:
    if isinstance(value, Unknown):
        return f"not known ({value.reason})"
    return format_value(value, dimension, system)


def _compared(each: Compared, system: System, indent: str) -> Iterator[str]:
    mark = "*" if each.decides else " "
    truth = "not known" if isinstance(each.truth, Unknown) else str(each.truth).lower()
    line = f"{indent}{mark} {each.text}: {truth}"
    if each.distance is not None and each.operator in ("<", "<=", ">", ">="):
        of = "temperature_difference" if each.dimension == "temperature" else each.dimension
        line += f", apart by {format_value(each.distance, of, system)}"
    yield line
    for turn in each.turns:
        yield f"{indent}    {turn.item}: {_value(turn.value, each.dimension, system)}"
