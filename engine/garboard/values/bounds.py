"""A number known only between two ends.

A tolerance, an instrument's uncertainty, a pack's stated assumption and an open side are all
bounds. Ends are closed; an open side is minus or plus infinity. A number that occurs twice in an
expression is treated as if it were two: bounds are then wide, never wrong. Bounds whose ends meet
become a plain number, unless an assumption is part of them.
"""

from __future__ import annotations

import math
from typing import Final, NoReturn

from garboard.values.intervals import DIFFERENCE, PRODUCT, QUOTIENT, SUM, Ends, Operation
from garboard.values.reasons import (
    CALCULATION_ERROR,
    OUTSIDE_METHOD,
    WITHIN_UNCERTAINTY,
    Cause,
    Causes,
    merged,
)
from garboard.values.unknown import Truth, Unknown

TOLERANCE: Final = "tolerance"
UNCERTAINTY: Final = "uncertainty"
ASSUMPTION: Final = "assumption"
UNRECORDED: Final = "unrecorded"
#: What bounds can rest on.
BASES: Final = (TOLERANCE, UNCERTAINTY, ASSUMPTION, UNRECORDED)
_BASES: Final = frozenset(BASES)
_WITHOUT_NOMINAL: Final = frozenset({ASSUMPTION, UNRECORDED})

_INF: Final = math.inf


class Bounds:
    """``[lo, hi]`` in a canonical unit, with the nominal figure where there is one.

    ``causes`` name what would have to be known better for a straddled limit to be decided;
    ``basis`` says what the bounds rest on. Bounds from an assumption or an unrecorded fact have no
    nominal, and a failed calculation has no bounds; both are refused with ``ValueError``.
    """

    __slots__ = ("basis", "causes", "hi", "lo", "nominal")

    def __init__(self, lo: float, hi: float, nominal: float | None = None, *,
                 basis: tuple[str, ...] = (TOLERANCE,), causes: Causes = ()) -> None:
        if not lo <= hi or lo == _INF or hi == -_INF:
            raise ValueError(f"bounds {lo!r} to {hi!r} do not enclose a number")
        if nominal is not None and not lo <= nominal <= hi:
            raise ValueError(f"nominal {nominal!r} lies outside {lo!r} to {hi!r}")
        if not _BASES.issuperset(basis):
            raise ValueError(f"unknown basis in {basis!r}")
        if nominal is not None and not _WITHOUT_NOMINAL.isdisjoint(basis):
            raise ValueError(f"bounds that rest on {basis!r} have no nominal")
        for cause in causes:
            if cause.reason == CALCULATION_ERROR:
                raise ValueError("a failed calculation has no bounds")
        self.lo, self.hi, self.nominal = lo, hi, nominal
        self.basis = basis if len(basis) == 1 else tuple(sorted(set(basis)))
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
    def __le__(self, other: object) -> Truth:
        right = _operand(other)
        if isinstance(right, Bounds):
            return _verdict(self, right, self.hi <= right.lo, self.lo > right.hi)
        return NotImplemented if right is None else right.joined(self)

    def __lt__(self, other: object) -> Truth:
        right = _operand(other)
        if isinstance(right, Bounds):
            return _verdict(self, right, self.hi < right.lo, self.lo >= right.hi)
        return NotImplemented if right is None else right.joined(self)

    def __ge__(self, other: object) -> Truth:
        right = _operand(other)
        if isinstance(right, Bounds):
            return _verdict(self, right, self.lo >= right.hi, self.hi < right.lo)
        return NotImplemented if right is None else right.joined(self)

    def __gt__(self, other: object) -> Truth:
        right = _operand(other)
        if isinstance(right, Bounds):
            return _verdict(self, right, self.lo > right.hi, self.hi <= right.lo)
        return NotImplemented if right is None else right.joined(self)

    def __eq__(self, other: object) -> Truth:  # type: ignore[override]
        right = _operand(other)
        if isinstance(right, Bounds):
            return _verdict(self, right, self.lo == self.hi == right.lo == right.hi,
                            self.hi < right.lo or right.hi < self.lo)
        return NotImplemented if right is None else right.joined(self)

    def __ne__(self, other: object) -> Truth:  # type: ignore[override]
        return (self == other) ^ True

    def __bool__(self) -> NoReturn:
        raise TypeError("the truth value of bounds is not defined")

    # arithmetic ---------------------------------------------------------------------------------
    def __add__(self, other: object) -> float | Bounds | Unknown:
        right = _operand(other)
        return NotImplemented if right is None else _result(SUM, self, right)

    def __radd__(self, other: object) -> float | Bounds | Unknown:
        left = _operand(other)
        return NotImplemented if left is None else _result(SUM, left, self)

    def __sub__(self, other: object) -> float | Bounds | Unknown:
        right = _operand(other)
        return NotImplemented if right is None else _result(DIFFERENCE, self, right)

    def __rsub__(self, other: object) -> float | Bounds | Unknown:
        left = _operand(other)
        return NotImplemented if left is None else _result(DIFFERENCE, left, self)

    def __mul__(self, other: object) -> float | Bounds | Unknown:
        right = _operand(other)
        return NotImplemented if right is None else _result(PRODUCT, self, right)

    def __rmul__(self, other: object) -> float | Bounds | Unknown:
        left = _operand(other)
        return NotImplemented if left is None else _result(PRODUCT, left, self)

    def __truediv__(self, other: object) -> float | Bounds | Unknown:
        right = _operand(other)
        return NotImplemented if right is None else _result(QUOTIENT, self, right)

    def __rtruediv__(self, other: object) -> float | Bounds | Unknown:
        left = _operand(other)
        return NotImplemented if left is None else _result(QUOTIENT, left, self)

    def __neg__(self) -> Bounds:
        turned = Bounds.__new__(Bounds)
        turned.lo, turned.hi = -self.hi, -self.lo
        turned.nominal = None if self.nominal is None else -self.nominal
        turned.basis, turned.causes = self.basis, self.causes
        return turned

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

    def _key(self) -> tuple[float, float, float | None, tuple[str, ...], Causes]:
        return (self.lo, self.hi, self.nominal, self.basis, self.causes)

    def __hash__(self) -> int:
        return hash(self._key())

    def __reduce__(self) -> tuple[object, ...]:
        return (_rebuilt, self._key())

    def __repr__(self) -> str:
        return f"Bounds({self.lo!r}, {self.hi!r}, {self.nominal!r}, basis={self.basis!r})"


