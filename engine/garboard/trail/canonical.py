"""Canonical bytes after RFC 8785: one data, one sequence of bytes, on any day and any machine.

Objects are sorted by the UTF-16 code units of their keys, numbers are written as ECMAScript writes
them (``1.0`` is ``1``, minus zero is ``0``, ``5e-05`` is ``0.00005``), nothing is escaped that need
not be, and text is in Unicode form NFC. Refused: numbers that are not finite, integers that a
double cannot hold exactly, keys that become the same text in NFC, half surrogates.

The C encoder of ``json`` does nearly all of the work. In its output only numbers are mended, and
what looks like one inside a text is told apart by the quotation marks before it.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any, Final

from garboard.errors import ReadingError
from garboard.trail.normal_text import in_normal_form, is_plain
from garboard.trail.numbers import LARGEST_INTEGER, respelled

_JSON: Final[dict[str, Any]] = {"ensure_ascii": False, "check_circular": False,
                                "allow_nan": False, "separators": (",", ":")}
_SORTED: Final = json.JSONEncoder(**_JSON, sort_keys=True)
_AS_IT_STANDS: Final = json.JSONEncoder(**_JSON)

# Where Python and ECMAScript differ: these exponents, a trailing ".0", and the sign of zero. Each
# pattern starts with a fixed text, which makes looking for it fast.
_EXPONENT: Final = re.compile(r"e(?:-0\d|\+1[6-9]|\+20)(?!\d)")
_POINT_ZERO: Final = re.compile(r"\.0(?=[,\]}]|\Z)")
_MINUS_ZERO: Final = re.compile(r"-0(?=[,\]}]|\Z)(?<!\d-0)(?<!e-0)")
_LONG_NUMBER: Final = re.compile("0" * 16 + "0*(?![.e])")
_LONGEST_MANTISSA: Final = len("-1.2345678901234567")
_DIGITS_ALIKE: Final = bytes.maketrans(b"123456789", b"000000000")
_ALIKE: Final = str.maketrans("123456789", "000000000")
_LONG: Final = b"0" * 16


def canonical_bytes(data: object) -> bytes:
    """The canonical bytes of JSON data: dict with text keys, list, tuple, str, number, bool, None.

    Raises ReadingError: ``canonical-number`` (not finite, or an integer beyond 2^53 - 1),
    ``canonical-text`` (half surrogates), ``canonical-key`` or ``canonical-type``.
    """
    return canonical_form(data)[1]


def canonical_form(data: object) -> tuple[object, bytes]:
    """The data with its texts in NFC (itself, if they are so already), and its canonical bytes."""
    text = _encoded(data, _SORTED)
    if not is_plain(text):
        data = in_normal_form(data)
        text = _encoded(data, _AS_IT_STANDS)
    return data, _mended(text).encode()


def _encoded(data: object, encoder: json.JSONEncoder) -> str:
    try:
        text = encoder.encode(data)
        if not text.isascii():
            text.encode()
    except UnicodeEncodeError as error:
        raise ReadingError("canonical-text", found=repr(error.object[error.start:error.end]),
                           expected="text without half surrogates") from None
    except ValueError as error:
        raise ReadingError("canonical-number", found=str(error),
                           expected="a finite number") from None
    except TypeError as error:
        raise ReadingError("canonical-type", found=str(error),
                           expected="JSON data with text keys") from None
    return text


def _mended(text: str) -> str:
    """The text with its numbers in ECMAScript's spelling."""
    raw = text.encode().translate(_DIGITS_ALIKE)
    if _LONG in raw:
        _check_integers(text)
    if b"0e-00" in raw or b"0e+00" in raw:
        text = _without_exponents(text)
    if _before_a_sign(".0", text):
        text = _replaced(text, _POINT_ZERO, "")
    if _before_a_sign("-0", text):
        text = _replaced(text, _MINUS_ZERO, "0")
    return text


def _before_a_sign(ending: str, text: str) -> bool:
    """Whether something ends so, as a number can: before a sign of JSON, or at the very end."""
    return (f"{ending}," in text or f"{ending}]" in text or f"{ending}}}" in text
            or text.endswith(ending))


def _outside(text: str, pattern: re.Pattern[str]) -> Iterator[re.Match[str]]:
    """The matches of a pattern that do not lie in a text: an even number of marks comes before."""
    if "\\" in text:
        text = text.replace("\\\\", "\0\0").replace('\\"', "\0\0")
    marks = done = 0
    for match in pattern.finditer(text):
        marks += text.count('"', done, match.start())
        done = match.start()
        if marks % 2 == 0:
            yield match


def _replaced(text: str, pattern: re.Pattern[str], by: str) -> str:
    done, parts = 0, []
    for match in _outside(text, pattern):
        parts.append(text[done:match.start()])
        done = match.end()
    return by.join([*parts, text[done:]])


def _check_integers(text: str) -> None:
    """Refuse integers that are not the only integer of their double; fractions may be long."""
    for match in _outside(text.translate(_ALIKE), _LONG_NUMBER):
        start, end = match.span()
        if text[start - 1:start] != "." and int(text[start:end]) > LARGEST_INTEGER:
            raise ReadingError("canonical-number", found=text[start:end],
                               expected=f"an integer within {LARGEST_INTEGER} of zero")


def _without_exponents(text: str) -> str:
    """The text with those numbers respelled whose exponent ECMAScript writes otherwise."""
    done, parts = 0, []
    for exponent in _outside(text, _EXPONENT):
        nearby = max(done, exponent.start() - _LONGEST_MANTISSA - 1)
        start = max(nearby, *(1 + text.rfind(before, nearby, exponent.start())
                              for before in ":[,"))
        parts += [text[done:start], respelled(text[start:exponent.end()])]
        done = exponent.end()
    return "".join([*parts, text[done:]])
