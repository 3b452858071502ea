"""A number known only between two ends.

A tolerance, an instrument's uncertainty, a pack's stated assumption and an open side are all bounds.
Ends are closed; an open side is minus or plus infinity. Arithmetic takes the ends through the same
floating-point operations a point would go through: rounding is monotone, so the result contains the
result of every point inside. A number that occurs twice in an expression is treated as if it were
two: bounds are then wide, never wrong.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Final, NoReturn

from garboard.values.reasons import OUTSIDE_METHOD, WITHIN_UNCERTAINTY, Cause, Causes, merged
from garboard.values.unknown import Truth, Unknown

TOLERANCE: Final = "tolerance"
UNCERTAINTY: Final = "uncertainty"
ASSUMPTION: Final = "assumption"
UNRECORDED: Final = "unrecorded"
#: What bounds can rest on.
BASES: Final = (TOLERANCE, UNCERTAINTY, ASSUMPTION, UNRECORDED)

_INF: Final = math.inf


class Bounds:
    """``[lo, hi]`` in a canonical unit, with the nominal figure where there is one.

    ``causes`` name what would have to be known better for a straddled limit to be decided;
    ``basis`` says what the bounds rest on. An interval from an assumption or an unrecorded fact has
    no nominal.
    """

    __slots__ = ("basis", "causes", "hi", "lo", "nominal")

    def __init__(self, lo: float, hi: float, nominal: float | None = None, *,
                 basis: tuple[str, ...] = (TOLERANCE,), causes: Causes = ()) -> None:
        if not lo <= hi or lo == _INF or hi == -_INF:
            raise ValueError(f"bounds {lo!r} to {hi!r} do not enclose a number")
        if nominal is not None and not lo <= nominal <= hi:
            raise ValueError(f"nominal {nominal!r} lies outside {lo!r} to {hi!r}")
        if not set(basis) <= set(BASES):
            raise ValueError(f"unknown basis in {basis!r}")
        self.lo, self.hi, self.nominal = lo, hi, nominal
        self.basis = tuple(sorted(set(basis)))
        self.causes = causes or (Cause(WITHIN_UNCERTAINTY),)

    @property
    def assumed(self) -> bool:
        """Whether a pack's or record's stated assumption is part of it."""
        return ASSUMPTION in self.basis

    def contains(self, number: float) -> bool:
        """Whether a point lies between the ends, ends included."""
        return self.lo <= number <= self.hi

    def collapsed(self) -> float | Bounds:
        """The nominal figure where there is one, else the bounds themselves."""
        return self if self.nominal is None else self.nominal

    # comparison ---------------------------------------------------------------------------------
    def _compare(self, other: object, decide: Callable[[Bounds, Bounds], bool | None]) -> Truth:
        if isinstance(other, Unknown):
            return other.joined(self)
        right = _as_bounds(other)
        if right is None:
            return NotImplemented
        verdict = decide(self, right)
        if verdict is not None:
            return verdict
        return Unknown(merged(_own(self), _own(right)) or self.causes)

    def __le__(self, other: object) -> Truth:
        return self._compare(other, lambda a, b: True if a.hi <= b.lo else
                             False if a.lo > b.hi else None)

    def __lt__(self, other: object) -> Truth:
        return self._compare(other, lambda a, b: True if a.hi < b.lo else
                             False if a.lo >= b.hi else None)

    def __ge__(self, other: object) -> Truth:
        return self._compare(other, lambda a, b: True if a.lo >= b.hi else
                             False if a.hi < b.lo else None)

    def __gt__(self, other: object) -> Truth:
        return self._compare(other, lambda a, b: True if a.lo > b.hi else
                             False if a.hi <= b.lo else None)

    def __eq__(self, other: object) -> Truth:  # type: ignore[override]
        if isinstance(other, str):
            return False
        return self._compare(other, lambda a, b: False if a.hi < b.lo or b.hi < a.lo else
                             True if a.lo == a.hi == b.lo == b.hi else None)

    def __ne__(self, other: object) -> Truth:  # type: ignore[override]
        return (self == other) ^ True

    def __bool__(self) -> NoReturn:
        raise TypeError("the truth value of bounds is not defined")

    # arithmetic ---------------------------------------------------------------------------------
    def _combine(self, other: object, ends: Callable[[Bounds, Bounds], tuple[float, float]],
                 point: Callable[[float, float], float]) -> float | Bounds | Unknown:
        if isinstance(other, Unknown):
            return other.joined(self)
        right = _as_bounds(other)
        if right is None:
            return NotImplemented
        return _result(self, right, ends, point)

    def _reflected(self, other: object, ends: Callable[[Bounds, Bounds], tuple[float, float]],
                   point: Callable[[float, float], float]) -> float | Bounds | Unknown:
        left = _as_bounds(other)
        return NotImplemented if left is None else _result(left, self, ends, point)

    def __add__(self, other: object) -> float | Bounds | Unknown:
        return self._combine(other, _sum, lambda a, b: a + b)

    def __radd__(self, other: object) -> float | Bounds | Unknown:
        return self._reflected(other, _sum, lambda a, b: a + b)

    def __sub__(self, other: object) -> float | Bounds | Unknown:
        return self._combine(other, _difference, lambda a, b: a - b)

    def __rsub__(self, other: object) -> float | Bounds | Unknown:
        return self._reflected(other, _difference, lambda a, b: a - b)

    def __mul__(self, other: object) -> float | Bounds | Unknown:
        return self._combine(other, _product, lambda a, b: a * b)

    def __rmul__(self, other: object) -> float | Bounds | Unknown:
        return self._reflected(other, _product, lambda a, b: a * b)

    def __truediv__(self, other: object) -> float | Bounds | Unknown:
        return self._combine(other, _quotient, lambda a, b: a / b)

    def __rtruediv__(self, other: object) -> float | Bounds | Unknown:
        return self._reflected(other, _quotient, lambda a, b: a / b)

    def __neg__(self) -> Bounds:
        nominal = None if self.nominal is None else -self.nominal
        return Bounds(-self.hi, -self.lo, nominal, basis=self.basis, causes=self.causes)

    def __pos__(self) -> Bounds:
        return self

    def __abs__(self) -> Bounds:
        if self.lo >= 0:
            return self
        if self.hi <= 0:
            return -self
        nominal = None if self.nominal is None else abs(self.nominal)
        return Bounds(0.0, max(-self.lo, self.hi), nominal, basis=self.basis, causes=self.causes)

    # identity -----------------------------------------------------------------------------------
    def same_as(self, other: object) -> bool:
        """Whether ``other`` has the same ends, nominal, basis and causes."""
        return isinstance(other, Bounds) and self._key() == other._key()

    def _key(self) -> tuple[object, ...]:
        return (self.lo, self.hi, self.nominal, self.basis, self.causes)

    def __hash__(self) -> int:
        return hash(self._key())

    def __reduce__(self) -> tuple[object, ...]:
        return (_rebuilt, self._key())

    def __repr__(self) -> str:
        return f"Bounds({self.lo!r}, {self.hi!r}, {self.nominal!r}, basis={self.basis!r})"


def _rebuilt(lo: float, hi: float, nominal: float | None, basis: tuple[str, ...],
             causes: Causes) -> Bounds:
    return Bounds(lo, hi, nominal, basis=basis, causes=causes)


def _point(number: float) -> Bounds:
    exact = Bounds.__new__(Bounds)
    exact.lo = exact.hi = exact.nominal = number
    exact.basis, exact.causes = (), ()
    return exact


def _as_bounds(thing: object) -> Bounds | None:
    if isinstance(thing, Bounds):
        return thing
    if isinstance(thing, bool) or not isinstance(thing, (int, float)):
        return None
    return _point(float(thing))


def _own(side: Bounds) -> Causes:
    return side.causes


def _result(left: Bounds, right: Bounds, ends: Callable[[Bounds, Bounds], tuple[float, float]],
            point: Callable[[float, float], float]) -> float | Bounds | Unknown:
    causes = merged(left.causes, right.causes)
    try:
        lo, hi = ends(left, right)
        nominal = (None if left.nominal is None or right.nominal is None
                   else point(left.nominal, right.nominal))
    except ZeroDivisionError:
        return Unknown((*causes, Cause(OUTSIDE_METHOD, detail="division by something that may be zero")))
    finite = all(map(math.isfinite, (left.lo, left.hi, right.lo, right.hi)))
    if (finite and not (math.isfinite(lo) and math.isfinite(hi))) or (
            nominal is not None and not math.isfinite(nominal)) or lo == _INF or hi == -_INF:
        return Unknown((*causes, Cause(OUTSIDE_METHOD, detail="overflow")))
    basis = tuple(sorted({*left.basis, *right.basis}))
    if lo == hi and ASSUMPTION not in basis:
        return lo
    return Bounds(lo, hi, nominal, basis=basis, causes=causes)


def _sum(a: Bounds, b: Bounds) -> tuple[float, float]:
    return a.lo + b.lo, a.hi + b.hi


def _difference(a: Bounds, b: Bounds) -> tuple[float, float]:
    return a.lo - b.hi, a.hi - b.lo


def _product(a: Bounds, b: Bounds) -> tuple[float, float]:
    corners = [0.0 if x == 0 or y == 0 else x * y for x in (a.lo, a.hi) for y in (b.lo, b.hi)]
    return min(corners), max(corners)


def _quotient(a: Bounds, b: Bounds) -> tuple[float, float]:
    if b.lo <= 0 <= b.hi:
        raise ZeroDivisionError
    corners = [0.0 if math.isinf(x) and math.isinf(y) else x / y
               for x in (a.lo, a.hi) for y in (b.lo, b.hi)]
    return min(corners), max(corners)
