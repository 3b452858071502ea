"""A span of numbers between two ends, each of which belongs to it or not."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal

Order = Literal["less", "equal", "more"]
ORDERS: Final[tuple[Order, ...]] = ("less", "equal", "more")

#: Which orders of two sides make a comparison hold.
HOLDS: Final[dict[str, tuple[Order, ...]]] = {
    "<": ("less",), "<=": ("less", "equal"), ">": ("more",), ">=": ("more", "equal"),
    "==": ("equal",), "!=": ("less", "more")}

#: Results of calculations are right to this share: numbers that have the same 12
#: significant digits are compared as equal.
_WIDER: Final = 2e-11


@dataclass(frozen=True, slots=True)
class Span:
    """All numbers from ``low`` to ``high``; an open end is not one of them."""

    low: float = -math.inf
    high: float = math.inf
    low_open: bool = False
    high_open: bool = False

    def orders(self, other: Span) -> frozenset[Order]:
        """How a number of this span may stand to one of the other."""
        found: set[Order] = set()
        if self.low < other.high:
            found.add("less")
        if self.high > other.low:
            found.add("more")
        low, high = max(self.low, other.low), min(self.high, other.high)
        if low < high or (low == high and self._has(low) and other._has(low)):
            found.add("equal")
        return frozenset(found)

    def _has(self, number: float) -> bool:
        return not ((number == self.low and self.low_open)
                    or (number == self.high and self.high_open))

    def holds_a_whole_number(self) -> bool:
        """Whether a whole number lies in it."""
        if math.isinf(self.low) or math.isinf(self.high):
            return True
        least = math.floor(self.low) + 1 if self.low_open else math.ceil(self.low)
        return least < self.high or (least == self.high and not self.high_open)

    # what comes of calculating with it; ends that were open may count as closed ------------------
    def __neg__(self) -> Span:
        return Span(-self.high, -self.low)

    def __add__(self, other: Span) -> Span:
        return Span(self.low + other.low, self.high + other.high)

    def __sub__(self, other: Span) -> Span:
        return self + -other

    def __mul__(self, other: Span) -> Span:
        return _around(_times(one, two) for one in (self.low, self.high)
                       for two in (other.low, other.high))

    def __truediv__(self, other: Span) -> Span:
        if other.low <= 0 <= other.high:
            positive = self.low >= 0 and other.low >= 0
            return Span(0.0 if positive else -math.inf, math.inf)
        return self * _around((1 / other.low, 1 / other.high))

    def size(self) -> Span:
        """Its numbers without their sign."""
        if self.low <= 0 <= self.high:
            return Span(0.0, max(-self.low, self.high))
        return _around((abs(self.low), abs(self.high)))

    def root(self) -> Span:
        """The square roots of its numbers that have one."""
        return Span(math.sqrt(max(self.low, 0.0)), math.sqrt(max(self.high, 0.0)))

    def widened(self) -> Span:
        """A little wider at both ends, for what rounding may do to a result."""
        return Span(self.low - _WIDER * abs(self.low) if math.isfinite(self.low) else self.low,
                    self.high + _WIDER * abs(self.high) if math.isfinite(self.high)
                    else self.high)

    def with_(self, other: Span) -> Span:
        """The least span that holds both."""
        return Span(min(self.low, other.low), max(self.high, other.high))


ANY: Final = Span()


def point(number: float) -> Span:
    """The span of a single number."""
    return Span(number, number)


def least_of(spans: Iterable[Span]) -> Span:
    """The span of the least of several numbers."""
    all_of = tuple(spans)
    return Span(min(each.low for each in all_of), min(each.high for each in all_of))


def greatest_of(spans: Iterable[Span]) -> Span:
    """The span of the greatest of several numbers."""
    return -least_of(-each for each in spans)


def cut(span: Span, at: Iterable[float]) -> tuple[Span, ...]:
    """A span as points and the open spans between them."""
    inside = sorted({each for each in at if point(each).orders(span) & {"equal"}})
    ends = [each for each in (span.low, span.high) if math.isfinite(each)]
    marks = sorted({*inside, *ends})
    cells: list[Span] = []
    for low, high in zip([-math.inf, *marks], [*marks, math.inf], strict=True):
        if low < high and span.low <= low and high <= span.high:
            cells.append(Span(low, high, True, True))
        if math.isfinite(high) and "equal" in point(high).orders(span):
            cells.append(point(high))
    return tuple(cells) or (span,)


def _times(one: float, two: float) -> float:
    return 0.0 if one == 0 or two == 0 else one * two


def _around(numbers: Iterable[float]) -> Span:
    all_of = tuple(numbers)
    return Span(min(all_of), max(all_of))
