"""Source for what is true or false: logic, comparisons, choices."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.expressions.generate.body import Body
from garboard.expressions.generate.reading import CLASS, Reading
from garboard.expressions.rule import LimitValue
from garboard.expressions.tree import Comparison, Conditional, Expression, LimitName, Number, Read
from garboard.values import greatest_alike, least_alike

#: What has 12 significant digits as it stands: facts and figures, rounded before a rule sees them.
_ROUNDED: Final = (Read,)
#: The square of twice what two numbers that round alike can lie apart, as a share of either.
_APART: Final = 4e-22


def _last(constant: float, operator: str, *, on_the_right: bool) -> float:
    """The number that stands for a constant so that the other side need not be rounded."""
    upwards = (operator in ("<=", ">")) is on_the_right
    return greatest_alike(constant) if upwards else least_alike(constant)


class Joining(Reading):
    """Writes logic and comparisons; ``names`` are those of the parts written so far, by node."""

    def __init__(self, body: Body, limits: Mapping[str, LimitValue]) -> None:
        super().__init__(body)
        self.limits = limits
        self.names: dict[int, str] = {}

    def constant(self, node: Expression) -> float | None:
        """The number that a limit or a number written out is; ``None`` of anything else."""
        value = (self.limits[node.name] if isinstance(node, LimitName) else
                 node.value if isinstance(node, Number) else None)
        return (float(value) if isinstance(value, (int, float)) and not isinstance(value, bool)
                else None)

    # logic ---------------------------------------------------------------------------------------
    def negated(self, truth: str) -> str:
        """Kleene's not."""
        return self.kept(("not", truth), f"False if {truth} is True else True if {truth} is False "
                                         f"else absent({truth})")

    def both(self, one: str, other: str) -> str:
        """Kleene's and."""
        return self.kept(("and", one, other), f"{other} if {one} is True else {one} & {other}")

    def either(self, one: str, other: str) -> str:
        """Kleene's or."""
        return self.kept(("or", one, other), f"{other} if {one} is False else {one} | {other}")

    def chosen(self, condition: str, one: str, other: str) -> str:
        """One of two values; a failure in either counts."""
        general = f"chosen({condition}, {one}, {other})"
        return self.kept(
            ("if", condition, one, other),
            f"{general} if {one}.__class__ is Unknown or {other}.__class__ is Unknown else "
            f"{one} if {condition} is True else {other} if {condition} is False else {general}")

    # comparing -----------------------------------------------------------------------------------
    def compared(self, node: Comparison) -> str:
        """A chain of comparisons, whose sides are written already."""
        pairs = [self._pair(one, operator, other) for one, operator, other
                 in zip(node.operands, node.operators, node.operands[1:], strict=False)]
        result = pairs[0]
        for pair in pairs[1:]:
            result = self.both(result, pair)
        if len(pairs) == 1:
            return result
        sides = [self.names[id(operand)] for operand in node.operands]
        operators = self.body.constants.name(node.operators)
        return self.kept(("chain", result, *sides),
                         f"{result} if {result}.__class__ is bool else "
                         f"settled({operators}, ({', '.join(sides)}), {result})")

    def _pair(self, one: Expression, operator: str, other: Expression) -> str:
        truth = self._plain(one, operator, other)
        if not isinstance(one, Conditional) and not isinstance(other, Conditional):
            return truth
        # what is not known of a choice may be known of both that can be chosen
        return self.kept(("spread", truth), f"{truth} if {truth}.__class__ is bool else "
                                            f"{self._spread(one, operator, other)}")

    def _plain(self, one: Expression, operator: str, other: Expression) -> str:
        left, right = self.names[id(one)], self.names[id(other)]
        if operator not in ("in", "not in"):
            return self.kept((operator, left, right), self._ordered(one, operator, other))
        kind = one.type.kind if one.type else "text"
        among = self.kept(("in", left, right), f"{left} in {right} if {left}.__class__ is "
                                               f"{CLASS[kind]} else member_of({left}, {right})")
        return among if operator == "in" else self.negated(among)

    def _ordered(self, one: Expression, operator: str, other: Expression) -> str:
        """Two values held against each other as ``compared`` does it, only quicker.

        Rounding keeps the order, so a limit becomes the last number that rounds to it, and numbers
        that lie apart need no rounding. What is read of a thing is rounded already.
        """
        left, right = self.names[id(one)], self.names[id(other)]
        plain = f"{left} {operator} {right}"
        if not {"number"} & {each.type.kind for each in (one, other) if each.type is not None}:
            return plain
        general = f"compared({left}, {self.key(operator)}, {right})"
        if isinstance(one, _ROUNDED) and isinstance(other, _ROUNDED):
            return plain
        if operator in ("==", "!="):
            return general
        for constant, sides in ((self.constant(other), (left, None)),
                                (self.constant(one), (None, right))):
            if constant is not None:
                limit = self.body.constants.name(
                    _last(constant, operator, on_the_right=sides[0] is not None))
                return f"{sides[0] or limit} {operator} {sides[1] or limit}"
        # rounding makes numbers equal, and never turns them round
        kept = operator in ("<=", ">=")
        truth, apart = self.body.fresh(), self.body.fresh()
        return (f"{truth} if ({truth} := {plain}) is {kept} or "
                f"({left}.__class__ is float and {right}.__class__ is float and "
                f"({apart} := {left} - {right}) * {apart} > {_APART} * {left} * {left}) or "
                f"{left}.__class__ is Unknown or {right}.__class__ is Unknown else {general}")

    def _spread(self, one: Expression, operator: str, other: Expression) -> str:
        plain = (f"compared({self.names[id(one)]}, {self.key(operator)}, "
                 f"{self.names[id(other)]})")
        if isinstance(one, Conditional):
            choice, ways = one, (self._spread(one.if_true, operator, other),
                                 self._spread(one.if_false, operator, other))
        elif isinstance(other, Conditional):
            choice, ways = other, (self._spread(one, operator, other.if_true),
                                   self._spread(one, operator, other.if_false))
        else:
            return plain
        return (f"(chosen({self.names[id(choice.condition)]}, {', '.join(ways)}) "
                f"if {self.names[id(choice)]}.__class__ in uncertain else {plain})")
