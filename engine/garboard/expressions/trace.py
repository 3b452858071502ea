"""What the operands of a rule are, kept once per rule, so that a row carries values only."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from garboard.expressions.check import Checked
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

Part = Literal["condition", "requirement"]


@dataclass(frozen=True, slots=True)
class Operand:
    """One operand: the author's words for it and how to show its value.

    ``constant`` marks a literal or limit; ``reads`` are the reads it is made of, from the item or
    another single thing (what lies inside a loop is not among them).
    """

    text: str
    part: Part
    kind: str
    dimension: str | None
    constant: bool
    limit: str | None = None
    reads: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class Atom:
    """One comparison, or one truth (no operator), by the numbers of its operands in the row."""

    left: int
    operator: str | None = None
    right: int | None = None


@dataclass(frozen=True, slots=True)
class Joined:
    """How truths are joined: ``word`` is ``and``, ``or``, ``not`` or ``if``.

    A part is the number of an atom, a truth written out, or joined itself; the parts of an ``if``
    are its condition and both values.
    """

    word: Literal["and", "or", "not", "if"]
    parts: tuple[Shape, ...]


Shape = int | bool | Joined


@dataclass(frozen=True, slots=True)
class RuleTrace:
    """The operands of a rule, those of the condition first, and how they make up its truth.

    A row holds fewer values where not all were needed: those of the condition only when it is
    false or not known, none when something failed. ``condition`` and ``requirement`` say how the
    atoms are joined.
    """

    operands: tuple[Operand, ...]
    atoms: tuple[Atom, ...]
    condition: Shape | None
    requirement: Shape


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


def keys_of(operand: Operand, item: Mapping[str, Any],
            roots: Mapping[str, Any]) -> tuple[str, ...]:
    """The data keys (``f1.rating``) that an operand of an item was read from.

    Where a relation leads nowhere the key of the relation stands for what lies beyond it.
    """
    return tuple(dict.fromkeys(
        key_of(item if root == "item" else roots.get(root), steps)
        for root, steps in operand.reads))


def key_of(thing: Any, steps: tuple[str, ...]) -> str:
    """The data key (``f1.rating``) that relations and a name lead to from a thing."""
    *relations, name = steps
    for relation in relations:
        if not isinstance(thing, Mapping):
            break
        following = thing[relation]
        if not isinstance(following, Mapping):
            return f"{thing['id']}.{relation}"
        thing = following
    return f"{thing['id']}.{name}" if isinstance(thing, Mapping) else ".".join(steps)
