"""What a part of an expression is, wherever it stands: equal keys mean equal values."""

from __future__ import annotations

from collections.abc import Hashable, Mapping

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
    Number,
    Read,
    Text,
    Truth,
    children,
)


def key_of(node: Expression, limits: Mapping[str, LimitValue]) -> Hashable:
    """The key of a checked part; a limit is the same as its figure written out."""
    inner = tuple(key_of(part, limits) for part in children(node))
    match node:
        case Read():
            return ("read", node.root, node.steps)
        case LimitName():
            return ("value", limits[node.name])
        case Number() | Text() | Truth() | Day():
            return ("value", node.value)
        case Listing():
            return ("value", tuple(item.value for item in node.items))
        case AnswerName():
            return ("answer", node.question)
        case Arithmetic() | Comparison():
            return (type(node).__name__, node.operators, inner)
        case Logic():
            return (node.word, inner)
        case Call():
            return (node.function.text, inner)
        case Gathering():
            return (node.function.text, node.variable.text, node.condition is None, inner)
        case Conditional():
            return ("if", inner)
        case _:
            return (type(node).__name__, inner)
