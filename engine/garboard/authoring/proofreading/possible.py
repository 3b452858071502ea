"""Which outcomes of rules are possible, by trying every combination that makes a difference."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from math import prod
from typing import Any, Final

from garboard.authoring.proofreading.choices import (
    OTHER,
    Choices,
    Collector,
    calculated,
    called,
    fixed,
    order_key,
    pairs,
    texts_of,
)
from garboard.authoring.proofreading.key import key_of
from garboard.authoring.proofreading.scope import Scope
from garboard.authoring.proofreading.span import HOLDS, Order, Span, point
from garboard.expressions.tree import (
    Arithmetic,
    Call,
    Comparison,
    Conditional,
    Expression,
    Listing,
    Logic,
    Negative,
    Not,
    Truth,
)

#: How many combinations are tried at most.
MOST: Final = 8_000


@dataclass(frozen=True, slots=True)
class Formula:
    """Condition (if any) and requirement of a rule, with its names."""

    scope: Scope
    condition: Expression | None
    requirement: Expression

    def choices(self, into: Choices) -> None:
        collector = Collector(self.scope, into)
        for part in (self.condition, self.requirement):
            if part is not None:
                collector.truth(part)

    def outcome(self, given: Mapping[Hashable, Any]) -> bool | None:
        """Whether the rule passes, ``None`` where it does not apply; _Impossible."""
        here = _Here(self.scope, given)
        if self.condition is not None and not here.truth(self.condition):
            return None
        return here.truth(self.requirement)


def possible(rules: Sequence[Formula]) -> set[tuple[bool | None, ...]] | None:
    """The outcomes that rules may have together for one item; ``None``: too many to be tried."""
    choices = Choices()
    for rule in rules:
        rule.choices(choices)
    domains = choices.domains()
    if prod(map(len, domains.values())) > MOST:
        return None
    return set(_outcomes(rules, domains))


def shared(one: Formula, other: Formula) -> bool:
    """Whether the requirements of two rules hang on something in common."""
    found = []
    for rule in (one, other):
        choices = Choices()
        Collector(rule.scope, choices).truth(rule.requirement)
        found.append(set(choices.domains()))
    return bool(found[0] & found[1])


def _outcomes(rules: Sequence[Formula],
              domains: Mapping[Hashable, tuple[Any, ...]]) -> Iterator[tuple[bool | None, ...]]:
    for values in product(*domains.values()):
        given = dict(zip(domains, values, strict=True))
        try:
            yield tuple(rule.outcome(given) for rule in rules)
        except _ImpossibleError:
            continue


class _ImpossibleError(Exception):
    """A combination that cannot be: an order that the numbers do not allow."""


@dataclass(frozen=True, slots=True)
class _Here:
    """One combination."""

    scope: Scope
    given: Mapping[Hashable, Any]

    def key(self, node: Expression) -> Hashable:
        return key_of(node, self.scope.limits)

    def truth(self, node: Expression) -> bool:
        match node:
            case Truth():
                return node.value
            case Not():
                return not self.truth(node.operand)
            case Logic():
                parts = [self.truth(part) for part in node.parts]
                return all(parts) if node.word == "and" else any(parts)
            case Conditional():
                return self.truth(node.if_true if self.truth(node.condition) else node.if_false)
            case Comparison():
                holds = [self._pair(*each) for each in pairs(node)]
                return all(holds)
            case _:
                return bool(self.given[self.key(node)])

    def _pair(self, one: Expression, operator: str, other: Expression) -> bool:
        kind = "" if one.type is None else one.type.kind
        if kind == "truth":
            return (self.truth(one) == self.truth(other)) == (operator == "==")
        if kind not in ("number", "count", "date"):
            return self._texts(one, operator, other)
        if isinstance(other, Listing):
            orders = [self._order(one, item) for item in other.items]
            return ("equal" in orders) == (operator == "in")
        return self._order(one, other) in HOLDS[operator]

    def _order(self, one: Expression, other: Expression) -> Order:
        """How two sides stand to each other in this combination."""
        if self.key(one) == self.key(other):
            return "equal"
        possible_orders = self.number(one).orders(self.number(other))
        if len(possible_orders) == 1:
            return next(iter(possible_orders))
        key = order_key(self.key(one), self.key(other))
        order: Order = self.given[key]
        if order != "equal" and key[1] != self.key(one):
            order = "less" if order == "more" else "more"
        if order not in possible_orders:
            raise _ImpossibleError
        return order

    def _texts(self, one: Expression, operator: str, other: Expression) -> bool:
        named = texts_of(other, self.scope)
        if named is None and texts_of(one, self.scope) is not None:
            return self._texts(other, operator, one)
        if named is None:
            order: Order = self.given[order_key(self.key(one), self.key(other))]
            return (order == "equal") == (operator == "==")
        texts = texts_of(one, self.scope)
        value: str = self.given[self.key(one)] if texts is None else texts[0]
        return (value != OTHER and value in named) == (operator in ("==", "in"))

    def number(self, node: Expression) -> Span:
        at = fixed(node, self.scope)
        if at is not None:
            return point(at)
        match node:
            case Negative():
                return -self.number(node.operand)
            case Arithmetic():
                return calculated(node, [self.number(each) for each in node.operands])
            case Conditional():
                return self.number(node.if_true if self.truth(node.condition) else node.if_false)
            case Call() if node.function.text in ("abs", "sqrt", "min", "max"):
                return called(node, [self.number(each) for each in node.arguments])
            case _:
                span: Span = self.given[self.key(node)]
                return span
