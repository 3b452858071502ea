"""The syntax tree of an expression: our own nodes, each with its spot in the author's text.

The parser leaves ``type`` empty and names as ``Path``; checking fills the types and resolves every
path to a ``Read``, a ``LimitName`` or an ``AnswerName``.
"""

from __future__ import annotations

import typing
from dataclasses import dataclass
from datetime import date

from garboard.expressions.types import Type


@dataclass(frozen=True, slots=True)
class Word:
    """A name as it stands in the text."""

    text: str
    offset: int
    length: int


@dataclass(frozen=True, slots=True)
class Node:
    """A part of an expression; ``offset`` (from 0) and ``length`` count characters."""

    offset: int
    length: int


@dataclass(frozen=True, slots=True)
class Number(Node):
    value: int | float
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Text(Node):
    value: str
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Truth(Node):
    value: bool
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Day(Node):
    """A text that stands for a date, because it is compared with one."""

    value: date
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Listing(Node):
    """Literals to the right of ``in``."""

    items: tuple[Number | Text | Truth | Day, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Path(Node):
    """A dotted name that is not resolved yet."""

    words: tuple[Word, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Read(Node):
    """A value of a thing: from ``root`` along relations (all but the last step) to a value.

    ``root`` is ``item``, another single thing (``record``, ``vessel``), or a loop's own name for
    its variable (``loop 1``). Without steps it is the thing itself.
    """

    root: str
    steps: tuple[str, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class LimitName(Node):
    name: str
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class AnswerName(Node):
    question: str
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Negative(Node):
    operand: Expression
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Not(Node):
    operand: Expression
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Arithmetic(Node):
    """Terms joined by ``+`` and ``-``, or by ``*`` and ``/``, from left to right."""

    operators: tuple[str, ...]
    operands: tuple[Expression, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Comparison(Node):
    """A chain; each operator stands between two neighbours."""

    operators: tuple[str, ...]
    operands: tuple[Expression, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Logic(Node):
    word: typing.Literal["and", "or"]
    parts: tuple[Expression, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Conditional(Node):
    """``if_true if condition else if_false``."""

    condition: Expression
    if_true: Expression
    if_false: Expression
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Call(Node):
    function: Word
    arguments: tuple[Expression, ...]
    type: Type | None = None


@dataclass(frozen=True, slots=True)
class Gathering(Node):
    """``function(element for variable in collection if condition)``.

    Once checked, ``variable`` carries the loop's own name.
    """

    function: Word
    element: Expression
    variable: Word
    collection: Expression
    condition: Expression | None
    type: Type | None = None


Literal = Number | Text | Truth | Day
Expression = (
    Number | Text | Truth | Day | Listing | Path | Read | LimitName | AnswerName | Negative | Not
    | Arithmetic | Comparison | Logic | Conditional | Call | Gathering)


@dataclass(frozen=True, slots=True)
class Parsed:
    """An expression as read, with its text."""

    text: str
    root: Expression


def children(node: Expression) -> tuple[Expression, ...]:
    """The parts of a node, in the order in which they are evaluated."""
    match node:
        case Negative() | Not():
            return (node.operand,)
        case Arithmetic() | Comparison():
            return node.operands
        case Logic():
            return node.parts
        case Conditional():
            return (node.condition, node.if_true, node.if_false)
        case Call():
            return node.arguments
        case Gathering():
            inside = () if node.condition is None else (node.condition,)
            return (node.collection, *inside, node.element)
        case _:
            return ()
