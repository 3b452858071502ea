"""Figures as people read them: four significant digits, a sensible unit, metric or US customary.

A figure that four digits show exactly is written without idle noughts (``0.35 m``, ``160 V``); a
figure that was rounded keeps them (``31.10 kA``).
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Mapping
from decimal import ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Final, Literal

from garboard.values.bounds import Bounds
from garboard.values.conductor_size import ConductorSize
from garboard.values.dimensions import DIMENSIONS
from garboard.values.rounding import SIGNIFICANT_DIGITS
from garboard.values.unit_table import UNITS, Unit

System = Literal["metric", "us"]

#: Units to show a figure in, each with the least size (in canonical units) it is used from; the
#: last of a dimension is used below all others. Dimensions not named have their canonical unit.
_LADDERS: Final[Mapping[str, tuple[tuple[str, str], ...]]] = MappingProxyType({
    "voltage": (("kV", "1000"), ("V", "0.1"), ("mV", "0")),
    "current": (("kA", "1000"), ("A", "0.1"), ("mA", "0")),
    "resistance": (("MΩ", "1e6"), ("kΩ", "1000"), ("Ω", "0.1"), ("mΩ", "1e-4"), ("µΩ", "0")),
    "length": (("m", "0.1"), ("mm", "0")),
    "area": (("m²", "1e6"), ("cm²", "1000"), ("mm²", "0")),
    "energy": (("kWh", "1000"), ("Wh", "0")),
    "power": (("kW", "1000"), ("W", "0.1"), ("mW", "0")),
    "mass": (("kg", "0.1"), ("g", "0")),
    "time": (("h", "3600"), ("min", "120"), ("s", "0.1"), ("ms", "1e-4"), ("µs", "0")),
    "force": (("kN", "1000"), ("N", "0")),
    "capacitance": (("F", "0.1"), ("mF", "1e-2"), ("µF", "0")),
    "inductance": (("H", "0.1"), ("mH", "1e-4"), ("µH", "0")),
    "temperature_coefficient": (("mV/K", "0"),),
    "ratio": (("%", "0"),),
})
_US_LADDERS: Final[Mapping[str, tuple[tuple[str, str], ...]]] = MappingProxyType({
    "length": (("ft", "3.048"), ("in", "0")),
    "area": (("in²", "0"),),
    "temperature": (("°F", "0"),),
    "temperature_difference": (("°F", "0"),),
    "mass": (("lb", "0"),),
    "torque": (("lbf·ft", "20"), ("lbf·in", "0")),
    "force": (("lbf", "0"),),
})
_NOT_KNOWN: Final = "not known"
#: A figure that has no more digits than it shows, to this many, counts as shown exactly.
_EXACT_DIGITS: Final = 9


def format_number(value: float, dimension: str | None, system: System = "metric",
                  digits: int = 4) -> str:
    """A figure in canonical units for people, such as ``28.67 kA``; without a dimension, bare."""
    if not math.isfinite(value):
        return _NOT_KNOWN
    exact = _decimal_as_written(value)
    if dimension is None:
        return _significant(exact, digits)
    unit, power = _unit_for(exact, dimension, system)
    shown = exact.scaleb(-power) if power is not None else _divided(unit.shown(Fraction(exact)))
    return f"{_significant(shown, digits)}{'' if unit.symbol == '°' else ' '}{unit.symbol}"


def format_value(value: object, dimension: str | None = None, system: System = "metric",
                 digits: int = 4) -> str:
    """Anything a fact or figure can be, for people."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (int, float)):
        return str(value) if isinstance(value, int) and dimension is None else format_number(
            float(value), dimension, system, digits)
    if isinstance(value, Bounds):
        return _bounds(value, dimension, system, digits)
    if isinstance(value, str):
        return value
    if isinstance(value, ConductorSize):
        return value.written
    if isinstance(value, (datetime.date, datetime.datetime)):
        return value.isoformat()
    if isinstance(value, (tuple, list)):
        return ", ".join(format_value(part, dimension, system, digits) for part in value) or "none"
    return "none" if value is None else _NOT_KNOWN


def _bounds(bounds: Bounds, dimension: str | None, system: System, digits: int) -> str:
    least = None if dimension is None else DIMENSIONS[dimension].least
    low_open = bounds.lo == -math.inf or (least is not None and bounds.lo <= float(least))
    low, high = (format_number(end, dimension, system, digits) for end in (bounds.lo, bounds.hi))
    if bounds.hi == math.inf:
        return _NOT_KNOWN if bounds.lo == -math.inf else f"at least {low}"
    return f"at most {high}" if low_open else f"{low} to {high}"


def _unit_for(value: Decimal, dimension: str, system: System) -> tuple[Unit, int | None]:
    """The unit a figure is shown in, and its power of ten where it is one."""
    canonical, ladder = _ladder(dimension, system)
    if value == 0 and canonical is not None:
        return canonical
    size = abs(value)
    return next((unit, power) for least, unit, power in ladder if size >= least)


@cache
def _ladder(dimension: str, system: System) -> tuple[
        tuple[Unit, int | None] | None, tuple[tuple[Decimal, Unit, int | None], ...]]:
    """The canonical unit if a dimension is shown in it, and all it is shown in, from which size."""
    ladder = _LADDERS.get(dimension, ((DIMENSIONS[dimension].unit, "0"),))
    if system == "us":
        ladder = _US_LADDERS.get(dimension, ladder)
    units = {symbol: UNITS[dimension][symbol] for symbol, _ in ladder}
    canonical = units.get(DIMENSIONS[dimension].unit)
    return (None if canonical is None else (canonical, _power_of_ten(canonical)),
            tuple((Decimal(least), units[symbol], _power_of_ten(units[symbol]))
                  for symbol, least in ladder))


def _power_of_ten(unit: Unit) -> int | None:
    power = len(str(max(unit.factor.numerator, unit.factor.denominator))) - 1
    power = power if unit.factor >= 1 else -power
    return power if unit.offset == 0 and unit.factor == Fraction(10) ** power else None


def _decimal_as_written(value: float) -> Decimal:
    """The shortest decimal that stands for the float, with the 12 digits figures have."""
    return Decimal(f"{value:.{SIGNIFICANT_DIGITS - 1}e}")


def _divided(value: Fraction) -> Decimal:
    return _WIDE.divide(Decimal(value.numerator), Decimal(value.denominator))


def _significant(exact: Decimal, digits: int) -> str:
    if not exact:
        return "0"
    shown = _context(digits).plus(exact)
    if shown == _SEEN_AS_EXACT.plus(exact):
        shown = shown.normalize()
    size = shown.adjusted()
    return f"{shown:f}" if -4 <= size <= 9 else f"{shown:e}"


@cache
def _context(digits: int) -> Context:
    return Context(prec=digits, rounding=ROUND_HALF_EVEN)


_WIDE: Final = Context(prec=SIGNIFICANT_DIGITS + 16, rounding=ROUND_HALF_EVEN)
_SEEN_AS_EXACT: Final = Context(prec=_EXACT_DIGITS, rounding=ROUND_HALF_EVEN)
