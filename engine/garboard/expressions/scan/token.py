"""One piece of an expression's text."""

from __future__ import annotations

from typing import Literal, NamedTuple

from garboard.expressions.problem import ExpressionProblem

Kind = Literal["number", "text", "name", "word", "sign", "end"]


class Token(NamedTuple):
    """A piece of the text; ``text`` is what it means (a text without its quotes, a slip mended)."""

    kind: Kind
    text: str
    offset: int
    length: int

    @property
    def end(self) -> int:
        return self.offset + self.length


class Piece(NamedTuple):
    """What was read at one spot: up to where, as which tokens, and what is wrong with it.

    A problem beside tokens is a slip that was mended to look for more; without tokens the
    expression cannot be read any further.
    """

    end: int
    tokens: tuple[Token, ...] = ()
    problem: ExpressionProblem | None = None


def shown(char: str) -> str:
    """A character for a message; by its number where it does not show."""
    return char if char.isprintable() and not char.isspace() else f"U+{ord(char):04X}"
