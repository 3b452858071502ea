"""Three-valued logic that operators alone cannot spell.

All of them evaluate every part, so the list of missing facts does not depend on order, and a
calculation error in any part, needed or not, is the result.
"""

from __future__ import annotations

from collections.abc import Iterable

from garboard.values.bounds import UNRECORDED, Bounds, bounded
from garboard.values.unknown import Truth, Unknown


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
    """``if_true`` or ``if_false``; with an unknown condition, what both agree on, else unknown.

    Two numbers give bounds that contain both.
    """
    failure = failure_among((condition, if_true, if_false))
    if failure is not None:
        return failure
    if condition is True:
        return if_true
    if condition is False:
        return if_false
    if not isinstance(condition, Unknown):
        raise TypeError(f"a condition is true, false or unknown, not {condition!r}")
    if same_value(if_true, if_false) and not isinstance(if_true, (Unknown, Bounds)):
        return if_true  # two unknowns or bounds that look the same may still differ
    one, other = _ends(if_true), _ends(if_false)
    either = condition.joined(if_true).joined(if_false)
    if one is None or other is None:
        return either
    basis = {UNRECORDED}.union(*(part.basis for part in (if_true, if_false)
                                 if isinstance(part, Bounds)))
    return bounded(min(one[0], other[0]), max(one[1], other[1]), None, tuple(sorted(basis)),
                   either.causes)


def member_of(thing: object, collection: Iterable[object] | Unknown) -> Truth:
    """Whether ``thing`` equals one of ``collection``; unknown sides give an unknown answer."""
    if isinstance(collection, Unknown):
        return collection.joined(thing)
    failure = failure_among((thing,))
    return failure if failure is not None else any_of(_equal(thing, each) for each in collection)


def failure_among(values: Iterable[object]) -> Unknown | None:
    """All calculation errors among some values as one unknown, or ``None``."""
    failure: Unknown | None = None
    for value in values:
        if isinstance(value, Unknown) and value.is_error:
            failure = value if failure is None else failure.joined(value)
    return failure


def _equal(one: object, other: object) -> Truth:
    verdict: Truth = one == other
    return verdict


def _ends(number: object) -> tuple[float, float] | None:
    if isinstance(number, Bounds):
        return number.lo, number.hi
    if isinstance(number, bool) or not isinstance(number, (int, float)):
        return None
    return float(number), float(number)
