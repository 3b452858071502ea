"""The trace of a rule, made from its checked expressions."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from garboard.expressions.check import Checked
from garboard.expressions.trace import Atom, Joined, Operand, Part, RuleTrace, Shape
from garboard.expressions.tree import (
    AnswerName,
    Call,
    Comparison,
    Conditional,
    Expression,
    Gathering,
    LimitName,
    Logic,
    Not,
    Read,
    Truth,
    children,
)
from garboard.expressions.types import TRUTH


def operand_nodes(root: Expression) -> tuple[Expression, ...]:
    """The parts of a condition whose values a row keeps, in the order of the text.

    Both sides of every comparison, and everything else that is true or false by itself.
    """
    return tuple(node for node, _, _ in _operands(root))


def trace_of(condition: Checked | None, requirement: Checked) -> RuleTrace:
    """The trace of a rule."""
    operands: list[Operand] = []
    atoms: list[Atom] = []
    shapes: list[Shape] = []
    parts: tuple[tuple[Part, Checked | None], ...] = (
        ("condition", condition), ("requirement", requirement))
    for part, checked in parts:
        if checked is None:
            continue
        numbers: dict[int, list[int]] = {}
        for node, operator, owner in _operands(checked.root):
            if operator is not None:
                numbers.setdefault(id(owner), []).append(len(atoms))
                atoms.append(Atom(len(operands), operator, len(operands) + 1) if operator
                             else Atom(len(operands)))
            operands.append(_operand(checked, node, part))
        shapes.append(_shape(checked.root, numbers))
    return RuleTrace(tuple(operands), tuple(atoms), None if condition is None else shapes[0],
                     shapes[-1])


def _shape(node: Expression, numbers: Mapping[int, list[int]]) -> Shape:
    match node:
        case Truth():
            return node.value
        case Not():
            return Joined("not", (_shape(node.operand, numbers),))
        case Logic():
            return Joined(node.word, tuple(_shape(part, numbers) for part in node.parts))
        case Conditional():
            return Joined("if", tuple(_shape(part, numbers) for part in children(node)))
    mine = numbers[id(node)]
    return mine[0] if len(mine) == 1 else Joined("and", tuple(mine))


_Found = tuple[Expression, str | None, Expression]


def _operands(node: Expression) -> Iterator[_Found]:
    """Each operand, the operator after it ("" for a truth, ``None`` for a last side), its atom."""
    if isinstance(node, Comparison):
        for operand, operator in zip(node.operands, (*node.operators, None), strict=True):
            yield operand, operator, node
        for operand in node.operands:
            yield from _inside(operand)
    elif isinstance(node, (Logic, Not, Conditional)):
        for part in children(node):
            yield from _operands(part) if part.type == TRUTH else _inside(part)
    elif node.type == TRUTH and isinstance(node, (Read, AnswerName, Call, Gathering)):
        yield node, "", node


def _inside(node: Expression) -> Iterator[_Found]:
    """Conditions inside a side of a comparison: those of an ``if`` in it."""
    if isinstance(node, Gathering):
        return
    for part in children(node):
        yield from _operands(part) if part.type == TRUTH else _inside(part)


def _operand(checked: Checked, node: Expression, part: Part) -> Operand:
    found = node.type
    assert found is not None
    reads = tuple(dict.fromkeys(_reads(node)))
    limit = node.name if isinstance(node, LimitName) else None
    constant = not any(isinstance(each, (Read, AnswerName, Gathering)) for each in _all(node))
    return Operand(checked.written(node), part, found.kind, found.dimension, constant, limit, reads)


def _all(node: Expression) -> Iterator[Expression]:
    yield node
    for part in children(node):
        yield from _all(part)


def _reads(node: Expression) -> Iterator[tuple[str, tuple[str, ...]]]:
    if isinstance(node, Read) and node.steps and not node.root.startswith("loop "):
        yield node.root, node.steps
    for part in children(node):
        yield from _reads(part)
