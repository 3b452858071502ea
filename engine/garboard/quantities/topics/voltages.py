"""Voltages: the highest a bank and what hangs on it can see, and the trips above it."""

from __future__ import annotations

import math
from typing import Any, cast

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Number,
    Truth,
    Unknown,
    any_of,
    chosen,
    largest,
    quotient,
    smallest,
    total,
)
from garboard.values.units import format_value

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("string.open_circuit_voltage_max", dimension="voltage",
          needs={"voltages": "batteries.open_circuit_voltage_max"},
          method="Sum of the greatest open-circuit voltages of its batteries in series",
          citation=_DEFINITION, valid="batteries at rest")
def string_open_circuit_voltage_max(voltages: tuple[Number, ...]) -> Number:
    return total(voltages)


@quantity("string.charge_voltage_max", dimension="voltage",
          needs={"voltages": "batteries.charge.voltage_max"},
          method="Sum of the greatest charge voltages of its batteries in series",
          citation=_DEFINITION, valid="balanced batteries")
def string_charge_voltage_max(voltages: tuple[Number, ...]) -> Number:
    return total(voltages)


@quantity("string.float_voltage_max", dimension="voltage",
          needs={"voltages": "batteries.charge.float_voltage_max"},
          method="Sum of the greatest voltages its batteries in series may be held at",
          citation=_DEFINITION, valid="balanced batteries")
def string_float_voltage_max(voltages: tuple[Number, ...]) -> Number:
    return total(voltages)


@quantity("source.highest_stage_voltage", dimension="voltage", unknowns="passed",
          needs={"bulk": "stages.bulk", "absorption": "stages.absorption",
                 "float_stage": "stages.float", "equalising": "stages.equalising",
                 "equalising_enabled": "equalising_enabled", "tolerance": "tolerance"},
          method="The highest voltage stage as stored, plus the regulator's tolerance; equalising "
                 "counts unless it is recorded as switched off. What is not recorded leaves the "
                 "figure open upwards",
          citation=_PRACTICE, valid="stages at the source's own terminals")
def highest_stage_voltage(bulk: Number, absorption: Number, float_stage: Number,
                          equalising: Number, equalising_enabled: bool | Unknown,
                          tolerance: Number) -> Number:
    stages: list[Number] = [stage for stage in (bulk, absorption, float_stage)
                            if not isinstance(stage, Unknown)]
    open_ends: list[Unknown] = [each for each in (tolerance,) if isinstance(each, Unknown)]
    if isinstance(absorption, Unknown):
        open_ends.append(absorption)
    if equalising_enabled is not False and isinstance(equalising, Unknown):
        open_ends.append(equalising.joined(equalising_enabled))
    if not stages:
        return _joined(open_ends or [_any_unknown(absorption, bulk)])
    highest = largest(stages)
    if not isinstance(equalising, Unknown):
        highest = cast(Number, chosen(equalising_enabled, largest([highest, equalising]), highest))
    if not isinstance(tolerance, Unknown):
        highest = highest + tolerance
    return _open_above(highest, open_ends)


def _any_unknown(*values: Number) -> Unknown:
    for value in values:
        if isinstance(value, Unknown):
            return value
    raise ValueError("none of the values is unknown")


def _joined(unknowns: list[Unknown]) -> Unknown:
    joined = unknowns[0]
    for each in unknowns[1:]:
        joined = joined.joined(each)
    return joined


def _open_above(least: Number, why: list[Unknown]) -> Number:
    """At least ``least``, for what is not recorded could add to it."""
    if not why or isinstance(least, Unknown):
        return least
    lo = least.lo if isinstance(least, Bounds) else least
    causes = _joined(why).joined(least).causes
    return Bounds(lo, math.inf, basis=(UNRECORDED,), causes=causes)


@quantity("bank.highest_system_voltage", dimension="voltage", unknowns="passed",
          needs={"resting": "strings.open_circuit_voltage_max",
                 "stages": "sources.highest_stage_voltage"},
          method="The largest of the open-circuit voltage when full and every connected charging "
                 "source's highest stage",
          citation=_PRACTICE, valid="steady voltages; no transients such as a load dump")
def highest_system_voltage(resting: tuple[Number, ...] | Unknown,
                           stages: tuple[Number, ...] | Unknown) -> Number:
    parts: list[Number] = []
    for side in (resting, stages):
        parts += [side] if isinstance(side, Unknown) else side
    return largest(parts)


