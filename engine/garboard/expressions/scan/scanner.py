"""The text from left to right, piece by piece, within the limits."""

from __future__ import annotations

import re
from typing import Final

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem, ExpressionRefused
from garboard.expressions.scan.numeral import read_numeral
from garboard.expressions.scan.quoted import read_quoted
from garboard.expressions.scan.token import Kind, Piece, Token, shown
from garboard.expressions.scan.word import foreign_letters, read_word
from garboard.expressions.slips import SIGNS, WORDS

_OURS: Final = ("==", "!=", "<=", ">=", "<", ">", "=", "+", "-", "*", "/", "(", ")", "[", "]", ",",
                ".")
_SPACE: Final = re.compile(r"[ \t\r\n]*")
_SIGN: Final = re.compile("|".join(map(re.escape, sorted((*SIGNS, *_OURS), key=len, reverse=True))))
_MOST_PROBLEMS: Final = 20


def tokens_of(text: str, limits: Limits) -> tuple[list[Token], list[ExpressionProblem]]:
    """The tokens, the last one an ``end``, and the slips that were mended on the way.

    Raises ``ExpressionRefused`` when a limit is broken or a piece cannot be read.
    """
    if len(text) > limits.length:
        raise ExpressionRefused(text[:limits.length], [ExpressionProblem(
            "expression-length", 0, 1, f"{len(text):,} characters",
            f"at most {limits.length:,} (limit 'length')")])
    tokens: list[Token] = []
    problems: list[ExpressionProblem] = []
    readable = True
    at = _skip(text, 0)
    while at < len(text) and len(problems) < _MOST_PROBLEMS:
        piece = _piece(text, at, limits, tokens)
        tokens += piece.tokens
        if piece.problem is not None:
            problems.append(piece.problem)
            readable = readable and bool(piece.tokens)
        broken = _limit_broken(tokens, limits)
        if broken is not None:
            raise ExpressionRefused(text, [*problems, broken])
        at = _skip(text, piece.end)
    if not text.strip():
        problems.append(ExpressionProblem("expression-empty", 0, 1, "nothing", "an expression"))
        readable = False
    if not readable:
        raise ExpressionRefused(text, problems)
    tokens.append(Token("end", "", len(text.rstrip()), 1))
    return tokens, problems


def _skip(text: str, at: int) -> int:
    space = _SPACE.match(text, at)
    return space.end() if space else at


def _piece(text: str, at: int, limits: Limits, before: list[Token]) -> Piece:
    char = text[at]
    if char.isascii() and (char.isalpha() or char == "_"):
        last = before[-1] if before else None
        return read_word(text, at, limits,
                         after_dot=last is not None and last.kind == "sign" and last.text == ".")
    if char.isascii() and char.isdigit():
        return read_numeral(text, at, limits)
    if char in "\"'":
        return read_quoted(text, at, limits)
    return _sign(text, at)


def _sign(text: str, at: int) -> Piece:
    match = _SIGN.match(text, at)
    char = text[at]
    if match is None and char.isalnum():
        return foreign_letters(text, at)
    if match is None:
        hint = "" if char.isprintable() and not char.isspace() else (
            "an invisible or special space was pasted in; write a plain one")
        return Piece(at + 1, (), ExpressionProblem(
            "expression-character", at, 1, shown(char), "letters, digits and signs", hint))
    sign = match[0]
    length = len(sign)
    slip = SIGNS.get(sign)
    if slip is None:
        return Piece(at + length, (Token("sign", sign, at, length),))
    problem = ExpressionProblem(slip.code, at, length, sign, "", slip.hint)
    if slip.meant is None:
        return Piece(at + length, (), problem)
    kind: Kind = "word" if slip.meant in WORDS else "sign"
    return Piece(at + length, (Token(kind, slip.meant, at, length),), problem)


def _limit_broken(tokens: list[Token], limits: Limits) -> ExpressionProblem | None:
    if len(tokens) > limits.words:
        return ExpressionProblem("expression-words", tokens[limits.words].offset, 1,
                                 f"more than {limits.words} words and signs",
                                 f"at most {limits.words} (limit 'words')")
    return None
