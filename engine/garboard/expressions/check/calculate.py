"""Types and dimensions of sums, differences, products and quotients."""

from __future__ import annotations

from garboard.expressions.check.scope import Scope
from garboard.expressions.measure import DIFFERENCE, Measure, measure_of
from garboard.expressions.tree import Expression, Node
from garboard.expressions.types import COUNT, UNCLEAR, Type, number


def combined(left: Type, operator: str, right: Type, spot: Node, scope: Scope) -> Type:
    """The type of ``left operator right``; complaints are put at ``spot``, the right operand."""
    if left.is_unclear or right.is_unclear:
        return UNCLEAR
    if not (left.is_number and right.is_number):
        wrong = right if left.is_number else left
        scope.complain("expression-type", spot, wrong.described(),
                       f"numbers on both sides of {operator!r}")
        return UNCLEAR
    if operator in ("*", "/"):
        return _scaled(left, operator, right, spot, scope)
    return _added(left, operator, right, spot, scope)


def _scaled(left: Type, operator: str, right: Type, spot: Node, scope: Scope) -> Type:
    if left.measure.zero_point or right.measure.zero_point:
        scope.complain("expression-temperature", spot, f"a temperature beside {operator!r}",
                       "a difference of temperatures", "degrees Celsius do not count from zero")
        return UNCLEAR
    if operator == "*" and left.kind == right.kind == "count":
        return COUNT
    measure = left.measure * right.measure if operator == "*" else left.measure / right.measure
    return number(measure, share="ratio" in (left.dimension, right.dimension))


def _added(left: Type, operator: str, right: Type, spot: Node, scope: Scope) -> Type:
    one, other = left.measure, right.measure
    if one.zero_point and other.zero_point:
        if operator == "-":
            return number(measure_of(DIFFERENCE))
        scope.complain("expression-temperature", spot, "the sum of two temperatures",
                       "a temperature and a difference of temperatures")
        return UNCLEAR
    difference = measure_of(DIFFERENCE)
    if one.zero_point and other.agrees(difference):
        return left
    if other.zero_point and one.agrees(difference) and operator == "+":
        return right
    if not alike(left, right, spot, scope):
        return UNCLEAR
    if left.kind == right.kind == "count":
        return COUNT
    return number(one, share="ratio" in (left.dimension, right.dimension))


def alike(left: Type, right: Type, spot: Node, scope: Scope) -> bool:
    """Whether two numbers can be held against each other or added; complains when not."""
    one, other = left.measure, right.measure
    if one.agrees(other):
        return True
    found = f"{left.described()} beside {right.described()}"
    if one.same_kind(other):
        scope.complain("expression-scale", spot, found, "figures in units of the same size",
                       f"{one.unit} and {other.unit} measure the same, but differ in size"
                       f"{_ratio(one, other)}")
        return False
    bare = one.is_bare or other.is_bare
    scope.complain("expression-dimension", spot, found, "figures of the same dimension",
                   "a figure with a unit stands in 'limits', and its name here" if bare else "")
    return False


def _ratio(one: Measure, other: Measure) -> str:
    factor = one.scale / other.scale
    if factor.denominator == 1:
        return f": 1 {one.unit} is {factor.numerator} {other.unit}"
    if factor.numerator == 1:
        return f": 1 {other.unit} is {factor.denominator} {one.unit}"
    return ""


def negated(of: Type, spot: Expression, scope: Scope) -> Type:
    """The type of a number with its sign turned."""
    if of.is_unclear:
        return UNCLEAR
    if not of.is_number:
        scope.complain("expression-type", spot, of.described(), "a number after '-'")
        return UNCLEAR
    if of.measure.zero_point:
        scope.complain("expression-temperature", spot, "a temperature with its sign turned",
                       "a difference of temperatures")
        return UNCLEAR
    return of
