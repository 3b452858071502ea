"""Figures leave network and quantities with 12 significant digits, the same on every processor."""

from __future__ import annotations

import math

from garboard.values.bounds import Bounds

SIGNIFICANT_DIGITS = 12


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
