"""Which comparisons an outcome rests on, from the top of the expression down."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from garboard.expressions import runtime
from garboard.expressions.check import Checked
from garboard.expressions.evaluate import Round
from garboard.expressions.statements import matters
from garboard.expressions.tree import (
    AnswerName,
    Call,
    Comparison,
    Conditional,
    Expression,
    Gathering,
    Logic,
    Not,
    Read,
    children,
)
from garboard.expressions.types import TRUTH
from garboard.expressions.working.distance import distance, is_constant, share
from garboard.expressions.working.model import Compared, Part, Step, Turn


@dataclass(frozen=True, slots=True)
class Found:
    """The values of an expression, or of one round of a loop in it."""

    part: Part
    checked: Checked
    values: Mapping[int, Any]
    rounds: Mapping[int, Sequence[Round]]
    steps: Callable[[Found, Expression], tuple[Step, ...]]

    def of(self, node: Expression) -> Any:
        return self.values[id(node)]


def compared(found: Found, node: Expression, decides: bool) -> Iterator[Compared]:
    """All comparisons of a condition, in the order of the text."""
    if id(node) not in found.values:
        return
    match node:
        case Not():
            yield from compared(found, node.operand, decides)
        case Logic():
            whole = found.of(node)
            for part in node.parts:
                yield from compared(found, part, decides and matters(whole, found.of(part)))
        case Conditional():
            condition = found.of(node.condition)
            yield from compared(found, node.condition, decides)
            yield from compared(found, node.if_true, decides and condition is not False)
            yield from compared(found, node.if_false, decides and condition is not True)
        case Comparison():
            yield from _pairs(found, node, decides)
        case Read() | AnswerName() | Call():
            if node.type == TRUTH:
                yield Compared(found.part, found.checked.written(node), found.of(node), decides)
        case Gathering():
            if node.type == TRUTH:
                yield Compared(found.part, found.checked.written(node), found.of(node), decides,
                               turns=_turns(found, node, decides))


def _pairs(found: Found, node: Comparison, decides: bool) -> Iterator[Compared]:
    whole = found.of(node)
    sides = [found.of(operand) for operand in node.operands]
    truths = [runtime.compared(left, operator, right) for left, operator, right
              in zip(sides, node.operators, sides[1:], strict=False)]
    # a chain can be false although no pair is by itself: then all of it is
    alone = any(matters(whole, truth) for truth in truths)
    for place, operator in enumerate(node.operators):
        one, other = node.operands[place:place + 2]
        left, right = sides[place:place + 2]
        apart = distance(left, operator, right)
        dimension = one.type.dimension if one.type else None
        limit = left if is_constant(one) and not is_constant(other) else right
        yield Compared(
            found.part, _written(found, one, operator, other), truths[place],
            decides and (matters(whole, truths[place]) or not alone), operator, left, right,
            dimension, apart, share(apart, limit, dimension),
            tuple(turn for side in (one, other) for turn in _turns_in(found, side, decides)))
    for operand in node.operands:
        yield from _inside(found, operand, decides)


def _written(found: Found, one: Expression, operator: str, other: Expression) -> str:
    return f"{found.checked.written(one)} {operator} {found.checked.written(other)}"


def _inside(found: Found, node: Expression, decides: bool) -> Iterator[Compared]:
    """Conditions within a side of a comparison: those of an ``if``."""
    if isinstance(node, Gathering):
        return
    for part in children(node):
        if part.type == TRUTH:
            yield from compared(found, part, decides)
        else:
            yield from _inside(found, part, decides)


# loops -------------------------------------------------------------------------------------------
def _turns_in(found: Found, node: Expression, decides: bool) -> Iterator[Turn]:
    if isinstance(node, Gathering):
        yield from _turns(found, node, decides)
        return
    for part in children(node):
        yield from _turns_in(found, part, decides)


def _turns(found: Found, node: Gathering, decides: bool) -> tuple[Turn, ...]:
    whole = found.of(node)
    return tuple(_turn(found, node, each, whole, decides)
                 for each in found.rounds.get(id(node), ()))


def _turn(found: Found, node: Gathering, each: Round, whole: Any, decides: bool) -> Turn:
    inner = Found(found.part, found.checked, each.values, each.rounds, found.steps)
    value = each.values.get(id(node.element))
    mine = decides and _turn_matters(node, each, whole, value)
    comparisons = [*(() if node.condition is None else compared(inner, node.condition, mine)),
                   *(compared(inner, node.element, mine) if node.element.type == TRUTH else ())]
    steps = (*(() if node.condition is None else found.steps(inner, node.condition)),
             *(found.steps(inner, node.element) if each.filtered is not False else ()))
    return Turn(each.thing["id"], each.filtered, value, mine, steps, tuple(comparisons))


def _turn_matters(node: Gathering, each: Round, whole: Any, value: Any) -> bool:
    if each.filtered is False:
        return False
    if node.type != TRUTH:
        return True
    given = (value | runtime.absent(each.filtered) if node.function.text == "all"
             else value & each.filtered)
    return matters(whole, given)
