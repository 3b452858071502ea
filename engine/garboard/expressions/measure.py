"""What a number measures: powers of base units, and how large its canonical unit is.

Figures are plain floats in canonical units, so arithmetic is right only where the scales agree: an
ampere-hour times a volt is a watt-hour, but an ampere times a second is not an ampere-hour.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from math import isqrt
from typing import Final

from garboard.values import DIMENSIONS

TEMPERATURE: Final = "temperature"
DIFFERENCE: Final = "temperature_difference"


@dataclass(frozen=True, slots=True)
class Measure:
    """``powers`` of m, kg, s, A, K and the degree of angle; ``scale`` of one unit to base units.

    ``unit`` is how the unit is written. ``zero_point`` marks temperatures, which count from a zero
    of their own: differences between them are another measure.
    """

    powers: tuple[int, ...]
    scale: Fraction
    unit: str
    zero_point: bool = False

    def __mul__(self, other: Measure) -> Measure:
        powers = tuple(a + b for a, b in zip(self.powers, other.powers, strict=True))
        return _named(powers, self.scale * other.scale, _product(self.unit, other.unit))

    def __truediv__(self, other: Measure) -> Measure:
        powers = tuple(a - b for a, b in zip(self.powers, other.powers, strict=True))
        return _named(powers, self.scale / other.scale, _quotient(self.unit, other.unit))

    def agrees(self, other: Measure) -> bool:
        """Whether figures of both can be compared and added as they are."""
        return (self.powers, self.scale, self.zero_point) == (
            other.powers, other.scale, other.zero_point)

    def same_kind(self, other: Measure) -> bool:
        """Whether both measure the same, if perhaps in units of different size."""
        return self.powers == other.powers and self.zero_point == other.zero_point

    @property
    def is_bare(self) -> bool:
        """Whether it is a plain number: a count, a share, a factor."""
        return self.scale == 1 and not any(self.powers)

    @property
    def dimension(self) -> str | None:
        """The name of the dimension, if it has one; a plain number has none."""
        return None if self.is_bare else _names().get((self.powers, self.scale, self.zero_point))

    def root(self) -> Measure | None:
        """The measure of a square root, if there is one."""
        over, under = isqrt(self.scale.numerator), isqrt(self.scale.denominator)
        if any(power % 2 for power in self.powers) or Fraction(over, under) ** 2 != self.scale:
            return None
        return _named(tuple(power // 2 for power in self.powers), Fraction(over, under),
                      f"√({self.unit})")


BARE: Final = Measure((0,) * 6, Fraction(1), "")


@cache
def measure_of(dimension: str) -> Measure:
    """The measure of a named dimension; KeyError for a name that is none."""
    known = DIMENSIONS[dimension]
    if dimension == "ratio":
        return BARE
    angle = 1 if dimension == "angle" else 0
    return Measure((*known.exponents, angle), known.scale, known.unit, dimension == TEMPERATURE)


@cache
def _names() -> dict[tuple[tuple[int, ...], Fraction, bool], str]:
    names: dict[tuple[tuple[int, ...], Fraction, bool], str] = {}
    for name in DIMENSIONS:
        measure = measure_of(name)
        names.setdefault((measure.powers, measure.scale, measure.zero_point), name)
    return names


def _named(powers: tuple[int, ...], scale: Fraction, unit: str) -> Measure:
    plain = Measure(powers, scale, unit)
    if plain.is_bare:
        return BARE
    name = plain.dimension
    return plain if name is None else measure_of(name)


def _product(one: str, other: str) -> str:
    return "·".join(unit for unit in (one, other) if unit)


def _quotient(over: str, under: str) -> str:
    if not under:
        return over
    return f"{over or '1'}/({under})" if any(c in under for c in "·/") else f"{over or '1'}/{under}"
