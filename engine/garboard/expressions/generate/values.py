"""Source for the parts of an expression, each computed under a name of its own."""

from __future__ import annotations

from collections.abc import Mapping
from functools import reduce

from garboard.expressions.generate.body import Body
from garboard.expressions.generate.joining import Joining
from garboard.expressions.generate.loops import LOOPS
from garboard.expressions.rule import LimitValue
from garboard.expressions.tree import (
    AnswerName,
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
    children,
)


class Values(Joining):
    """Writes the values of one rule's expressions into a body."""

    def __init__(self, body: Body, limits: Mapping[str, LimitValue]) -> None:
        super().__init__(body, limits)

    def value(self, node: Expression) -> str:
        """The name under which the value of a part is found."""
        name = self._value(node)
        self.names[id(node)] = name
        return name

    def _value(self, node: Expression) -> str:
        match node:
            case Number() | Text() | Day():
                return self.body.constants.name(node.value)
            case Truth():
                return str(node.value)
            case Listing():
                return self.body.constants.name(tuple(item.value for item in node.items))
            case LimitName():
                return self.body.constants.name(self.limits[node.name])
            case AnswerName():
                return self.answer(node)
            case Read():
                return self.read(node)
            case Negative():
                operand = self.value(node.operand)
                return self.kept(("-", operand), f"-{operand}")
            case Not():
                return self.negated(self.value(node.operand))
            case Logic():
                join = self.both if node.word == "and" else self.either
                return reduce(join, self._values(node))
            case Arithmetic():
                return self._arithmetic(node)
            case Comparison():
                self._values(node)
                return self.compared(node)
            case Conditional():
                condition, one, other = self._values(node)
                return self.chosen(condition, one, other)
            case Call():
                return self._call(node)
            case Gathering():
                return self._gathered(node)
            case _:
                raise TypeError(f"{type(node).__name__} is not part of a checked expression")

    def _values(self, node: Expression) -> list[str]:
        return [self.value(part) for part in children(node)]

    # calculating ---------------------------------------------------------------------------------
    def _arithmetic(self, node: Arithmetic) -> str:
        sides = self._values(node)
        result, new = sides[0], False
        for operator, side, operand in zip(node.operators, sides[1:], node.operands[1:],
                                           strict=True):
            source = f"{result} {operator} {side}"
            if operator == "/" and not self._is_nonzero(operand):
                source = (f"{source} if {side}.__class__ is float and {side} "
                          f"else quotient({result}, {side})")
            result, new = self.body.named((operator, result, side), source)
        if new:
            # an overflow leaves a number that minus itself is not nought
            with self.body.block(f"if {result}.__class__ is float and {result} - {result}:"):
                self.body.line(f"{result} = finite({result})")
        return result

    def _is_nonzero(self, node: Expression) -> bool:
        value = (self.limits[node.name] if isinstance(node, LimitName) else
                 node.value if isinstance(node, Number) else 0)
        return isinstance(value, (int, float)) and value != 0

    # calling -------------------------------------------------------------------------------------
    def _call(self, node: Call) -> str:
        name = node.function.text
        if name == "exists":
            return self.exists(node.arguments[0])
        if name == "count":
            things = self.collection(node.arguments[0])
            return self.kept(("count", things),
                             f"len({things}) if {things}.__class__ is tuple else {things}")
        sides = self._values(node)
        if name in ("abs", "sqrt"):
            helper = "abs" if name == "abs" else "square_root"
            return self.kept((name, *sides), f"{helper}({sides[0]})")
        return self.kept((name, *sides), _extreme(name, sides))

    def _gathered(self, node: Gathering) -> str:
        """A collection function: a loop over the things, where it is known which they are."""
        things = self.collection(node.collection)
        result, variable = self.body.fresh(), self.body.fresh()
        loop = LOOPS[node.function.text](self, node, result)
        self.loops[node.variable.text] = variable
        with self.body.block(f"if {things}.__class__ is tuple:"):
            loop.begin()
            with self.body.block(f"for {variable} in {things}:"):
                loop.each(None if node.condition is None else self.value(node.condition))
            loop.end()
        with self.body.block("else:"):
            self.body.line(f"{result} = {things}")
        del self.loops[node.variable.text]
        return result


def _extreme(name: str, sides: list[str]) -> str:
    helper, sign = ("least", "<=") if name == "min" else ("greatest", ">=")
    general = f"{helper}(({', '.join(sides)}))"
    if len(sides) != 2:
        return general
    one, other = sides
    return (f"({one} if {one} {sign} {other} else {other}) if {one}.__class__ is float "
            f"and {other}.__class__ is float else {general}")