def bounded(lo: float, hi: float, nominal: float | None, basis: tuple[str, ...],
            causes: Causes) -> float | Bounds:
    """Bounds, or the plain number where the ends meet and no assumption is part of them."""
    if lo == hi and ASSUMPTION not in basis:
        return lo
    return Bounds(lo, hi, nominal, basis=basis, causes=causes)


def _rebuilt(lo: float, hi: float, nominal: float | None, basis: tuple[str, ...],
             causes: Causes) -> Bounds:
    return Bounds(lo, hi, nominal, basis=basis, causes=causes)


def _operand(thing: object) -> Bounds | Unknown | None:
    """The other side of an operation; a plain number as ends that meet, without causes."""
    if isinstance(thing, (Bounds, Unknown)):
        return thing
    if isinstance(thing, bool) or not isinstance(thing, (int, float)):
        return None
    exact = Bounds.__new__(Bounds)
    exact.lo = exact.hi = exact.nominal = float(thing)
    exact.basis, exact.causes = (), ()
    return exact


def _verdict(left: Bounds, right: Bounds, holds: bool, fails: bool) -> Truth:
    if holds or fails:
        return holds
    return Unknown(merged(left.causes, right.causes))


def _result(operation: Operation, left: Bounds | Unknown,
            right: Bounds | Unknown) -> float | Bounds | Unknown:
    if isinstance(left, Unknown):
        return left.joined(right)
    if isinstance(right, Unknown):
        return right.joined(left)
    causes = merged(left.causes, right.causes)
    a, b = (left.lo, left.hi), (right.lo, right.hi)
    try:
        ends = operation.ends(a, b)
    except ZeroDivisionError:
        return _undefined(causes, "division by something that may be zero")
    nominal = (None if left.nominal is None or right.nominal is None
               else operation.point(left.nominal, right.nominal))
    if _overflows(a, b, ends) or (nominal is not None and math.isinf(nominal)):
        return _undefined(causes, "overflow")
    basis = left.basis if left.basis == right.basis else (*left.basis, *right.basis)
    return bounded(*ends, nominal, basis, causes)


def _overflows(a: Ends, b: Ends, ends: Ends) -> bool:
    """Whether an end is infinite, or no number at all, that should not be."""
    lo, hi = ends
    if not lo <= hi or lo == _INF or hi == -_INF:
        return True
    open_sided = any(map(math.isinf, (*a, *b)))
    return not open_sided and (math.isinf(lo) or math.isinf(hi))


def _undefined(causes: Causes, detail: str) -> Unknown:
    return Unknown((*causes, Cause(OUTSIDE_METHOD, detail=detail)))
