"""Numbers: digits with a point at most, and no unit, for a figure with a unit is a limit."""

from __future__ import annotations

import re
from typing import Final

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem
from garboard.expressions.scan.token import Piece, Token
from garboard.expressions.slips import UNIT_WORDS

_NUMBER: Final = re.compile(
    r"(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE]([+-]?[0-9]+))?(?![0-9A-Za-z_.])")
_FIGURE: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_LUMP: Final = re.compile(r"[0-9][0-9A-Za-z_.]*")
_DATE: Final = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9])")
_UNIT: Final = re.compile(r"[ \t]*(%|[A-Za-zµμΩΩ°℃℉][A-Za-z0-9µμΩΩ°²³·/]*)")
#: What may follow a whole expression or operand: then a sign before it was no operator.
_END_OF_OPERAND: Final = re.compile(r"\s*(?:$|[)\],<>=!*/+-]|(?:and|or|if|else)\b)")


def read_numeral(text: str, at: int, limits: Limits) -> Piece:
    """The number that starts at a digit."""
    date = _DATE.match(text, at)
    if date:
        return Piece(date.end(), (), ExpressionProblem(
            "expression-number", at, 10, date[0], "a date in quotes", f'write "{date[0]}"'))
    lump = _LUMP.match(text, at)
    if lump and len(lump[0]) > limits.number:
        return _too_large(at, lump[0], limits)
    number = _NUMBER.match(text, at)
    figure = number or _FIGURE.match(text, at)
    unit = None if figure is None else _unit_at(text, figure.end())
    if figure and unit:
        end = unit[1]
        return Piece(end, (), ExpressionProblem(
            "expression-unit", at, end - at, text[at:end], "a number without a unit",
            f"put {figure[0]} {unit[0]} in 'limits' and use its name here"))
    if number is None:
        return _malformed(at, lump[0] if lump else text[at])
    if abs(int(number[1] or 0)) > limits.exponent:
        return _too_large(at, number[0], limits)
    return Piece(number.end(), (Token("number", number[0], at, len(number[0])),))


def _unit_at(text: str, at: int) -> tuple[str, int] | None:
    """The unit that stands there, and where it ends."""
    match = _UNIT.match(text, at)
    if match is None:
        return None
    word, end = match[1], match.end()
    if word not in UNIT_WORDS:
        # "12 V/battery.x" reads as a unit and a division
        word = re.split("[/·]", word, maxsplit=1)[0]
        end = match.start(1) + len(word)
    if word not in UNIT_WORDS:
        return None
    # '%' may be the sign of a remainder, 'in' the word before a list
    if word in ("%", "in") and not _END_OF_OPERAND.match(text, end):
        return None
    return word, end


def _too_large(at: int, number: str, limits: Limits) -> Piece:
    found = number if len(number) <= limits.number else f"{number[:limits.number]}..."
    return Piece(at + len(number), (), ExpressionProblem(
        "expression-number-size", at, len(number), found,
        f"at most {limits.number} characters, and an exponent of at most {limits.exponent} "
        "(limits 'number' and 'exponent')"))


def _malformed(at: int, lump: str) -> Piece:
    hint = ""
    if lump[1:2] in ("x", "o", "b"):
        hint = "write the number in decimal digits"
    elif "_" in lump:
        hint = "write the digits without underscores"
    elif lump.endswith("."):
        hint = f"write {lump.rstrip('.')}"
    elif lump[0] == "0":
        hint = "a number does not start with idle noughts"
    return Piece(at + len(lump), (), ExpressionProblem(
        "expression-number", at, len(lump), lump, "a number such as 12 or 0.8", hint))
