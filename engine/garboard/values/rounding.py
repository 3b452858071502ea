"""Figures have 12 significant digits, the same on every processor.

Figures leave network and quantities so rounded, and numbers are compared so rounded: what a limit
is met by exactly passes, whatever a sum or product left in the last place.
"""

from __future__ import annotations

import math

from garboard.values.bounds import Bounds

SIGNIFICANT_DIGITS = 12
#: A share by which no two numbers differ that round alike.
_FURTHER = 2 * 10.0 ** (1 - SIGNIFICANT_DIGITS)


def rounded(number: float) -> float:
    """``number`` with 12 significant digits; zero has no sign."""
    if number == 0 or not math.isfinite(number):
        return number + 0.0
    return float(f"{number:.{SIGNIFICANT_DIGITS - 1}e}")


def rounded_value(value: object) -> object:
    """A figure with 12 significant digits: numbers and both ends of bounds; the rest unchanged."""
    if isinstance(value, float):
        return rounded(value)
    if isinstance(value, Bounds):
        lo, hi = rounded(value.lo), rounded(value.hi)
        nominal = None if value.nominal is None else rounded(value.nominal)
        if lo and hi and nominal != 0 and (lo, hi, nominal) == (value.lo, value.hi, value.nominal):
            return value
        return Bounds(lo, hi, nominal, basis=value.basis, causes=value.causes)
    return value


def least_alike(number: float) -> float:
    """The least float that has the same 12 significant digits."""
    return _last_alike(number, -math.inf)


def greatest_alike(number: float) -> float:
    """The greatest float that has the same 12 significant digits."""
    return _last_alike(number, math.inf)


def _last_alike(number: float, towards: float) -> float:
    """Between what rounds alike and what no longer does, halved until they are neighbours."""
    alike = rounded(number)
    beyond = alike + math.copysign(abs(alike) * _FURTHER, towards)
    if beyond == alike or not math.isfinite(beyond):
        return alike
    last = alike
    while (between := last + (beyond - last) / 2) not in (last, beyond):
        if rounded(between) == alike:
            last = between
        else:
            beyond = between
    return last
