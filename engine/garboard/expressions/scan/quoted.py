"""Texts in quotes: one line, nothing escaped, nothing put in."""

from __future__ import annotations

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem
from garboard.expressions.scan.token import Piece, Token, shown


def read_quoted(text: str, at: int, limits: Limits) -> Piece:
    """The text that starts at a quote."""
    quote = text[at]
    if text.startswith(quote * 3, at):
        return Piece(len(text), (), ExpressionProblem(
            "expression-quotes", at, 3, quote * 3, "one straight quote on either side"))
    end = text.find(quote, at + 1)
    inside = text[at + 1:end] if end >= 0 else "\n"
    if "\n" in inside:
        return Piece(len(text), (), ExpressionProblem(
            "expression-text-open", at, 1, text[at:at + 20].split("\n")[0],
            f"a closing {quote} on the same line"))
    end += 1
    if len(inside) > limits.text:
        return Piece(end, (), ExpressionProblem(
            "expression-text-size", at, end - at, f"{len(inside)} characters",
            f"at most {limits.text} (limit 'text')"))
    for place, char in enumerate(inside, at + 1):
        if char == "\\":
            return Piece(end, (), ExpressionProblem(
                "expression-text-escape", place, 1, char, "plain characters"))
        if not char.isprintable():
            return Piece(end, (), ExpressionProblem(
                "expression-character", place, 1, shown(char), "plain characters"))
    return Piece(end, (Token("text", inside, at, end - at),))
