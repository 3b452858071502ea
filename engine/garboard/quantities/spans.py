"""Numbers that are only known on one side, as calculations make them.

What is not recorded but cannot be negative (a resistance, another load) leaves a figure *at least*
what the rest of it is; the causes stay with it, so a limit it straddles names what is missing.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from garboard.values import UNRECORDED, Bounds, Number, Unknown, failure_among, total


def low_end(number: Number) -> float:
    """The least a number can be; minus infinity where nothing is known."""
    if isinstance(number, Bounds):
        return number.lo
    return -math.inf if isinstance(number, Unknown) else number


def high_end(number: Number) -> float:
    """The greatest a number can be; infinity where nothing is known."""
    if isinstance(number, Bounds):
        return number.hi
    return math.inf if isinstance(number, Unknown) else number


def unrecorded(low: float, high: float, why: Unknown | Bounds) -> Number:
    """Anything between two ends, for a fact that is not there; a failure stays a failure."""
    if isinstance(why, Unknown) and why.is_error:
        return why
    return Bounds(low, high, basis=(UNRECORDED,), causes=why.causes)


def at_least_zero(stated: Number) -> Number:
    """A figure as recorded; at least zero where it is not."""
    return unrecorded(0.0, math.inf, stated) if isinstance(stated, Unknown) else stated


def total_at_least(numbers: Iterable[Number]) -> Number:
    """The sum of figures that are never negative; what is unknown leaves it open upwards."""
    numbers = tuple(numbers)
    failure = failure_among(numbers)
    return total(map(at_least_zero, numbers)) if failure is None else failure


def size(number: Number) -> Number:
    """A number without its sign."""
    if isinstance(number, (Unknown, Bounds)):
        return number if isinstance(number, Unknown) else abs(number)
    return abs(number)


def hull(one: Number, other: Number) -> Number:
    """From the least of two figures to the greatest, whatever lies between being possible."""
    if isinstance(one, Unknown) or isinstance(other, Unknown):
        return one.joined(other) if isinstance(one, Unknown) else other + one
    low, high = min(low_end(one), low_end(other)), max(high_end(one), high_end(other))
    causes = tuple(cause for each in (one, other) if isinstance(each, Bounds)
                   for cause in each.causes)
    return low if low == high else Bounds(low, high, basis=(UNRECORDED,), causes=causes)
