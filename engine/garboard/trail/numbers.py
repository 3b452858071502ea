"""Numbers as ECMAScript writes them: the shortest digits that give the same double back."""

from __future__ import annotations

import math
from typing import Final

#: The largest integer that stands for itself alone among doubles: 2 to the 53rd, less one.
LARGEST_INTEGER: Final = 2**53 - 1

# ECMAScript writes a number without an exponent while its point stands within these places.
_FIRST_PLACE: Final = -5
_LAST_PLACE: Final = 21


def ecmascript(number: float) -> str:
    """``number`` as ECMA-262 (Number::toString) writes it; ValueError unless it is finite."""
    if not math.isfinite(number):
        raise ValueError(f"{number!r} is not a finite number")
    return "0" if number == 0 else respelled(repr(float(number)))


def respelled(python: str) -> str:
    """A finite number other than zero as Python's ``repr`` writes it, in ECMAScript's spelling.

    Both take the same shortest digits; they differ in where an exponent starts, and in ``.0``.
    """
    sign = "-" if python[0] == "-" else ""
    mantissa, _, exponent = python.lstrip("-").partition("e")
    whole, _, part = mantissa.partition(".")
    digits = (whole + part).lstrip("0")
    place = len(whole) + int(exponent or 0) - (len(whole + part) - len(digits))
    digits = digits.rstrip("0")
    return sign + _placed(digits, place)


def _placed(digits: str, place: int) -> str:
    """``0.digits`` times ten to the power of ``place``."""
    if len(digits) <= place <= _LAST_PLACE:
        return digits + "0" * (place - len(digits))
    if 0 < place <= _LAST_PLACE:
        return f"{digits[:place]}.{digits[place:]}"
    if _FIRST_PLACE <= place <= 0:
        return f"0.{'0' * -place}{digits}"
    exponent = place - 1
    point = f".{digits[1:]}" if len(digits) > 1 else ""
    return f"{digits[0]}{point}e{'+' if exponent > 0 else '-'}{abs(exponent)}"
