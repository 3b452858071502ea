"""Charging in the cold: what temperature compensation adds to the stages of a source."""

from __future__ import annotations

import math
from typing import Final

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.table import table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, smallest

#: Temperatures in °C between which makers set the stages without compensation.
_REFERENCE: Final = "compensation-reference"


@quantity("source.highest_stage_voltage_in_cold", dimension="voltage", unknowns="passed",
          needs={"stage": "highest_stage_voltage", "compensation": "temperature_compensation",
                 "coldest": "bank.batteries.place.temperature.low"},
          method="Highest stage voltage plus what temperature compensation adds at the lowest "
                 "temperature of the places of the batteries it charges, counted from 20 °C or "
                 "from 25 °C; compensation that is not recorded leaves it open upwards",
          citation=cite("common practice of the trade", "common practice"),
          valid="compensation in proportion to temperature, without a cap")
def highest_stage_voltage_in_cold(stage: Number, compensation: Number,
                                  coldest: tuple[Number, ...] | Unknown) -> Figure:
    if isinstance(stage, Unknown):
        return Figure(stage)
    if isinstance(compensation, Unknown):
        return Figure(unrecorded(low_end(stage), math.inf, compensation))
    if low_end(compensation) >= 0:
        return Figure(stage)
    lowest = coldest if isinstance(coldest, Unknown) else smallest(coldest)
    if isinstance(lowest, Unknown):
        return Figure(unrecorded(low_end(stage), math.inf, lowest))
    cool, warm = (table(_REFERENCE).read("charging source", end) for end in ("lowest", "highest"))
    least = max(0.0, -high_end(compensation) * (cool.value - high_end(lowest)))
    most = max(0.0, -low_end(compensation) * (warm.value - low_end(lowest)))
    if most == 0.0:
        return Figure(stage)
    rise = unrecorded(least, most, Unknown.because(
        OUTSIDE_METHOD, detail="from which temperature its compensation counts"))
    return Figure(stage + rise, (cool.row, warm.row), remarks=(f"at {low_end(lowest):g} °C",))


QUANTITIES = (highest_stage_voltage_in_cold,)
