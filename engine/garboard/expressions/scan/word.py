"""Names and words: plain letters, digits and underscores."""

from __future__ import annotations

import re
from typing import Final

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem
from garboard.expressions.scan.token import Piece, Token
from garboard.expressions.slips import WORDS, word_slip

_NAME: Final = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
#: Questions are named with hyphens, so what follows ``answer.`` is read as a whole.
_QUESTION: Final = re.compile(r"answer\.([a-z0-9]+(?:-[a-z0-9]+)*)(?![A-Za-z0-9_])")


def read_word(text: str, at: int, limits: Limits, *, after_dot: bool) -> Piece:
    """The name or word that starts at a letter or underscore."""
    match = _NAME.match(text, at)
    name = match[0] if match else text[at]
    end = at + len(name)
    following = text[end:end + 1]
    if following and not following.isascii() and following.isalnum():
        return foreign_letters(text, at)
    if len(name) > limits.name:
        return Piece(end, (), ExpressionProblem(
            "expression-name-length", at, len(name), f"{len(name)} characters",
            f"at most {limits.name} (limit 'name')"))
    if name.startswith("_"):
        return Piece(end, (), ExpressionProblem(
            "expression-name-hidden", at, len(name), name, "a name that starts with a letter"))
    if after_dot:
        return Piece(end, (Token("name", name, at, len(name)),))
    question = _QUESTION.match(text, at)
    if question:
        return Piece(question.end(), (
            Token("name", name, at, len(name)), Token("sign", ".", end, 1),
            Token("name", question[1], end + 1, len(question[1]))))
    if following and following in "\"'" and name not in WORDS:
        return Piece(end, (), ExpressionProblem(
            "expression-text-prefix", at, len(name), name, "a plain text in quotes",
            "no letter stands before the quotes, and nothing is put into a text"))
    return _plain(name, at)


def _plain(name: str, at: int) -> Piece:
    end, length = at + len(name), len(name)
    slip = word_slip(name)
    if slip is None:
        meant = name.lower() if name in ("True", "False") else name
        return Piece(end, (Token("word" if meant in WORDS else "name", meant, at, length),))
    problem = ExpressionProblem(slip.code, at, length, name, "a name or a value" if
                                slip.meant is None else "", slip.hint)
    mended = () if slip.meant is None else (Token("word", slip.meant, at, length),)
    return Piece(end, mended, problem)


def foreign_letters(text: str, at: int) -> Piece:
    """A run of letters of which some are not a to z."""
    end = at
    while end < len(text) and (text[end].isalnum() or text[end] == "_"):
        end += 1
    return Piece(end, (), ExpressionProblem(
        "expression-name-letters", at, end - at, text[at:min(end, at + 40)],
        "letters a to z, digits and underscores"))
