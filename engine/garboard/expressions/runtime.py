"""What generated code calls where operators alone do not do: things that are not there, and loops.

Everything takes exact values, bounds and unknowns. A calculation error in any part that was looked
at is the result.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import Any, Final

from garboard.values import (
    NOT_RECORDED,
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Truth,
    Unknown,
    chosen,
    largest,
    member_of,
    negated,
    smallest,
    total,
)
from garboard.values.bounds import bounded
from garboard.values.logic import failure_among

THERE_IS_NONE: Final = "there is none"


def path_of(owner: object, name: str) -> str:
    """The data path of a name of a thing, as far as the thing can be named."""
    identity = owner.get("id") if isinstance(owner, Mapping) else None
    return f"{identity}.{name}" if isinstance(identity, str) else name


def none_there(owner: object, name: str) -> Unknown:
    """What a relation leads to when there is no such thing."""
    return Unknown.because(OUTSIDE_METHOD, path_of(owner, name), THERE_IS_NONE)


def followed(owner: Any, name: str) -> Any:
    """The thing a relation leads to; unknown when there is none."""
    thing = owner[name]
    return none_there(owner, name) if thing is None else thing


def several(owner: Any, name: str) -> tuple[Any, ...] | Unknown:
    """The things a relation leads to; unknown when it is not known whether there are any."""
    things = owner[name]
    if things is None:
        return none_there(owner, name)
    if isinstance(things, Unknown):
        return things
    if isinstance(things, (tuple, list)):
        return tuple(things)
    raise TypeError(f"{name} does not lead to several things, but to {things!r}")


def exists(owner: Any, names: tuple[str, ...]) -> Truth:
    """Whether a relation, or a chain of them, leads to a thing."""
    for name in names:
        if owner is None:
            return False
        owner = owner[name]
    return owner if isinstance(owner, Unknown) else owner is not None


_CLASSES: Final[Mapping[str, tuple[type, ...]]] = {
    "number": (float, int), "count": (int,), "truth": (bool,), "text": (str,), "texts": (tuple,),
    "date": (date,),
}


def usable(value: object, kind: str, owner: object, name: str, notes: list[object]) -> Any:
    """A value read from a thing, if it is of its kind, bounds or unknown.

    Bounds that rest on an assumption are noted. Nothing at all is not recorded; anything else is a
    failure of whoever gave it.
    """
    if isinstance(value, Unknown):
        return value
    if value is None:
        return Unknown.because(NOT_RECORDED, path_of(owner, name))
    if isinstance(value, Bounds) and kind in ("number", "count"):
        if value.assumed:
            notes.append(value)
        return value
    if isinstance(value, _CLASSES[kind]) and (kind == "truth" or not isinstance(value, bool)):
        return value
    raise TypeError(f"{path_of(owner, name)} is {value!r}, which is not a {kind}")


# loops -------------------------------------------------------------------------------------------
def counted(certain: int, doubtful: Sequence[Truth]) -> Number:
    """How many: those that certainly count, and those of which it is not known whether they do."""
    if not doubtful:
        return certain
    joined = _joined(doubtful)
    if joined.is_error:
        return joined
    return bounded(certain, certain + len(doubtful), None, (UNRECORDED,), joined.causes)


Doubtful = Sequence[tuple[Unknown, Number]]


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


def _extreme(parts: Sequence[Number], doubtful: Doubtful, extreme: Any) -> Number:
    failure = failure_among([*parts, *(value for pair in doubtful for value in pair)])
    if failure is not None:
        return failure
    if not parts:
        # perhaps there is nothing to take the least of
        return _joined([value for pair in doubtful for value in pair])
    result: Number = extreme(parts)
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


# functions ---------------------------------------------------------------------------------------
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


# truth -------------------------------------------------------------------------------------------
def absent(truth: object) -> Truth:
    """Kleene's not, for truth values only."""
    if truth is True or truth is False or isinstance(truth, Unknown):
        return negated(truth)
    raise TypeError(f"{truth!r} is neither true nor false")


def compared(left: Any, operator: str, right: Any) -> Truth:
    """One comparison of two values."""
    verdict: Truth = _COMPARE[operator](left, right)
    return verdict


def settled(operators: Sequence[str], values: Sequence[Any], verdict: Truth) -> Truth:
    """A chain that is not known yet may still be false because its outer parts contradict it.

    ``a < x < b`` holds for no ``x`` when ``a >= b``.
    """
    for first in range(len(operators) - 1):
        sign = operators[first]
        for last in range(first + 1, len(operators)):
            joined = _JOINED.get((sign, operators[last]))
            if joined is None:
                break
            sign = joined
            verdict = verdict & compared(values[first], sign, values[last + 1])
    return verdict


_COMPARE: Final[Mapping[str, Callable[[Any, Any], Any]]] = {
    "<": lambda a, b: a < b, "<=": lambda a, b: a <= b, ">": lambda a, b: a > b,
    ">=": lambda a, b: a >= b, "==": lambda a, b: a == b, "!=": lambda a, b: a != b,
    "in": member_of, "not in": lambda a, b: absent(member_of(a, b)),
}
_JOINED: Final = {
    (one, other): "==" if one == other == "==" else weak if strict not in (one, other) else strict
    for strict, weak in (("<", "<="), (">", ">="))
    for one in (strict, weak, "==") for other in (strict, weak, "==")
}
