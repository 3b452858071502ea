"""What the truth of a rule hangs on: each name with the few values that make a difference.

A number that is compared with limits is cut at them; of a text only the choices matter; of two
sides that are both not fixed only their order. Every combination stands for a possible item, as far
as can be told from the rule alone.
"""

from __future__ import annotations

import math
from collections.abc import Hashable
from dataclasses import dataclass, field
from typing import Any

from garboard.authoring.proofreading.key import key_of
from garboard.authoring.proofreading.scope import Scope
from garboard.authoring.proofreading.span import (
    ORDERS,
    Span,
    cut,
    greatest_of,
    least_of,
    point,
)
from garboard.expressions.tree import (
    Arithmetic,
    Call,
    Comparison,
    Conditional,
    Day,
    Expression,
    Gathering,
    LimitName,
    Listing,
    Logic,
    Negative,
    Not,
    Number,
    Read,
    Text,
    Truth,
)
from garboard.values import rounded

#: Stands for every text but those that are named.
OTHER = "\0"


@dataclass
class Choices:
    """The choices of one or more rules, by key.

    ``spans`` are numbers and where they are cut; ``texts`` and ``truths`` what each may be;
    ``orders`` pairs of sides of which only the order counts.
    """

    spans: dict[Hashable, tuple[Span, set[float], bool]] = field(default_factory=dict)
    texts: dict[Hashable, set[str]] = field(default_factory=dict)
    truths: dict[Hashable, frozenset[bool]] = field(default_factory=dict)
    orders: dict[Hashable, tuple[str, ...]] = field(default_factory=dict)

    def domains(self) -> dict[Hashable, tuple[Any, ...]]:
        """Every choice with the values to be tried."""
        found: dict[Hashable, tuple[Any, ...]] = {}
        for key, (span, at, whole) in self.spans.items():
            cells = cut(span, at)
            found[key] = tuple(cell for cell in cells if not whole or cell.holds_a_whole_number())
        found |= {key: tuple(sorted(texts)) for key, texts in self.texts.items()}
        found |= {key: tuple(sorted(truths)) for key, truths in self.truths.items()}
        return found | self.orders


@dataclass
class Collector:
    """Walks expressions and collects their choices."""

    scope: Scope
    choices: Choices

    def key(self, node: Expression) -> Hashable:
        return key_of(node, self.scope.limits)

    def truth(self, node: Expression) -> None:
        """Collect from something that is true or false."""
        match node:
            case Not():
                self.truth(node.operand)
            case Logic():
                for part in node.parts:
                    self.truth(part)
            case Conditional():
                for part in (node.condition, node.if_true, node.if_false):
                    self.truth(part)
            case Comparison():
                for one, operator, other in pairs(node):
                    self._pair(one, operator, other)
            case Gathering():
                self.choices.truths[self.key(node)] = _of_loop(node, self.scope)
            case Truth():
                pass
            case _:
                self.choices.truths[self.key(node)] = frozenset((True, False))

    def _pair(self, one: Expression, operator: str, other: Expression) -> None:
        kind = "" if one.type is None else one.type.kind
        if kind == "truth":
            self.truth(one)
            self.truth(other)
        elif kind in ("number", "count", "date"):
            self._numbers(one, other)
        else:
            self._texts(one, operator, other)

    def _numbers(self, one: Expression, other: Expression) -> None:
        self.number(one)
        for far in other.items if isinstance(other, Listing) else (other,):
            self.number(far)
            self._order(one, far)

    def _order(self, one: Expression, other: Expression) -> None:
        for side, far in ((one, other), (other, one)):
            at = fixed(far, self.scope)
            if at is not None and self.key(side) in self.choices.spans:
                self.choices.spans[self.key(side)][1].add(at)
                return
        if fixed(one, self.scope) is None or fixed(other, self.scope) is None:
            self.choices.orders[order_key(self.key(one), self.key(other))] = ORDERS

    def number(self, node: Expression) -> None:
        """Collect from something that is a number or a day."""
        match node:
            case Negative():
                self.number(node.operand)
            case Arithmetic():
                for part in node.operands:
                    self.number(part)
            case Conditional():
                self.truth(node.condition)
                self.number(node.if_true)
                self.number(node.if_false)
            case Call() if node.function.text in ("abs", "sqrt", "min", "max"):
                for part in node.arguments:
                    self.number(part)
            case Number() | LimitName() | Day():
                pass
            case _:
                whole = node.type is not None and node.type.kind in ("count", "date")
                self.choices.spans.setdefault(self.key(node), (reach(node, self.scope), set(),
                                                               whole))

    def _texts(self, one: Expression, operator: str, other: Expression) -> None:
        named = texts_of(other, self.scope)
        if named is None and texts_of(one, self.scope) is not None:
            self._texts(other, operator, one)
        elif named is None:
            self.choices.orders[order_key(self.key(one), self.key(other))] = ("equal", "more")
        elif texts_of(one, self.scope) is None:
            possible = one.type.choices if one.type is not None else None
            self.choices.texts.setdefault(
                self.key(one), {*named, OTHER} if possible is None else set(possible)).update(
                    named if possible is None else ())


