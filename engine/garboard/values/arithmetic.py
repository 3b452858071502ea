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
    return _bounded(lo, hi, parts, _sum, _causes(parts))


def smallest(numbers: Iterable[Number]) -> Number:
    """The least of some numbers; of none it is unknown. An unknown part leaves an upper bound."""
    numbers = tuple(numbers)
    if numbers and _plain(numbers):
        return min(numbers)
    parts = [_part(number) for number in numbers]
    least = min((part.hi for part in parts), default=math.inf)
    # a part that lies above all of another cannot be the least, whatever it turns out to be
    return _outermost([part for part in parts if part.lo <= least], min)


def largest(numbers: Iterable[Number]) -> Number:
    """The greatest of some numbers; of none it is unknown. An unknown part leaves a lower bound."""
    numbers = tuple(numbers)
    if numbers and _plain(numbers):
        return max(numbers)
    parts = [_part(number) for number in numbers]
    greatest = max((part.lo for part in parts), default=-math.inf)
    return _outermost([part for part in parts if part.hi >= greatest], max)


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


def _outermost(relevant: list[_Part], extreme: Callable[[Iterable[float]], float]) -> Number:
    """The least or greatest of those parts that can be it."""
    if not relevant:
        return _undefined("least or greatest of nothing")
    lo, hi = extreme([part.lo for part in relevant]), extreme([part.hi for part in relevant])
    causes = _causes(relevant)
    if causes and (causes[0].reason == CALCULATION_ERROR or (lo == -math.inf and hi == math.inf)):
        return Unknown(causes)
    return _bounded(lo, hi, relevant, extreme, causes)


def _bounded(lo: float, hi: float, parts: list[_Part],
             combine: Callable[[Iterable[float]], float], causes: Causes) -> float | Bounds:
    nominals = [part.nominal for part in parts if part.nominal is not None]
    return bounded(lo, hi, combine(nominals) if len(nominals) == len(parts) else None,
                   tuple(sorted({basis for part in parts for basis in part.basis})), causes)


def _causes(parts: list[_Part]) -> Causes:
    """The causes of all parts in order."""
    found = [part.causes for part in parts if part.causes]
    if not found:
        return ()
    if len(found[0]) == 1 and found.count(found[0]) == len(found):
        return found[0]
    return tuple(sorted({cause for causes in found for cause in causes}, key=Cause.order))


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
    for number in numbers:  # noqa: SIM110 - half the time of all()
        if number.__class__ is not float or number - number != 0.0:
            return False
    return True
