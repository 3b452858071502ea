"""The lowest voltages: when management systems disconnect, and what a bank can fall to."""

from __future__ import annotations

from garboard.quantities.declaration import cite, quantity
from garboard.values import Number, Unknown, largest, smallest, total

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("battery.undervoltage_trip", dimension="voltage", unknowns="passed",
          needs={"pack": "managed_by.trips.voltage_low",
                 "cell": "managed_by.trips.cell_voltage_low", "cells": "cells_in_series"},
          method="The higher of the management system's pack trip and its cell trip times the "
                 "cells in series (balanced cells)",
          citation=_PRACTICE, valid="a management system of its own for each battery")
def undervoltage_trip(pack: Number, cell: Number, cells: int | Unknown) -> Number:
    from_cells = cell * cells
    known = [trip for trip in (pack, from_cells) if not isinstance(trip, Unknown)]
    if not known:
        assert isinstance(pack, Unknown)
        return pack.joined(from_cells)
    return largest(known)


@quantity("battery.lowest_voltage", dimension="voltage", unknowns="passed",
          needs={"trip": "undervoltage_trip", "least": "discharge.voltage_min"},
          method="The voltage at which its management system disconnects on low voltage; without "
                 "such a trip, the least voltage its maker permits on discharge",
          citation=_PRACTICE, valid="batteries with a trip or a least voltage on record")
def battery_lowest_voltage(trip: Number, least: Number) -> Number:
    if not isinstance(trip, Unknown):
        return trip
    return trip.joined(least) if isinstance(least, Unknown) else least


@quantity("string.lowest_voltage", dimension="voltage",
          needs={"voltages": "batteries.lowest_voltage"},
          method="Sum of the lowest voltages of its batteries in series", citation=_DEFINITION,
          valid="batteries that reach their lowest voltage together")
def string_lowest_voltage(voltages: tuple[Number, ...]) -> Number:
    return total(voltages)


@quantity("bank.lowest_voltage", dimension="voltage",
          needs={"voltages": "strings.lowest_voltage"},
          method="The least over its strings: the bank stays up until the last has disconnected",
          citation=_PRACTICE, valid="before the last management system disconnects")
def bank_lowest_voltage(voltages: tuple[Number, ...]) -> Number:
    return smallest(voltages)


QUANTITIES = (undervoltage_trip, battery_lowest_voltage, string_lowest_voltage,
              bank_lowest_voltage)
