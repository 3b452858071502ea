"""Which way a limit works: whether raising it makes a rule stricter, found in the rule itself.

A figure or truth *moves* with a limit when it grows as the limit grows (``UP``), against it when it
shrinks (``DOWN``). It may do both, or neither. Where that hangs on the sign of a factor that is not
certain, both are assumed; so a change is never taken for stricter than it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from garboard.expressions import tree
from garboard.packs.layers.signs import limit_named, not_negative
from garboard.packs.limit import Limit

UP: Final = 1
DOWN: Final = -1
Moves = frozenset[int]

NEITHER: Final[Moves] = frozenset()
WITH: Final[Moves] = frozenset({UP})
BOTH: Final[Moves] = frozenset({UP, DOWN})


@dataclass(frozen=True, slots=True)
class Movement:
    """How the parts of an expression move with one limit; ``limits`` say which are not negative."""

    limit: str
    limits: Mapping[str, Limit]

    def of(self, node: tree.Expression) -> Moves:
        """How a figure or a truth moves when the limit grows; false to true is up."""
        match node:
            case tree.LimitName() | tree.Path():
                return WITH if limit_named(node) == self.limit else NEITHER
            case tree.Not() | tree.Negative():
                return against(self.of(node.operand))
            case tree.Logic():
                return self._together(node.parts)
            case tree.Comparison():
                return self._comparison(node)
            case tree.Arithmetic():
                return self._arithmetic(node)
            case tree.Conditional():
                whether = BOTH if self.of(node.condition) else NEITHER
                return whether | self.of(node.if_true) | self.of(node.if_false)
            case tree.Call():
                inside = self._together(node.arguments)
                return BOTH if inside and node.function.text == "abs" else inside
            case tree.Gathering():
                return self._gathering(node)
            case _:
                return NEITHER

    def _together(self, nodes: Iterable[tree.Expression]) -> Moves:
        return NEITHER.union(*map(self.of, nodes))

    def _comparison(self, node: tree.Comparison) -> Moves:
        moves = NEITHER
        for left, sign, right in zip(node.operands, node.operators, node.operands[1:],
                                     strict=False):
            before, after = self.of(left), self.of(right)
            if sign in ("<", "<="):
                moves |= against(before) | after
            elif sign in (">", ">="):
                moves |= before | against(after)
            elif sign == "in" and not before:
                moves |= after
            elif sign == "not in" and not before:
                moves |= against(after)
            elif before or after:
                return BOTH
        return moves

    def _arithmetic(self, node: tree.Arithmetic) -> Moves:
        signs = ("+", *node.operators) if node.operators[0] in "+-" else ("*", *node.operators)
        moves = NEITHER
        for place, (sign, operand) in enumerate(zip(signs, node.operands, strict=True)):
            own = self.of(operand)
            if sign in "*/" and own and not all(
                    not_negative(other, self.limits)
                    for other in (*node.operands[:place], *node.operands[place + 1:],
                                  *((operand,) if sign == "/" else ()))):
                own = BOTH
            moves |= against(own) if sign in "-/" else own
        return moves

    def _gathering(self, node: tree.Gathering) -> Moves:
        """More of them is more: but for ``all`` and ``min`` it is less, and a sum may go down."""
        element = NEITHER if node.function.text == "count" else self.of(node.element)
        chosen = NEITHER if node.condition is None else self.of(node.condition)
        if node.function.text in ("all", "min"):
            chosen = against(chosen)
        if node.function.text == "sum" and chosen and not not_negative(node.element, self.limits):
            chosen = BOTH
        return element | chosen


def against(moves: Moves) -> Moves:
    """The opposite movement."""
    return frozenset(-each for each in moves)


def strictness(limit: str, requirement: tree.Expression, condition: tree.Expression | None,
               limits: Mapping[str, Limit]) -> Moves:
    """``UP`` where raising the limit makes a rule stricter, ``DOWN`` where lowering it does.

    A requirement that holds more easily is less strict; a condition that holds more easily brings
    in more items, which is stricter.
    """
    movement = Movement(limit, limits)
    applies = NEITHER if condition is None else movement.of(condition)
    return against(movement.of(requirement)) | applies
