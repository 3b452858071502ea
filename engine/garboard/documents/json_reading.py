"""Reading a JSON text into plain data, at the speed of the C decoder.

Refused on purpose: keys given twice, NaN and the infinities, numbers that a float cannot hold,
control characters and halves of characters behind escapes, nesting deeper than the limit.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any
from unicodedata import is_normalized, normalize

from garboard.documents.json_depth import check_depth
from garboard.documents.json_faults import faults
from garboard.documents.json_spot import JsonSpot, JsonText
from garboard.documents.limits import Limits
from garboard.documents.plain_scalar import decimal_number, whole_number
from garboard.documents.sheet import Sheet
from garboard.errors import DocumentRefused, Problem, ReadingError

#: Signs of numbers that may not fit a float, all digits made 0; a harmless match only costs time.
_LONG_NUMBERS = (b"0" * 16, b"e000", b"e-000", b"e+000")
_DIGITS = bytes.maketrans(b"123456789E", b"000000000e")
#: Escapes of what may be a control character or half a character; ``\u00b0`` is neither.
_ESCAPED_CONTROL = re.compile(r"\\(?:[bf]|u(?:00(?:[01]|7[fF]|[89])|[dD][89a-fA-F]))")


class NotJsonError(Exception):
    """The text is not JSON; ``problem`` says where and why."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        super().__init__(problem)


class _DoubtfulError(Exception):
    """Something is refused; a second, slow look finds out what and where."""


def read_json(sheet: Sheet, limits: Limits) -> tuple[object, JsonSpot]:
    """The data and the spots of a text; raises DocumentRefused, or NotJsonError for no JSON."""
    text = sheet.text
    check_depth(sheet, limits)
    numbers: dict[str, Any] = {}
    digits = text.encode(errors="surrogatepass").translate(_DIGITS)
    if any(sign in digits for sign in _LONG_NUMBERS):
        numbers = {"parse_int": _sure(whole_number), "parse_float": _sure(decimal_number)}
    mapping = _mapping if is_normalized("NFC", text) and "\\u" not in text else _any_mapping
    try:
        data = json.loads(text, object_pairs_hook=mapping, parse_constant=_constant, **numbers)
        if _ESCAPED_CONTROL.search(text) and (found := faults(sheet, limits)):
            raise DocumentRefused(found)
    except json.JSONDecodeError as error:
        raise NotJsonError(_syntax_problem(error, sheet)) from None
    except _DoubtfulError:
        _check_syntax(sheet)
        raise DocumentRefused(faults(sheet, limits)) from None
    return data, JsonText(text).whole()


def _mapping(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    mapping = dict(pairs)
    if len(mapping) != len(pairs):
        raise _DoubtfulError
    return mapping


def _any_mapping(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """As above; two keys that only differ in how their accents are written are the same key."""
    mapping = _mapping(pairs)
    if len({normalize("NFC", key) for key in mapping}) != len(pairs):
        raise _DoubtfulError
    return mapping


def _constant(word: str) -> None:
    raise _DoubtfulError


def _sure(read: Callable[[str], Any]) -> Callable[[str], Any]:
    def number(text: str) -> Any:
        try:
            return read(text)
        except ReadingError:
            raise _DoubtfulError from None
    return number


def _check_syntax(sheet: Sheet) -> None:
    """A syntax error further on counts first: the slow look needs a well-formed text."""
    try:
        json.loads(sheet.text, parse_int=str, parse_float=str)
    except json.JSONDecodeError as error:
        raise NotJsonError(_syntax_problem(error, sheet)) from None


def _syntax_problem(error: json.JSONDecodeError, sheet: Sheet) -> Problem:
    text, at = sheet.text, error.pos
    found = re.split(r"[\r\n]", text[at:at + 40], maxsplit=1)[0] or "the end of the file"
    hint = ""
    before = text[:at].rstrip()
    if text[at:at + 1] == "'":
        hint = "JSON has double quotes only"
    elif text.startswith(("//", "/*", "#"), at):
        hint = "JSON has no comments; write the file as YAML to keep them"
    elif before.endswith(",") and text[at:at + 1] in ("}", "]", ""):
        hint = "delete the comma before it"
    elif "delimiter" in error.msg and text[at:at + 1] not in ("", ",", ":"):
        hint = "a comma, colon or closing bracket is missing before it"
    return Problem("json-syntax", sheet.place(at), found, _expected(error.msg), hint)


def _expected(message: str) -> str:
    """The decoder's message as what should stand there."""
    lowered = message[:1].lower() + message[1:]
    return lowered.removeprefix("expecting ")
