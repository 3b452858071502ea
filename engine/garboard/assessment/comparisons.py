"""The comparisons of a finding: what was asked for, whether it holds, whether the outcome rests on it.
"""

from __future__ import annotations

import operator
from collections.abc import Callable
from typing import Any, Final

from garboard.expressions import FAILED, NOT_APPLICABLE, PASSED, Row, RuleTrace
from garboard.values import Truth, Unknown, member_of, negated

_VERDICTS: Final[dict[str, Callable[[Any, Any], Truth]]] = {
    "<": operator.lt, "<=": operator.le, ">": operator.gt, ">=": operator.ge,
    "==": operator.eq, "!=": operator.ne, "in": member_of,
    "not in": lambda thing, several: negated(member_of(thing, several)),
}


def comparisons_of(trace: RuleTrace, row: Row) -> list[dict[str, Any]]:
    """The comparisons of the requirement whose sides the row keeps."""
    _, item, outcome, _, operands, _ = row
    if item is None or outcome == NOT_APPLICABLE:
        return []
    found = []
    for atom in trace.atoms:
        if atom.operator is None or atom.right is None or atom.right >= len(operands):
            continue
        if trace.operands[atom.left].part == "requirement":
            holds = _holds(atom.operator, operands[atom.left], operands[atom.right])
            found.append({"left": atom.left, "relation": atom.operator, "right": atom.right,
                          "holds": holds, "decides": _decides(outcome, holds)})
    return found


def _holds(relation: str, left: object, right: object) -> bool | None:
    verdict = _VERDICTS[relation](left, right)
    return None if isinstance(verdict, Unknown) else bool(verdict)


def _decides(outcome: str, holds: bool | None) -> bool:
    return holds is {PASSED: True, FAILED: False}.get(outcome)
