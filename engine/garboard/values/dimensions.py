"""The dimensions a record knows, each with the one unit its figures are kept in.

Inside the engine a figure is a plain float in the canonical unit of its dimension: volts, amperes,
ohms and metres, but square millimetres, degrees Celsius, ampere-hours, watt-hours and degrees of
angle, because those are the units of the trade.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Final

#: Powers of the base units m, kg, s, A, K, in this order.
Exponents = tuple[int, int, int, int, int]


@dataclass(frozen=True, slots=True)
class Dimension:
    """One dimension.

    ``unit`` is the symbol of the canonical unit; one canonical unit is ``scale`` times the product
    of base units that ``exponents`` names (an ampere-hour is 3600 A·s; a degree of angle counts as
    a plain number). ``least`` is the least value nature allows, in the canonical unit, where there
    is one. ``example`` is a text that reads.
    """

    name: str
    unit: str
    exponents: Exponents
    scale: Fraction
    least: Fraction | None
    example: str

    @property
    def title(self) -> str:
        """The name as people read it."""
        return self.name.replace("_", " ")


def _dimension(name: str, unit: str, exponents: Exponents, example: str, *, scale: str = "1",
               least: str | None = None) -> tuple[str, Dimension]:
    lowest = None if least is None else Fraction(least)
    return name, Dimension(name, unit, exponents, Fraction(scale), lowest, example)


#: All dimensions by name.
DIMENSIONS: Final[Mapping[str, Dimension]] = MappingProxyType(dict((
    _dimension("voltage", "V", (2, 1, -3, -1, 0), "14.4 V"),
    _dimension("current", "A", (0, 0, 0, 1, 0), "250 A"),
    _dimension("resistance", "Ω", (2, 1, -3, -2, 0), "2.1 mΩ", least="0"),
    _dimension("length", "m", (1, 0, 0, 0, 0), "0.35 m", least="0"),
    _dimension("area", "mm²", (2, 0, 0, 0, 0), "35 mm2", scale="1/1000000", least="0"),
    _dimension("temperature", "°C", (0, 0, 0, 0, 1), "45 °C", least="-273.15"),
    _dimension("temperature_difference", "K", (0, 0, 0, 0, 1), "5 K"),
    _dimension("charge", "Ah", (0, 0, 1, 1, 0), "280 Ah", scale="3600"),
    _dimension("energy", "Wh", (2, 1, -2, 0, 0), "5.12 kWh", scale="3600"),
    _dimension("power", "W", (2, 1, -3, 0, 0), "1200 W"),
    _dimension("mass", "kg", (0, 1, 0, 0, 0), "23 kg", least="0"),
    _dimension("time", "s", (0, 0, 1, 0, 0), "10 s", least="0"),
    _dimension("torque", "N·m", (2, 1, -2, 0, 0), "9 Nm"),
    _dimension("force", "N", (1, 1, -2, 0, 0), "400 N"),
    _dimension("capacitance", "F", (-2, -1, 4, 2, 0), "4700 µF", least="0"),
    _dimension("inductance", "H", (2, 1, -2, -2, 0), "2 µH", least="0"),
    _dimension("let_through", "A²s", (0, 0, 1, 2, 0), "52000 A2s", least="0"),
    _dimension("temperature_coefficient", "V/K", (2, 1, -3, -1, -1), "-30 mV/°C"),
    _dimension("ratio", "ratio", (0, 0, 0, 0, 0), "3 %"),
    _dimension("angle", "°", (0, 0, 0, 0, 0), "30°"),
)))
