"""The statements of a finding: which hold for the item, and which of them the outcome rests on."""

from __future__ import annotations

import operator
from collections.abc import Callable
from typing import Any, Final

from garboard.expressions import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Row, RuleTrace
from garboard.values import Truth, Unknown, member_of, negated

_VERDICTS: Final[dict[str, Callable[[Any, Any], Truth]]] = {
    "<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge,
    "==": operator.eq, "!=": operator.ne, "in": member_of,
    "not in": lambda thing, several: negated(member_of(thing, several)),
}
_DECIDING: Final = {PASSED: True, FAILED: False, NOT_ASSESSED: None}


def holding(trace: RuleTrace, row: Row) -> list[bool | None]:
    """For each statement of the rule whose operands the row keeps: whether it holds."""
    operands = row[4]
    found: list[bool | None] = []
    for atom in trace.atoms:
        last = atom.left if atom.right is None else atom.right
        if last >= len(operands):
            break
        truth = operands[atom.left]
        if atom.operator is not None and atom.right is not None:
            truth = _VERDICTS[atom.operator](operands[atom.left], operands[atom.right])
        found.append(None if isinstance(truth, Unknown) else bool(truth))
    return found


def deciding(trace: RuleTrace, row: Row, holds: list[bool | None]) -> list[int]:
    """The statements of the requirement that the outcome rests on, by their place in the trace."""
    if row[2] == NOT_APPLICABLE:
        return []
    return [place for place, each in enumerate(holds)
            if trace.operands[trace.atoms[place].left].part == "requirement"
            and each is _DECIDING[row[2]]]
