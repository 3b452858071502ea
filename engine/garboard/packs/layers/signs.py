"""Which figures of an expression are certainly not negative."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.expressions import tree
from garboard.packs.limit import Limit

#: What is recorded and computed in these dimensions is a magnitude, never below zero.
MAGNITUDES: Final = ("area", "capacitance", "charge", "current", "energy", "force", "inductance",
                     "length", "let_through", "mass", "power", "ratio", "resistance", "time",
                     "torque")
_KEEPING: Final = ("abs", "sqrt", "max", "min", "sum", "count")


def limit_named(node: tree.Expression) -> str | None:
    """The name a node would have as a limit, in an expression that was checked or only read."""
    if isinstance(node, tree.LimitName):
        return node.name
    if isinstance(node, tree.Path) and len(node.words) == 1:
        return node.words[0].text
    return None


def not_negative(node: tree.Expression, limits: Mapping[str, Limit]) -> bool:
    """Whether a figure is zero or more whatever the record says; ``False``: that is not certain."""
    match node:
        case tree.Number():
            return node.value >= 0
        case tree.LimitName() | tree.Path():
            limit = limits.get(limit_named(node) or "")
            return limit is not None and not isinstance(limit.amount, tuple) and limit.amount >= 0
        case tree.Read():
            return node.type is not None and (
                node.type.kind == "count" or node.type.dimension in MAGNITUDES)
        case tree.Arithmetic():
            return "-" not in node.operators and all(not_negative(each, limits)
                                                     for each in node.operands)
        case tree.Call():
            return node.function.text in _KEEPING and (
                node.function.text in ("abs", "sqrt", "count")
                or all(not_negative(each, limits) for each in node.arguments))
        case tree.Gathering():
            return node.function.text == "count" or (
                node.function.text in _KEEPING and not_negative(node.element, limits))
        case tree.Conditional():
            return not_negative(node.if_true, limits) and not_negative(node.if_false, limits)
        case _:
            return False