def pairs(node: Comparison) -> list[tuple[Expression, str, Expression]]:
    """The comparisons of neighbours that a chain consists of."""
    return list(zip(node.operands, node.operators, node.operands[1:], strict=False))


def order_key(one: Hashable, other: Hashable) -> tuple[Hashable, ...]:
    """The key of the order of two sides, whichever stands first."""
    return ("order", *sorted((one, other), key=repr))


def fixed(node: Expression, scope: Scope) -> float | None:
    """The number that a side always is, as it is compared; a day counts as one."""
    number = _fixed(node, scope)
    return None if number is None else rounded(number)


def _fixed(node: Expression, scope: Scope) -> float | None:
    match node:
        case Number():
            return float(node.value)
        case Day():
            return float(node.value.toordinal())
        case LimitName():
            value = scope.limits[node.name]
            return None if isinstance(value, tuple) else float(value)
        case Negative():
            inner = _fixed(node.operand, scope)
            return None if inner is None else -inner
        case Arithmetic():
            return _calculated_once([_fixed(each, scope) for each in node.operands], node.operators)
        case _:
            return None


def _calculated_once(sides: list[float | None], operators: tuple[str, ...]) -> float | None:
    """The result of a calculation with fixed numbers alone."""
    result = sides[0]
    for operator, side in zip(operators, sides[1:], strict=True):
        if result is None or side is None or (operator == "/" and side == 0):
            return None
        result = {"+": result + side, "-": result - side, "*": result * side}.get(
            operator, result / (side or 1.0))
    return result


def texts_of(node: Expression, scope: Scope) -> tuple[str, ...] | None:
    """The texts that a side names."""
    match node:
        case Text():
            return (node.value,)
        case Listing():
            return tuple(str(item.value) for item in node.items)
        case LimitName():
            value = scope.limits[node.name]
            return value if isinstance(value, tuple) else None
        case _:
            return None


def reach(node: Expression, scope: Scope) -> Span:
    """The numbers that something may be, whatever is aboard."""
    at = fixed(node, scope)
    if at is not None:
        return point(at)
    match node:
        case Read():
            return (Span() if node.type is not None and node.type.kind == "date"
                    else scope.span(node))
        case Negative():
            return -reach(node.operand, scope)
        case Arithmetic():
            return calculated(node, [reach(each, scope) for each in node.operands])
        case Conditional():
            return reach(node.if_true, scope).with_(reach(node.if_false, scope))
        case Call():
            return called(node, [reach(each, scope) for each in node.arguments]
                          if node.function.text != "count" else [])
        case Gathering():
            scope.enter(node)
            if node.function.text == "count":
                return Span(0.0)
            inside = reach(node.element, scope)
            if node.function.text == "sum":
                return Span(0.0 if inside.low >= 0 else -math.inf,
                            0.0 if inside.high <= 0 else math.inf)
            return inside
        case _:
            return Span()


def calculated(node: Arithmetic, sides: list[Span]) -> Span:
    """The span of a calculation from those of its sides."""
    result = sides[0]
    for operator, side in zip(node.operators, sides[1:], strict=True):
        result = {"+": result.__add__, "-": result.__sub__, "*": result.__mul__,
                  "/": result.__truediv__}[operator](side).widened()
    return result


def called(node: Call, sides: list[Span]) -> Span:
    """The span of a function from those of its arguments."""
    match node.function.text:
        case "abs":
            return sides[0].size()
        case "sqrt":
            return sides[0].root().widened()
        case "min":
            return least_of(sides)
        case "max":
            return greatest_of(sides)
        case _:
            return Span(0.0)


def _of_loop(node: Gathering, scope: Scope) -> frozenset[bool]:
    """What ``all`` or ``any`` may come to, going by what its element may be."""
    from garboard.authoring.proofreading.possible import Formula, possible

    scope.enter(node)
    inner = Formula(scope, node.condition, node.element)
    found = possible([inner])
    seen = {both[0] for both in found or ()} if found is not None else {True, False}
    wanted = node.function.text == "any"
    return frozenset((not wanted, wanted)) if wanted in seen else frozenset((not wanted,))


