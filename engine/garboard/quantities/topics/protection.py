"""Protective devices: what they can break, at which voltage, and which of them stand where."""

from __future__ import annotations

from collections.abc import Sequence

from garboard.quantities.declaration import cite, quantity
from garboard.quantities.item import Item
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Unknown,
    largest,
)

_DEFINITION = cite("definition", "definition")
_DC_POINTS = cite("IEC 60269-7 scope: the rated DC voltage must exceed the network's highest "
                  "open-circuit voltage", "reprinted")


def _dc_points(breaks: Sequence[Item]) -> list[tuple[Number, Number]]:
    """(voltage, current) of the declared breaking points on direct current."""
    return [(point["voltage"], point["current"]) for point in breaks
            if point["voltage.kind"] == "DC"]


@quantity("device.voltage_rating", dimension="voltage", needs={"breaks": "breaks"},
          method="The highest DC voltage at which a breaking capacity is declared",
          citation=_DEFINITION, valid="declared points on direct current")
def voltage_rating(breaks: tuple[Item, ...]) -> Number:
    voltages = [voltage for voltage, _ in _dc_points(breaks)]
    if not voltages:
        return Unknown.because(OUTSIDE_METHOD, detail="no breaking capacity on DC is declared")
    return largest(voltages)


@quantity("device.breaking_capacity", dimension="current", unknowns="passed",
          needs={"breaks": "breaks", "highest": "highest_system_voltage"},
          method="The greatest current among the declared points on direct current whose voltage "
                 "is at least the highest system voltage; a figure for AC or for a lower voltage "
                 "proves nothing",
          citation=_DC_POINTS, valid="declared points; nothing is interpolated between them")
def breaking_capacity(breaks: tuple[Item, ...] | Unknown, highest: Number) -> Number:
    if isinstance(breaks, Unknown):
        return breaks
    points = _dc_points(breaks)
    if isinstance(highest, Unknown):
        return highest
    if isinstance(highest, Bounds):
        return _between(_at(points, highest.hi, highest), _at(points, highest.lo, highest), highest)
    return _at(points, highest, None)


def _at(points: list[tuple[Number, Number]], voltage: float, source: Bounds | None) -> Number:
    fitting = [current for rated, current in points
               if _certainly(rated) >= voltage]
    if not fitting:
        short = Unknown.because(
            OUTSIDE_METHOD,
            detail=f"no breaking capacity is declared at {voltage:.4g} V DC or more")
        return short if source is None or voltage != source.hi else short.joined(source)
    return largest(fitting)


def _certainly(rated: Number) -> float:
    if isinstance(rated, Bounds):
        return rated.lo
    return float("-inf") if isinstance(rated, Unknown) else rated


def _between(least: Number, most: Number, voltage: Bounds) -> Number:
    if isinstance(least, Unknown):
        return least
    if isinstance(most, Unknown) or most == least:
        return least
    low = least.lo if isinstance(least, Bounds) else least
    high = most.hi if isinstance(most, Bounds) else most
    return Bounds(low, high, basis=(UNRECORDED,), causes=voltage.causes)


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
