"""Protective devices: what they can break, at which voltage, and which of them stand where."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import cast

from garboard.quantities.declaration import cite, quantity
from garboard.quantities.item import Item
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Truth,
    Unknown,
    chosen,
    largest,
)

_DEFINITION = cite("definition", "definition")
_DC_POINTS = cite("IEC 60269-7 scope: the rated DC voltage must exceed the network's highest "
                  "open-circuit voltage", "reprinted")


def _dc(breaks: Sequence[Item], name: str) -> list[Number]:
    """A figure of each declared breaking point that is, or may be, on direct current.

    Where a point does not say which it is for, its figure may be worth nothing.
    """
    found = []
    for point in breaks:
        on_dc: Truth = point["voltage.kind"] == "DC"
        if on_dc is not False:
            found.append(cast(Number, chosen(on_dc, point[name], 0.0)))
    return found


def _dc_points(breaks: Sequence[Item]) -> list[tuple[float, Number]]:
    """(least voltage, current) of the declared breaking points on direct current."""
    rated = [point["voltage"] for point in breaks if (point["voltage.kind"] == "DC") is not False]
    return list(zip(map(_certainly, rated), _dc(breaks, "current"), strict=True))


@quantity("device.voltage_rating", dimension="voltage",
          needs={"device": "id", "breaks": "breaks"},
          method="The highest DC voltage at which a breaking capacity is declared",
          citation=_DEFINITION, valid="declared points on direct current")
def voltage_rating(device: str, breaks: tuple[Item, ...]) -> Number:
    voltages = _dc(breaks, "voltage")
    if not voltages:
        return Unknown.because(OUTSIDE_METHOD, f"{device}.breaks",
                               "no breaking capacity on DC is declared")
    return largest(voltages)


@quantity("device.breaking_capacity", dimension="current", unknowns="passed",
          needs={"device": "id", "breaks": "breaks", "highest": "highest_system_voltage"},
          method="The greatest current among the declared points on direct current whose voltage "
                 "is at least the highest system voltage; a figure for AC or for a lower voltage "
                 "proves nothing",
          citation=_DC_POINTS, valid="declared points; nothing is interpolated between them")
def breaking_capacity(device: str, breaks: tuple[Item, ...] | Unknown, highest: Number) -> Number:
    if isinstance(breaks, Unknown):
        return breaks
    points = _dc_points(breaks)
    if isinstance(highest, Unknown):
        return highest
    if not isinstance(highest, Bounds):
        return _at(device, points, highest)
    most = _at(device, points, highest.lo)
    if isinstance(most, Unknown):
        return most
    return _between(_at(device, points, highest.hi), most, highest)


def _at(device: str, points: list[tuple[float, Number]], voltage: float) -> Number:
    """What is declared at a voltage or above it."""
    fitting = [current for rated, current in points if rated >= voltage]
    if not fitting:
        return Unknown.because(
            OUTSIDE_METHOD, f"{device}.breaks",
            f"no breaking capacity is declared at {voltage:.4g} V DC or more")
    return largest(fitting)


def _certainly(rated: Number) -> float:
    if isinstance(rated, Bounds):
        return rated.lo
    return float("-inf") if isinstance(rated, Unknown) else rated


def _between(least: Number, most: Number, voltage: Bounds) -> Number:
    """From the capacity at the upper end of the voltage, at least nothing, to that at the lower.

    Where the voltage is open upwards no declared point would settle it, so none is asked for.
    """
    low = 0.0 if isinstance(least, Unknown) else least.lo if isinstance(least, Bounds) else least
    high = most.hi if isinstance(most, Bounds) else most
    if isinstance(high, Unknown):
        return high
    if low == high:
        return high
    why = Unknown(voltage.causes)
    if voltage.hi < math.inf:
        why = why.joined(least)
    causes = why.joined(most).causes
    return Bounds(low, high, basis=(UNRECORDED,), causes=causes)


@quantity("device.least_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "resistance"},
          method="Resistance as recorded; at least zero where it is not",
          citation=_DEFINITION, valid="any device")
def device_least_resistance(stated: Number) -> Number:
    return _at_least_zero(stated)


@quantity("switch.least_resistance", dimension="resistance", unknowns="passed",
          needs={"stated": "resistance"},
          method="Resistance as recorded; at least zero where it is not",
          citation=_DEFINITION, valid="any closed switch")
def switch_least_resistance(stated: Number) -> Number:
    return _at_least_zero(stated)


def _at_least_zero(stated: Number) -> Number:
    if isinstance(stated, Unknown):
        return Bounds(0.0, float("inf"), basis=(UNRECORDED,), causes=stated.causes)
    return stated


QUANTITIES = (voltage_rating, breaking_capacity, device_least_resistance, switch_least_resistance)
