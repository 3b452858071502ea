"""Arithmetic on exact, bounded and unknown numbers that operators alone cannot spell.

What cannot be computed in an authored expression (a division by zero, an overflow, the least of
nothing) is unknown, outside method; a calculation error in any part is the result.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import NamedTuple, TypeGuard

from garboard.values.bounds import UNRECORDED, Bounds, bounded
from garboard.values.logic import failure_among
from garboard.values.reasons import CALCULATION_ERROR, OUTSIDE_METHOD, Cause, Causes
from garboard.values.unknown import Unknown

Number = float | Bounds | Unknown


def finite(number: Number) -> Number:
    """The number itself, or unknown (outside method) where it overflowed."""
    if isinstance(number, float) and not math.isfinite(number):
        return _undefined("overflow")
    return number


def quotient(dividend: Number, divisor: Number) -> Number:
    """Division; by zero it gives unknown (outside method)."""
    if isinstance(divisor, (int, float)) and divisor == 0:
        failure = failure_among((dividend,))
        return _undefined("division by zero") if failure is None else failure
    try:
        return finite(dividend / divisor)
    except OverflowError:
        return _undefined("overflow")


def total(numbers: Iterable[Number]) -> Number:
    """The sum of some numbers, rounded once, so it does not depend on order; of none it is 0."""
    numbers = tuple(numbers)
    if _plain(numbers):
        return finite(_sum(numbers))
    parts = [_part(number) for number in numbers]
    if any(part.unknown for part in parts):
        return Unknown(cause for part in parts for cause in part.causes)
    lo, hi = _sum(part.lo for part in parts), _sum(part.hi for part in parts)
    if _overflowed(lo, [part.lo for part in parts]) or _overflowed(hi, [part.hi for part in parts]):
        return _undefined("overflow")
    return _bounded(lo, hi, parts, _sum)


def smallest(numbers: Iterable[Number]) -> Number:
    """The least of some numbers; of none it is unknown. An unknown part leaves an upper bound."""
    return _least(numbers)


def largest(numbers: Iterable[Number]) -> Number:
    """The greatest of some numbers; of none it is unknown. An unknown part leaves a lower bound."""
    least = _least(number if isinstance(number, Unknown) else -number for number in numbers)
    return least if isinstance(least, Unknown) else -least


class _Part(NamedTuple):
    """Any number as two ends; an unknown one is open on both sides."""

    lo: float
    hi: float
    nominal: float | None
    basis: tuple[str, ...]
    causes: Causes
    unknown: bool = False


def _part(number: Number) -> _Part:
    if isinstance(number, Unknown):
        return _Part(-math.inf, math.inf, None, (UNRECORDED,), number.causes, unknown=True)
    if isinstance(number, Bounds):
        return _Part(number.lo, number.hi, number.nominal, number.basis, number.causes)
    if not math.isfinite(number):
        return _part(_undefined("overflow"))
    return _Part(float(number), float(number), float(number), (), ())


def _least(numbers: Iterable[Number]) -> Number:
    numbers = tuple(numbers)
    if not numbers:
        return _undefined("least or greatest of nothing")
    if _plain(numbers):
        return min(numbers)
    parts = [_part(number) for number in numbers]
    lo, hi = min(part.lo for part in parts), min(part.hi for part in parts)
    # a part that lies above all of another cannot be the least, whatever it turns out to be
    relevant = [part for part in parts if part.lo <= hi]
    causes = sorted({cause for part in relevant for cause in part.causes}, key=Cause.order)
    if causes and (causes[0].reason == CALCULATION_ERROR or (lo == -math.inf and hi == math.inf)):
        return Unknown(causes)
    return _bounded(lo, hi, relevant, min)


def _bounded(lo: float, hi: float, parts: list[_Part],
             combine: Callable[[list[float]], float]) -> float | Bounds:
    nominals = [part.nominal for part in parts if part.nominal is not None]
    return bounded(lo, hi, combine(nominals) if len(nominals) == len(parts) else None,
                   tuple(sorted({basis for part in parts for basis in part.basis})),
                   tuple(sorted({cause for part in parts for cause in part.causes},
                                key=Cause.order)))


def _sum(numbers: Iterable[float]) -> float:
    try:
        return math.fsum(numbers)
    except (OverflowError, ValueError):
        return math.nan


def _overflowed(summed: float, ends: list[float]) -> bool:
    return not math.isfinite(summed) and all(map(math.isfinite, ends))


def _undefined(detail: str) -> Unknown:
    return Unknown.because(OUTSIDE_METHOD, detail=detail)


def _plain(numbers: tuple[Number, ...]) -> TypeGuard[tuple[float, ...]]:
    return all(type(number) is float and math.isfinite(number) for number in numbers)
