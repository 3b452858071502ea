"""Copper: its resistance by length, area and temperature, from the table of its constants."""

from __future__ import annotations

from functools import cache
from typing import Final, NamedTuple

from garboard.quantities.declaration import Citation
from garboard.quantities.table import table
from garboard.values import Bounds, Number, largest

_NAME: Final = "copper-iec60028"
CITATION: Final = Citation(
    "IEC 60028 (annealed copper), temperature by FAA AC 43.13-1B page 11-22", "read")


class Copper(NamedTuple):
    """Conductivity in m/(Ω·mm²) at ``reference`` °C; resistance is in proportion to zero + °C.

    ``rows`` are the cells of the table, as a derivation names them.
    """

    conductivity: float
    zero: float
    reference: float
    rows: tuple[str, ...]


@cache
def copper() -> Copper:
    """The constants of the table."""
    constants = table(_NAME)
    known = constants.rows["copper"]
    return Copper(known["conductivity"], known["zero"], known["reference"],
                  tuple(constants.reference("copper", column) for column in known))


def resistance_at_20(length: Number, area_mm2: float) -> Number:
    """Resistance in Ω of annealed copper, one way, from metres and mm²."""
    return length * (1 / copper().conductivity) / area_mm2


def copper_at(temperature: Number) -> Number:
    """Factor on copper's resistance at 20 °C for another temperature in °C; never below zero."""
    known = copper()
    factor = (temperature + known.zero) / (known.reference + known.zero)
    return largest([factor, 0.0]) if isinstance(factor, Bounds) and factor.lo < 0 else factor
