"""The slow way to the same values: a walk over the tree that keeps what every part gave.

It decides what generated code could not (something raised), shows the working, and answers what an
outcome would be if bounds were collapsed or an assumption not made. Values can be adapted as they
are read.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Final

from garboard.expressions import runtime
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
)
from garboard.values import Bounds, Unknown, all_of, any_of, chosen, finite, quotient

Adapt = Callable[[Any], Any]


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What an expression is evaluated on: an item, the single things, answers and limits."""

    item: Mapping[str, Any]
    roots: Mapping[str, Any]
    answers: Mapping[str, Any]
    limits: Mapping[str, LimitValue]


@dataclass(frozen=True, slots=True)
class Round:
    """What a collection function did with one thing; nothing but the filter when it is false."""

    thing: Any
    filtered: Any
    values: Mapping[int, Any]
    rounds: Mapping[int, list[Round]]


@dataclass(slots=True)
class Evaluation:
    """The values of all parts of an expression, by node; those inside loops by their rounds."""

    around: Surroundings
    adapt: Adapt | None = None
    values: dict[int, Any] = field(default_factory=dict)
    rounds: dict[int, list[Round]] = field(default_factory=dict)
    notes: list[object] = field(default_factory=list)
    loops: dict[str, Any] = field(default_factory=dict)

    def value(self, node: Expression) -> Any:
        """The value of a part; whatever a thing raises when it is read comes through."""
        value = self.values[id(node)] = self._value(node)
        return value

    def _value(self, node: Expression) -> Any:
        match node:
            case Number() | Text() | Truth() | Day():
                return node.value
            case Listing():
                return tuple(item.value for item in node.items)
            case LimitName():
                return self.around.limits[node.name]
            case AnswerName():
                return self._answer(node)
            case Read():
                return self._read(node)
            case Negative():
                return -self.value(node.operand)
            case Not():
                return runtime.absent(self.value(node.operand))
            case Logic():
                parts = [self.value(part) for part in node.parts]
                return all_of(parts) if node.word == "and" else any_of(parts)
            case Arithmetic():
                return self._arithmetic(node)
            case Comparison():
                return self._comparison(node)
            case Conditional():
                return chosen(self.value(node.condition), self.value(node.if_true),
                              self.value(node.if_false))
            case Call():
                return self._call(node)
            case Gathering():
                return self._gathered(node)
            case _:
                raise TypeError(f"{type(node).__name__} is not part of a checked expression")

    def _adapted(self, value: Any) -> Any:
        return value if self.adapt is None else self.adapt(value)

    # reading -------------------------------------------------------------------------------------
    def _thing(self, node: Read, steps: tuple[str, ...]) -> Any:
        if node.root in self.loops:
            thing = self.loops[node.root]
        else:
            thing = self.around.item if node.root == "item" else self.around.roots[node.root]
        for step in steps:
            thing = runtime.followed(thing, step)
        return thing

    def _read(self, node: Read) -> Any:
        if not node.steps:
            return self._thing(node, ())
        owner, name = self._thing(node, node.steps[:-1]), node.steps[-1]
        kind = node.type.kind if node.type else "opaque"
        if kind in ("one", "many"):
            return owner[name]
        return self._adapted(runtime.usable(owner[name], kind, owner, name, self.notes))

    def _answer(self, node: AnswerName) -> Any:
        kind = node.type.kind if node.type else "opaque"
        return self._adapted(runtime.usable(self.around.answers[node.question], kind, None,
                                            f"answer.{node.question}", self.notes))

    def _several(self, node: Expression) -> Any:
        if not isinstance(node, Read):
            raise TypeError("a collection is a relation")
        things = runtime.several(self._thing(node, node.steps[:-1]), node.steps[-1])
        self.values[id(node)] = things
        return things

    # calculating ---------------------------------------------------------------------------------
    def _arithmetic(self, node: Arithmetic) -> Any:
        sides = [self.value(operand) for operand in node.operands]
        result = sides[0]
        for operator, side in zip(node.operators, sides[1:], strict=True):
            result = _CALCULATE[operator](result, side)
        return finite(result)

    def _comparison(self, node: Comparison) -> Any:
        sides = [self.value(operand) for operand in node.operands]
        pairs = [self._pair(left, operator, right) for left, operator, right
                 in zip(node.operands, node.operators, node.operands[1:], strict=False)]
        return all_of(pairs) if len(pairs) == 1 else runtime.settled(
            node.operators, sides, all_of(pairs))

    def _pair(self, one: Expression, operator: str, other: Expression) -> Any:
        left, right = self.values[id(one)], self.values[id(other)]
        truth = runtime.compared(left, operator, right)
        if not isinstance(truth, Unknown):
            return truth
        # what is not known of a choice may be known of both that can be chosen
        if isinstance(one, Conditional) and isinstance(left, (Unknown, Bounds)):
            return chosen(self.values[id(one.condition)], self._pair(one.if_true, operator, other),
                          self._pair(one.if_false, operator, other))
        if isinstance(other, Conditional) and isinstance(right, (Unknown, Bounds)):
            return chosen(self.values[id(other.condition)],
                          self._pair(one, operator, other.if_true),
                          self._pair(one, operator, other.if_false))
        return truth

    # functions -----------------------------------------------------------------------------------
    def _call(self, node: Call) -> Any:
        name = node.function.text
        if name == "exists":
            relation = node.arguments[0]
            if not isinstance(relation, Read):
                raise TypeError("exists takes a relation")
            return runtime.exists(self._thing(relation, ()), relation.steps)
        if name == "count":
            things = self._several(node.arguments[0])
            return things if isinstance(things, Unknown) else len(things)
        sides = tuple(self.value(argument) for argument in node.arguments)
        if name == "abs":
            return abs(sides[0])
        if name == "sqrt":
            return runtime.square_root(sides[0])
        return runtime.least(sides) if name == "min" else runtime.greatest(sides)

    def _gathered(self, node: Gathering) -> Any:
        things = self._several(node.collection)
        if isinstance(things, Unknown):
            return things
        inside = [self._round(node, thing) for thing in things]
        self.rounds[id(node)] = inside
        return _gather(node.function.text, [
            (each.filtered, each.values[id(node.element)]) for each in inside
            if each.filtered is not False])

    def _round(self, node: Gathering, thing: Any) -> Round:
        own = Evaluation(self.around, self.adapt, notes=self.notes,
                         loops={**self.loops, node.variable.text: thing})
        filtered = True if node.condition is None else own.value(node.condition)
        if filtered is not False:
            own.value(node.element)
        return Round(thing, filtered, own.values, own.rounds)


def _gather(name: str, parts: list[tuple[Any, Any]]) -> Any:
    if name == "all":
        return all_of(part | runtime.absent(filtered) for filtered, part in parts)
    if name == "any":
        return any_of(part & filtered for filtered, part in parts)
    doubtful = [(filtered, part) for filtered, part in parts if filtered is not True]
    if name == "count":
        return runtime.counted(len(parts) - len(doubtful), [each for each, _ in doubtful])
    helper = {"sum": runtime.summed, "min": runtime.least, "max": runtime.greatest}[name]
    return helper([part for filtered, part in parts if filtered is True], doubtful)


_CALCULATE: Final[Mapping[str, Callable[[Any, Any], Any]]] = {
    "+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b,
    "/": quotient,
}
