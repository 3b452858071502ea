"""A straight scale from values to places on a drawing, with round steps."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

_STEPS: Final = (1.0, 2.0, 5.0, 10.0)


@dataclass(frozen=True, slots=True)
class Scale:
    """Maps ``low`` to ``left`` and ``high`` to ``right``; what lies outside is put at the ends."""

    low: float
    high: float
    left: float
    right: float

    def __call__(self, value: float) -> float:
        if self.high == self.low:
            return (self.left + self.right) / 2
        share = (value - self.low) / (self.high - self.low)
        return self.left + min(max(share, 0.0), 1.0) * (self.right - self.left)

    def steps(self, most: int) -> list[float]:
        """Round values inside the scale, at most ``most`` and a few."""
        size = step_for(self.high - self.low, most)
        first = math.ceil(self.low / size)
        last = math.floor(self.high / size + 1e-9)
        return [number * size for number in range(first, last + 1)]


def step_for(span: float, most: int) -> float:
    """A step of 1, 2 or 5 times a power of ten that cuts ``span`` into at most ``most``."""
    if not span > 0 or not math.isfinite(span):
        return 1.0
    size = 10.0 ** math.floor(math.log10(span / most))
    return next(size * step for step in _STEPS if span / (size * step) <= most)


def around(values: Iterable[float], left: float, right: float) -> Scale:
    """A scale that shows all finite values, and the zero unless they lie far from it."""
    finite = [each for each in values if math.isfinite(each)] or [0.0]
    low, high = min(finite), max(finite)
    if low >= 0:
        return Scale(0.0, high * 1.25 or 1.0, left, right)
    room = (high - low) * 0.15 or abs(low) or 1.0
    return Scale(low - room, high + room, left, right)
