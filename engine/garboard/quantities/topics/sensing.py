"""Where a charging source senses its voltage, and what that makes of it at either end of its lead.

A source that holds its stage at the battery raises its own terminals by the drop of the lead, and
with them all that hangs between; one that holds it at its own terminals leaves the battery short of
it while much current flows. Once the current has fallen both ends are at the stage.
"""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import low_end, total_at_least, unrecorded
from garboard.values import OUTSIDE_METHOD, Bounds, Number, Unknown

_PRACTICE = cite("common practice of the trade", "common practice")
_VALID = ("steady currents of this source alone; one way only between source and bank; the "
          "greatest resistances, so the drop is the most there is")


@quantity("source.charging_drop", dimension="voltage",
          needs={"network": "network", "source": "id", "bank": "bank.id", "current": "current_max",
                 "resistances": "record.greatest_resistances"},
          method="Its greatest output current times the greatest resistance of every conductor, "
                 "device and switch between it and where the strings meet, out and back",
          citation=_PRACTICE, valid=_VALID)
def charging_drop(network: Network, source: str, bank: str, current: Number,
                  resistances: Mapping[str, Number]) -> Figure:
    layout = network.layout
    out = network.way(layout.positive(source), network.bank(bank).meets)
    back = () if layout.negative(source) == layout.reference else network.way(
        layout.reference, layout.negative(source))
    if out is None or back is None:
        return Figure(Unknown.because(
            OUTSIDE_METHOD, detail="not one single way from source to bank"))
    parts = (*out, *back)
    return Figure(current * total_at_least(resistances[part] for part in parts),
                  remarks=(f"through: {', '.join(parts) or 'nothing'}",))


@quantity("source.highest_terminal_voltage", dimension="voltage", unknowns="passed",
          needs={"stage": "highest_stage_voltage", "drop": "charging_drop",
                 "senses": "sense_point"},
          method="Highest stage where it senses at its own terminals; where at the battery, the "
                 "stage plus the drop at full current; where at a bus, or where that is not on "
                 "record, between the two",
          citation=_PRACTICE, valid=f"at its own terminals; {_VALID}")
def highest_terminal_voltage(stage: Number, drop: Number, senses: str | Unknown) -> Number:
    if isinstance(stage, Unknown) or (not isinstance(senses, Unknown)
                                      and senses == "own terminals"):
        return stage
    return stage + _part_of(drop, senses, whole="battery")


@quantity("source.voltage_at_bank_on_full_current", dimension="voltage", unknowns="passed",
          needs={"stage": "highest_stage_voltage", "drop": "charging_drop",
                 "senses": "sense_point"},
          method="Highest stage where it senses at the battery; where at its own terminals, the "
                 "stage less the drop at full current; where at a bus, or where that is not on "
                 "record, between the two. As the current falls it rises to the stage, never above",
          citation=_PRACTICE, valid=f"where the strings meet; {_VALID}")
def voltage_at_bank_on_full_current(stage: Number, drop: Number,
                                    senses: str | Unknown) -> Number:
    if isinstance(stage, Unknown) or (not isinstance(senses, Unknown) and senses == "battery"):
        return stage
    return stage - _part_of(drop, senses, whole="own terminals")


def _part_of(drop: Number, senses: str | Unknown, whole: str) -> Number:
    """The whole drop, or where the sense point may lie between, any part of it."""
    if not isinstance(senses, Unknown) and senses == whole:
        return drop
    why = senses if isinstance(senses, Unknown) else Unknown.because(
        OUTSIDE_METHOD, detail="how much of the drop lies before its sense point")
    if isinstance(drop, Unknown):
        return drop.joined(why)
    most = drop.hi if isinstance(drop, Bounds) else drop
    return unrecorded(min(0.0, low_end(drop)), most, why.joined(drop))


QUANTITIES = (charging_drop, highest_terminal_voltage, voltage_at_bank_on_full_current)
