"""What a survey of a boat ever meets, by dimension, and the slip behind a figure outside it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Final

from garboard.errors import ReadingError
from garboard.values.units import read_number

#: Ends of the likely range where a field does not name its own.
LIKELY: Final[Mapping[str, tuple[str, str]]] = MappingProxyType({
    "voltage": ("10 mV", "1500 V"),
    "current": ("1 mA", "200 kA"),
    "resistance": ("1 µΩ", "10 Ω"),
    "length": ("5 mm", "60 m"),
    "area": ("10 mm2", "4 m2"),
    "temperature": ("-60 °C", "300 °C"),
    "charge": ("100 mAh", "10000 Ah"),
    "energy": ("1 Wh", "5 MWh"),
    "power": ("10 mW", "2 MW"),
    "mass": ("50 g", "5000 kg"),
    "time": ("1 µs", "720 h"),
    "torque": ("0.1 N·m", "200 N·m"),
    "force": ("1 N", "50 kN"),
    "capacitance": ("1 nF", "100 F"),
    "let_through": ("1 A²s", "1000000000 A²s"),
    "ratio": ("0.01 %", "200 %"),
})

#: Units to try in place of the one written, by dimension: the common ones first.
_UNITS: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType({
    "voltage": ("V", "mV", "kV"),
    "current": ("A", "kA", "mA"),
    "resistance": ("mΩ", "µΩ", "Ω"),
    "length": ("m", "cm", "mm", "ft", "in"),
    "area": ("mm2", "cm2", "m2"),
    "temperature": ("°C", "°F"),
    "charge": ("Ah", "mAh"),
    "energy": ("Wh", "kWh"),
    "power": ("W", "kW", "mW"),
    "mass": ("kg", "g", "lb"),
    "time": ("s", "ms", "min", "h"),
    "capacitance": ("µF", "mF", "nF", "F"),
    "ratio": ("%",),
})
_NUMBER: Final = re.compile(r"^\s*[+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?")


@cache
def likely_ends(texts: tuple[str, str], dimension: str) -> tuple[float, float]:
    """The ends of a likely range as figures."""
    return read_number(texts[0], dimension), read_number(texts[1], dimension)


def likely_slip(written: str, dimension: str, ends: tuple[float, float]) -> str:
    """A hint naming the unit that would make the figure a likely one, when there is one."""
    number = _NUMBER.match(written)
    if number is not None:
        for unit in _UNITS.get(dimension, ()):
            guess = f"{number.group().strip()} {unit}"
            try:
                value = read_number(guess, dimension)
            except ReadingError:
                continue
            if ends[0] <= value <= ends[1]:
                return f"did you mean {guess}?"
    return "check the number and its unit"
