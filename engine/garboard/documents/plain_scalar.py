"""What an unquoted YAML text stands for: a flag, nothing, a number, or itself.

The choice is a subset of the YAML 1.2 core schema, so that nothing surprising becomes a number:

    null, Null, NULL, ~ and nothing at all    None
    true, True, TRUE, false, False, FALSE     flags; yes, no, on and off stay text
    0, 12, -3, +5                             whole numbers, decimal, without leading zeros
    0.35, .5, 1., 1e3, -2.5E-3                decimal numbers with a point or an exponent

All else is text: ``012``, ``0o17``, ``0x1F``, ``1_000``, ``12:30``, ``2026-04-18``, ``.nan``,
``.inf``, ``1,5``. A number that a 64-bit float cannot hold (a whole number beyond 2^53 - 1, an
exponent out of range) is refused rather than changed.
"""

from __future__ import annotations

import re
from math import isfinite

from garboard.errors import ReadingError

#: The largest whole number that survives as a 64-bit float, as other programs read JSON.
LARGEST_WHOLE = 2**53 - 1

_WHOLE = re.compile(r"[-+]?(?:0|[1-9][0-9]*)\Z")
_DECIMAL = re.compile(r"[-+]?(?:\.[0-9]+|(?:0|[1-9][0-9]*)(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?\Z")
_WORDS: dict[str, bool | None] = {
    "": None, "~": None, "null": None, "Null": None, "NULL": None,
    "true": True, "True": True, "TRUE": True, "false": False, "False": False, "FALSE": False,
}
_STARTS = frozenset("0123456789.+-")


def plain_value(text: str) -> str | int | float | bool | None:
    """The value of an unquoted text; raises ReadingError (``document-number``)."""
    if text in _WORDS:
        return _WORDS[text]
    if text[0] not in _STARTS:
        return text
    if _WHOLE.match(text):
        return whole_number(text)
    return decimal_number(text) if _DECIMAL.match(text) else text


def whole_number(text: str) -> int:
    """A whole number that a float can hold exactly; raises ReadingError."""
    if len(text) > 17 or abs(int(text)) > LARGEST_WHOLE:
        raise ReadingError(
            "document-number", found=_shown(text),
            expected=f"a whole number of at most {LARGEST_WHOLE} either way",
            hint="put it in quotes if it is a name or a serial number, not a count")
    return int(text)


def decimal_number(text: str) -> float:
    """A decimal number inside the range of a float; raises ReadingError."""
    value = float(text)
    if not isfinite(value) or (value == 0 and re.search("[1-9]", re.split("[eE]", text)[0])):
        raise ReadingError(
            "document-number", found=_shown(text),
            expected="a number between 1e-307 and 1e308 in size, or 0",
            hint="check the exponent; put it in quotes if it is not a number")
    return value


def _shown(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:30]}... ({len(text)} characters)"
