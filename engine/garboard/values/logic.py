"""Helpers of three-valued logic and of arithmetic that operators alone cannot spell.

All of them evaluate every part, so the list of missing facts does not depend on order.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from garboard.values.bounds import Bounds
from garboard.values.reasons import OUTSIDE_METHOD
from garboard.values.unknown import Truth, Unknown

Number = float | Bounds | Unknown


def all_of(truths: Iterable[Truth]) -> Truth:
    """True when every part is true (and when there is none)."""
    verdict: Truth = True
    for truth in truths:
        verdict = verdict & truth
    return verdict


def any_of(truths: Iterable[Truth]) -> Truth:
    """True when one part is true; false when there is none."""
    verdict: Truth = False
    for truth in truths:
        verdict = verdict | truth
    return verdict


def negated(truth: Truth) -> Truth:
    """Kleene's not."""
    return truth ^ True


def same_value(one: object, other: object) -> bool:
    """Whether two values are the same thing, unknowns and bounds included (never unknown)."""
    if isinstance(one, (Unknown, Bounds)):
        return one.same_as(other)
    if isinstance(other, (Unknown, Bounds)):
        return False
    return type(one) is type(other) and one == other


def chosen(condition: Truth, if_true: object, if_false: object) -> object:
    """``if_true`` or ``if_false``; with an unknown condition, what both agree on, else unknown."""
    for branch in (if_true, if_false):
        if isinstance(branch, Unknown) and branch.is_error:
            return branch
    if condition is True:
        return if_true
    if condition is False:
        return if_false
    if not isinstance(condition, Unknown):
        raise TypeError(f"a condition is true, false or unknown, not {condition!r}")
    if condition.is_error:
        return condition
    if same_value(if_true, if_false):
        return if_true
    ends = [_ends(if_true), _ends(if_false)]
    if ends[0] is not None and ends[1] is not None:
        (lo1, hi1), (lo2, hi2) = ends[0], ends[1]
        return Bounds(min(lo1, lo2), max(hi1, hi2), basis=("unrecorded",),
                      causes=condition.joined(if_true).joined(if_false).causes)
    return condition.joined(if_true).joined(if_false)


def member_of(thing: object, collection: Iterable[object]) -> Truth:
    """Whether ``thing`` equals one of ``collection``; unknown sides give an unknown answer."""
    if isinstance(collection, Unknown):
        return collection.joined(thing)
    return any_of(_equal(thing, each) for each in collection)


def _equal(one: object, other: object) -> Truth:
    verdict: Truth = one == other
    return verdict


def finite(number: Number) -> Number:
    """The number itself, or unknown (outside method) where it overflowed."""
    if isinstance(number, float) and not math.isfinite(number):
        return Unknown.because(OUTSIDE_METHOD, detail="overflow")
    return number


def quotient(dividend: Number, divisor: Number) -> Number:
    """Division; by zero it gives unknown (outside method)."""
    try:
        return finite(dividend / divisor)
    except ZeroDivisionError:
        return Unknown.because(OUTSIDE_METHOD, detail="division by zero")
    except OverflowError:
        return Unknown.because(OUTSIDE_METHOD, detail="overflow")


def smallest(numbers: Iterable[Number]) -> Number:
    """The least of some numbers; of none it is unknown. An unknown part leaves an upper bound."""
    return _extreme(numbers, sign=1.0)


def largest(numbers: Iterable[Number]) -> Number:
    """The greatest of some numbers; of none it is unknown. An unknown part leaves a lower bound."""
    return _extreme(numbers, sign=-1.0)


def _ends(number: object) -> tuple[float, float] | None:
    if isinstance(number, Bounds):
        return number.lo, number.hi
    if isinstance(number, bool) or not isinstance(number, (int, float)):
        return None
    return float(number), float(number)


def _extreme(numbers: Iterable[Number], sign: float) -> Number:
    parts = list(numbers)
    if not parts:
        return Unknown.because(OUTSIDE_METHOD, detail="least or greatest of nothing")
    if not any(isinstance(part, (Bounds, Unknown)) for part in parts):
        exact = [part for part in parts if isinstance(part, (int, float))]
        return min(exact) if sign > 0 else max(exact)
    lo = hi = nominal = math.inf
    nominal_known = True
    causes: set[object] = set()
    basis: set[str] = set()
    for part in parts:
        if isinstance(part, Unknown):
            if part.is_error:
                return part
            part_lo, part_hi, part_nominal = -math.inf, math.inf, None
            basis.add("unrecorded")
        elif isinstance(part, Bounds):
            part_lo, part_hi = sorted((sign * part.lo, sign * part.hi))
            part_nominal = None if part.nominal is None else sign * part.nominal
            basis |= set(part.basis)
        else:
            part_lo = part_hi = part_nominal = sign * part
        causes |= set(getattr(part, "causes", ()))
        lo, hi = min(lo, part_lo), min(hi, part_hi)
        if part_nominal is None:
            nominal_known = False
        else:
            nominal = min(nominal, part_nominal)
    known = Unknown(causes)  # type: ignore[arg-type]
    if lo == -math.inf and hi == math.inf:
        return known
    if lo == hi and "assumption" not in basis:
        return sign * lo
    ends = sorted((sign * lo, sign * hi))
    return Bounds(ends[0], ends[1], sign * nominal if nominal_known else None,
                  basis=tuple(sorted(basis)), causes=known.causes)
