"""Canonical bytes after RFC 8785: one data, one sequence of bytes, on any day and any machine.

Objects are sorted by the UTF-16 code units of their keys, numbers are written as ECMAScript writes
them (``1.0`` is ``1``, minus zero is ``0``, ``5e-05`` is ``0.00005``), nothing is escaped that need
not be, and text is in Unicode form NFC. Refused: numbers that are not finite, integers that a
double cannot hold exactly, keys that become the same text in NFC, half surrogates.

The C encoder of ``json`` does nearly all of the work. Its output is cut at the quotation marks into
texts and the structure between them; only there can a number stand, and only there is it mended.
"""

from __future__ import annotations

import json
import re
from typing import Any, Final

from garboard.errors import ReadingError
from garboard.trail.normal_text import in_normal_form, is_plain
from garboard.trail.numbers import LARGEST_INTEGER, respelled

_JSON: Final[dict[str, Any]] = {"ensure_ascii": False, "check_circular": False,
                                "allow_nan": False, "separators": (",", ":")}
_SORTED: Final = json.JSONEncoder(**_JSON, sort_keys=True)
_AS_IT_STANDS: Final = json.JSONEncoder(**_JSON)

# An escaped backslash or quotation mark would hide where a text ends. Text with half surrogates is
# refused first; so they can stand in for the two while the output is cut.
_BACKSLASH: Final = "\ud800"
_QUOTATION_MARK: Final = "\ud801"

# Where Python and ECMAScript differ: these exponents, a trailing ".0", and the sign of zero. Each
# pattern starts with a fixed text, which makes looking for it fast.
_EXPONENT: Final = re.compile(r"e(?:-0\d|\+1[6-9]|\+20)(?!\d)")
_POINT_ZERO: Final = re.compile(r"\.0(?=[,\]}]|\Z)")
_MINUS_ZERO: Final = re.compile(r"-0(?=[,\]}]|\Z)(?<!\d-0)(?<!e-0)")
_LONG_NUMBER: Final = re.compile(b"0" * 16 + b"0*(?![.e])")
_LONGEST_MANTISSA: Final = len("-1.2345678901234567")
_DIGITS_ALIKE: Final = bytes.maketrans(b"123456789", b"000000000")


def canonical_bytes(data: object) -> bytes:
    """The canonical bytes of JSON data: dict with text keys, list, tuple, str, number, bool, None.

    Raises ReadingError: ``canonical-number`` (not finite, or an integer beyond 2^53 - 1),
    ``canonical-text`` (half surrogates), ``canonical-key`` or ``canonical-type``.
    """
    return canonical_form(data)[1]


def canonical_form(data: object) -> tuple[object, bytes]:
    """The data with its texts in NFC (itself, if they are so already), and its canonical bytes."""
    pieces = _pieces(data, _SORTED)
    if not is_plain(pieces[1::2]):
        data = in_normal_form(data)
        pieces = _pieces(data, _AS_IT_STANDS)
    pieces[::2] = _mended('"'.join(pieces[::2])).split('"')
    text = '"'.join(pieces)
    if _BACKSLASH in text or _QUOTATION_MARK in text:
        text = text.replace(_BACKSLASH, "\\\\").replace(_QUOTATION_MARK, '\\"')
    return data, text.encode()


def _pieces(data: object, encoder: json.JSONEncoder) -> list[str]:
    """The encoded data cut at the quotation marks: structure and texts in turn."""
    text = _encoded(data, encoder)
    if "\\" in text:
        text = text.replace("\\\\", _BACKSLASH).replace('\\"', _QUOTATION_MARK)
    return text.split('"')


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


def _mended(structure: str) -> str:
    """Everything but the texts, with its numbers in ECMAScript's spelling."""
    _check_integers(structure)
    if "e-0" in structure or "e+" in structure:
        structure = _without_exponents(structure)
    if ".0" in structure:
        structure = _POINT_ZERO.sub("", structure)
    if "-0" in structure:
        structure = _MINUS_ZERO.sub("0", structure)
    return structure


def _check_integers(structure: str) -> None:
    """Refuse integers that are not the only integer of their double; fractions may be long."""
    for long in _LONG_NUMBER.finditer(structure.encode().translate(_DIGITS_ALIKE)):
        start, end = long.span()
        if structure[start - 1:start] != "." and int(structure[start:end]) > LARGEST_INTEGER:
            raise ReadingError("canonical-number", found=structure[start:end],
                               expected=f"an integer within {LARGEST_INTEGER} of zero")


def _without_exponents(structure: str) -> str:
    """The structure with those numbers respelled whose exponent ECMAScript writes otherwise."""
    done, parts = 0, []
    for exponent in _EXPONENT.finditer(structure):
        nearby = max(done, exponent.start() - _LONGEST_MANTISSA - 1)
        start = max(nearby, *(1 + structure.rfind(before, nearby, exponent.start())
                              for before in ":[,"))
        parts += [structure[done:start], respelled(structure[start:exponent.end()])]
        done = exponent.end()
    return "".join([*parts, structure[done:]])
