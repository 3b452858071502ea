"""Every unit that is read, as an exact fraction of the canonical unit of its dimension.

US customary units are exact by definition (international foot and pound of 1959, 0.3048 m and
0.45359237 kg; standard gravity 9.80665 m/s²). Where a symbol of the trade means two things, it is
not in the table but among the ambiguous ones, with the way out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Final

from garboard.values.dimensions import DIMENSIONS


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: a figure of it times ``factor`` plus ``offset`` is the figure in canonical units."""

    symbol: str
    dimension: str
    factor: Fraction
    offset: Fraction = Fraction(0)

    def canonical(self, number: Fraction) -> Fraction:
        """``number`` of this unit, exactly, in the canonical unit."""
        return number * self.factor + self.offset

    def shown(self, canonical: Fraction) -> Fraction:
        """The way back: a figure in the canonical unit, exactly, in this unit."""
        return (canonical - self.offset) / self.factor


_POUND_FORCE: Final = Fraction("0.45359237") * Fraction("9.80665")
_FOOT: Final = Fraction("0.3048")
_INCH: Final = Fraction("0.0254")

_FACTORS: Final[dict[str, dict[str, str | Fraction]]] = {
    "voltage": {"V": "1", "mV": "1/1000", "µV": "1/1000000", "kV": "1000"},
    "current": {"A": "1", "mA": "1/1000", "µA": "1/1000000", "kA": "1000"},
    "resistance": {"Ω": "1", "mΩ": "1/1000", "µΩ": "1/1000000", "kΩ": "1000", "MΩ": "1000000"},
    "length": {"m": "1", "mm": "1/1000", "cm": "1/100", "km": "1000", "in": _INCH, "ft": _FOOT},
    "area": {"mm²": "1", "cm²": "100", "m²": "1000000", "in²": (_INCH * 1000) ** 2,
             "ft²": (_FOOT * 1000) ** 2},
    "temperature": {"°C": "1", "°F": "5/9", "K": "1"},
    "temperature_difference": {"K": "1", "°C": "1", "°F": "5/9"},
    "charge": {"Ah": "1", "mAh": "1/1000"},
    "energy": {"Wh": "1", "kWh": "1000", "MWh": "1000000", "J": "1/3600", "kJ": "1000/3600",
               "MJ": "1000000/3600"},
    "power": {"W": "1", "mW": "1/1000", "kW": "1000", "MW": "1000000"},
    "mass": {"kg": "1", "g": "1/1000", "lb": "0.45359237", "oz": "0.028349523125"},
    "time": {"s": "1", "ms": "1/1000", "µs": "1/1000000", "min": "60", "h": "3600", "d": "86400"},
    "torque": {"N·m": "1", "lbf·ft": _POUND_FORCE * _FOOT, "lbf·in": _POUND_FORCE * _INCH},
    "force": {"N": "1", "kN": "1000", "lbf": _POUND_FORCE},
    "capacitance": {"F": "1", "mF": "1/1000", "µF": "1/1000000", "nF": "1/1000000000"},
    "inductance": {"H": "1", "mH": "1/1000", "µH": "1/1000000", "nH": "1/1000000000"},
    "let_through": {"A²s": "1"},
    "temperature_coefficient": {"V/K": "1", "mV/K": "1/1000"},
    "ratio": {"ratio": "1", "%": "1/100"},
    "angle": {"°": "1"},
}
_OFFSETS: Final = {("temperature", "°F"): Fraction(-160, 9),
                   ("temperature", "K"): Fraction("-273.15")}

#: Other spellings that are read, by the symbol they stand for.
SPELLINGS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType({
    "µV": ("uV",), "µA": ("uA",), "µs": ("us",), "µF": ("uF",), "µH": ("uH",),
    "Ω": ("ohm", "Ohm"), "mΩ": ("mohm", "mOhm"), "µΩ": ("uΩ", "µohm", "uohm", "µOhm", "uOhm"),
    "kΩ": ("kohm", "kOhm"), "MΩ": ("Mohm", "MOhm"),
    "mm²": ("mm2",), "cm²": ("cm2",), "m²": ("m2",), "in²": ("in2",), "ft²": ("ft2",),
    "°C": ("degC", "℃"), "°F": ("degF", "℉"),
    "N·m": ("Nm",),
    "lbf·ft": ("ft·lbf", "lbf-ft", "ft-lbf", "lb-ft", "ft-lb"),
    "lbf·in": ("in·lbf", "lbf-in", "in-lbf", "lb-in", "in-lb"),
    "A²s": ("A2s", "A²·s", "A2·s"),
    "V/K": ("V/°C",), "mV/K": ("mV/°C",),
    "°": ("deg",),
})

#: Symbols that could mean two things, and what to write instead.
AMBIGUOUS: Final[Mapping[str, str]] = MappingProxyType({
    "hp": "mechanical horsepower is 745.7 W, metric horsepower 735.5 W: write the power in W or kW",
    "kA²s": "read as (kA)²s it is 1000000 A²s, in some data sheets 1000 A²s: write it in A²s",
    "kA2s": "read as (kA)²s it is 1000000 A²s, in some data sheets 1000 A²s: write it in A²s",
    "VA": "apparent power is not power: write what the maker states in W",
    "kVA": "apparent power is not power: write what the maker states in W or kW",
})


def _units(dimension: str) -> Mapping[str, Unit]:
    read: dict[str, Unit] = {}
    for symbol, factor in _FACTORS[dimension].items():
        unit = Unit(symbol, dimension, Fraction(factor),
                    _OFFSETS.get((dimension, symbol), Fraction(0)))
        for spelling in (symbol, *SPELLINGS.get(symbol, ())):
            read[spelling] = unit
    return MappingProxyType(read)


#: For each dimension, every spelling of a unit that is read.
UNITS: Final[Mapping[str, Mapping[str, Unit]]] = MappingProxyType(
    {dimension: _units(dimension) for dimension in DIMENSIONS})


def symbols(dimension: str) -> tuple[str, ...]:
    """The symbols of a dimension's units, the canonical one first."""
    return tuple(_FACTORS[dimension])


def dimensions_of(spelling: str) -> tuple[str, ...]:
    """The names of all dimensions that have a unit of this spelling."""
    return tuple(name for name, units in UNITS.items() if spelling in units)
