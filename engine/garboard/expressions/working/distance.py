"""How far the two sides of a comparison lie apart."""

from __future__ import annotations

from typing import Any

from garboard.expressions.measure import TEMPERATURE
from garboard.expressions.tree import Expression, LimitName, Negative, Number
from garboard.values import Bounds, Unknown, quotient, rounded_value
from garboard.values import Number as Figure


def distance(left: Any, operator: str, right: Any) -> Figure | None:
    """The distance, positive where the comparison holds; ``None`` where a side is no number."""
    if not (_is_number(left) and _is_number(right)):
        return None
    left, right = rounded_value(left), rounded_value(right)
    apart = left - right if operator in (">", ">=") else right - left
    if operator == "==":
        apart = -abs(apart)
    elif operator == "!=":
        apart = abs(apart)
    return _known(apart)


def share(apart: Figure | None, limit: Any, dimension: str | None) -> Figure | None:
    """The distance as a share of the limit's size; degrees Celsius have no size."""
    if apart is None or dimension == TEMPERATURE or not _is_number(limit):
        return None
    return _known(quotient(apart, abs(limit)))


def _known(figure: Any) -> Figure | None:
    """A figure with the digits figures have; ``None`` where it is not known."""
    if isinstance(figure, Unknown):
        return None
    rounded: Figure = rounded_value(figure)  # type: ignore[assignment]
    return rounded


def is_constant(node: Expression) -> bool:
    """Whether a side is a limit or written out."""
    return isinstance(node, (LimitName, Number)) or (
        isinstance(node, Negative) and is_constant(node.operand))


def _is_number(value: object) -> bool:
    return isinstance(value, (float, int, Bounds)) and not isinstance(value, bool)
