"""Counts, sums and extremes of several things, of which some may be in doubt; square roots."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import Any, Final

from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Truth,
    Unknown,
    chosen,
    largest,
    smallest,
    total,
)
from garboard.values.bounds import bounded
from garboard.values.logic import failure_among

#: Whether a thing counts, where that is not known, with its number.
Doubtful = Sequence[tuple[Unknown, Number]]


def counted(certain: int, doubtful: Sequence[Truth]) -> Number:
    """How many: those that certainly count, and those of which it is not known whether they do."""
    if not doubtful:
        return certain
    joined = _joined(doubtful)
    if joined.is_error:
        return joined
    return bounded(certain, certain + len(doubtful), None, (UNRECORDED,), joined.causes)


def summed(parts: Sequence[Number], doubtful: Doubtful = ()) -> Number:
    """The sum; a doubtful part is in it or not."""
    if doubtful:
        parts = [*parts, *(_number(chosen(whether, part, 0)) for whether, part in doubtful)]
    kinds = set(map(type, parts))
    exact: Any = parts
    if kinds == {float}:
        try:
            return math.fsum(exact)
        except OverflowError:
            return total(parts)
    if kinds <= {int}:
        return int(sum(exact))
    return total(parts)


def least(parts: Sequence[Number], doubtful: Doubtful = ()) -> Number:
    """The least; a doubtful part may be it."""
    if not doubtful:
        return min(parts) if parts and set(map(type, parts)) == {float} else smallest(parts)
    return _extreme(parts, doubtful, smallest)


def greatest(parts: Sequence[Number], doubtful: Doubtful = ()) -> Number:
    """The greatest; a doubtful part may be it."""
    if not doubtful:
        return max(parts) if parts and set(map(type, parts)) == {float} else largest(parts)
    return _extreme(parts, doubtful, largest)


def _extreme(parts: Sequence[Number], doubtful: Doubtful,
             extreme: Callable[[Sequence[Number]], Number]) -> Number:
    failure = failure_among([*parts, *(value for pair in doubtful for value in pair)])
    if failure is not None:
        return failure
    if not parts:
        # perhaps there is nothing to take the least of
        return _joined([value for pair in doubtful for value in pair])
    result = extreme(parts)
    for whether, part in doubtful:
        result = _number(chosen(whether, extreme((result, part)), result))
    return result


def _joined(values: Sequence[object]) -> Unknown:
    unknowns = [value for value in values if isinstance(value, (Unknown, Bounds))]
    return Unknown(cause for value in unknowns for cause in value.causes)


def _number(value: object) -> Number:
    if isinstance(value, (float, int, Bounds, Unknown)) and not isinstance(value, bool):
        return value
    raise TypeError(f"{value!r} is not a number")


def square_root(value: Number) -> Number:
    """The square root; of what is or may be negative it is unknown."""
    if isinstance(value, Unknown):
        return value
    if isinstance(value, Bounds):
        if value.lo < 0:
            return Unknown((*value.causes, *_ROOT.causes))
        nominal = None if value.nominal is None else math.sqrt(value.nominal)
        return bounded(math.sqrt(value.lo), math.sqrt(value.hi), nominal, value.basis, value.causes)
    return _ROOT if value < 0 else math.sqrt(value)


_ROOT: Final = Unknown.because(OUTSIDE_METHOD, detail="square root of a negative number")
