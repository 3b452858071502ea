"""The text of an expression with values in place of names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from garboard.expressions.check import Checked
from garboard.expressions.tree import (
    AnswerName,
    Call,
    Expression,
    Gathering,
    LimitName,
    Read,
    children,
)
from garboard.expressions.types import TRUTH
from garboard.values import Bounds, System, format_value


def filled(checked: Checked, values: Mapping[int, Any], system: System) -> str:
    """The author's text on one line, each name followed to its value."""
    text, at = [], 0
    for node in sorted(_shown(checked.root), key=lambda each: each.offset):
        if id(node) not in values:
            continue
        text += [checked.text[at:node.offset], _word(node, values[id(node)], system)]
        at = node.offset + node.length
    text.append(checked.text[at:])
    return " ".join("".join(text).split())


def _shown(node: Expression) -> Iterator[Expression]:
    """The parts whose value is shown; what a loop looks at is shown by its turns."""
    if isinstance(node, (Read, LimitName, AnswerName)):
        yield node
    elif isinstance(node, Gathering) or (isinstance(node, Call) and node.function.text in
                                         ("exists", "count")):
        if node.type != TRUTH:
            yield node
    else:
        for part in children(node):
            yield from _shown(part)


def _word(node: Expression, value: Any, system: System) -> str:
    dimension = node.type.dimension if node.type else None
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, tuple):
        return f"({', '.join(_word(node, part, system) for part in value)})"
    shown = format_value(value, dimension, system)
    return f"({shown})" if isinstance(value, Bounds) else shown