@quantity("device.highest_system_voltage", dimension="voltage",
          needs={"voltages": "banks.highest_system_voltage"},
          method="The highest system voltage of the banks it is connected to",
          citation=_DEFINITION, valid="devices connected to a bank")
def device_highest_system_voltage(voltages: tuple[Number, ...]) -> Number:
    if not voltages:
        return Unknown.because(OUTSIDE_METHOD, detail="it is not connected to a bank")
    return largest(voltages)


@quantity("source.lowest_overvoltage_trip", dimension="voltage",
          needs={"trips": "banks.strings.overvoltage_trip",
                 "lithium": "banks.strings.has_lithium"},
          method="The least voltage at which the management of a string with lithium batteries it "
                 "can charge disconnects, also over a switch that couples two banks; of other "
                 "strings only where none has lithium",
          citation=_DEFINITION, valid="sources connected to a bank", version="2")
def lowest_overvoltage_trip(trips: tuple[Number, ...], lithium: tuple[Truth, ...]) -> Number:
    if not trips:
        return Unknown.because(OUTSIDE_METHOD, detail="it charges no battery")
    managed = [trip for trip, of_lithium in zip(trips, lithium, strict=True)
               if of_lithium is not False]
    return smallest(managed or trips)


@quantity("string.has_lithium", kind="truth", needs={"lithium": "batteries.is_lithium"},
          method="One of its batteries is a lithium battery", citation=_DEFINITION,
          valid="batteries with a recorded chemistry")
def string_has_lithium(lithium: tuple[Truth, ...]) -> Truth:
    return any_of(lithium)


@quantity("string.overvoltage_trip", dimension="voltage", unknowns="passed",
          needs={"systems": "batteries.managed_by.id",
                 "packs": "batteries.managed_by.trips.voltage_high",
                 "cell_trips": "batteries.managed_by.trips.cell_voltage_high",
                 "cells": "batteries.cells_in_series"},
          method="The least string voltage at which one of its management systems disconnects: a "
                 "cell trip times all cells in series, or a pack trip times all cells over those "
                 "it watches in the string; where one is not recorded, at most the other",
          citation=_PRACTICE, valid="cells in balance, so that each takes the same part of the "
                                    "voltage")
def overvoltage_trip(systems: tuple[str | Unknown, ...] | Unknown,
                     packs: tuple[Number, ...] | Unknown, cell_trips: tuple[Number, ...] | Unknown,
                     cells: tuple[Number, ...] | Unknown) -> Number:
    for each in (systems, packs, cell_trips, cells):
        if isinstance(each, Unknown):
            return each
    systems, packs, cell_trips, cells = (
        cast("tuple[Any, ...]", each) for each in (systems, packs, cell_trips, cells))
    trips: list[Number] = []
    for system, pack, cell in zip(systems, packs, cell_trips, strict=True):
        if isinstance(system, Unknown):
            trips.append(system)
            continue
        trips += [cell * total(cells), pack * _times_watched(system, systems, cells)]
    return smallest(trips)


def _times_watched(system: str, systems: tuple[str | Unknown, ...],
                   cells: tuple[Number, ...]) -> Number:
    """All cells of a string over those that one management system watches."""
    watched = [count for other, count in zip(systems, cells, strict=True)
               if isinstance(other, Unknown) or other == system]
    return 1.0 if len(watched) == len(cells) else quotient(total(cells), total(watched))


@quantity("source.highest_stage_share_of_trip", dimension="ratio",
          needs={"stage": "highest_stage_voltage", "trip": "lowest_overvoltage_trip"},
          method="Highest stage over the least overvoltage trip", citation=_DEFINITION,
          valid="sources connected to a bank")
def highest_stage_share_of_trip(stage: Number, trip: Number) -> Figure:
    return Figure(quotient(stage, trip), remarks=(
        f"highest stage {format_value(stage, 'voltage')}, "
        f"least trip {format_value(trip, 'voltage')}",))


QUANTITIES = (string_charge_voltage_max, string_float_voltage_max,
              string_open_circuit_voltage_max, highest_stage_voltage, highest_system_voltage,
              device_highest_system_voltage, lowest_overvoltage_trip, string_has_lithium,
              overvoltage_trip, highest_stage_share_of_trip)
