"""Comparisons, and truths that more is known of than of their parts."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from operator import eq, ge, gt, le, lt, ne
from typing import Any, Final

from garboard.values import Truth, Unknown, member_of, negated, rounded_value


def absent(truth: object) -> Truth:
    """Kleene's not, for truth values only."""
    if truth is True or truth is False or isinstance(truth, Unknown):
        return negated(truth)
    raise TypeError(f"{truth!r} is neither true nor false")


def compared(left: Any, operator: str, right: Any) -> Truth:
    """One comparison of two values; numbers with the 12 significant digits that figures have.

    What is compared is rounded, the values themselves are not. Whole numbers are compared as such.
    """
    if (left.__class__ is not int or right.__class__ is not int) and operator in _ORDER:
        left, right = rounded_value(left), rounded_value(right)
    verdict: Truth = _COMPARE[operator](left, right)
    return verdict


def settled(operators: Sequence[str], values: Sequence[Any], verdict: Truth) -> Truth:
    """A chain that is not known yet may still be false because its outer parts contradict it.

    ``a < x < b`` holds for no ``x`` when ``a >= b``.
    """
    for first in range(len(operators) - 1):
        sign = operators[first]
        for last in range(first + 1, len(operators)):
            joined = _JOINED.get((sign, operators[last]))
            if joined is None:
                break
            sign = joined
            verdict = verdict & compared(values[first], sign, values[last + 1])
    return verdict


_COMPARE: Final[Mapping[str, Callable[[Any, Any], Any]]] = {
    "<": lt, "<=": le, ">": gt, ">=": ge, "==": eq, "!=": ne,
    "in": member_of, "not in": lambda a, b: absent(member_of(a, b)),
}
_ORDER: Final = frozenset(("<", "<=", ">", ">=", "==", "!="))
_JOINED: Final = {
    (one, other): "==" if one == other == "==" else weak if strict not in (one, other) else strict
    for strict, weak in (("<", "<="), (">", ">="))
    for one in (strict, weak, "==") for other in (strict, weak, "==")
}
