"""The smallest fault currents: hot conductors, one string alone, cells low, cold and aged.

How cold and aged cells are is seldom on record; then a battery's resistance is at least what was
found, and the current *at most* a figure: enough to tell that a device cannot clear a fault, not
enough to tell that it can.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from typing import Final

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import low_end, unrecorded
from garboard.quantities.table import table
from garboard.quantities.topics.lead_acid import LEAD_ACID, factor
from garboard.values import (
    NOT_RECORDED,
    OUTSIDE_METHOD,
    Number,
    Truth,
    Unknown,
    smallest,
)

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
SMALLEST_STATE: Final = (
    "steady current into a dead short from one string alone that reaches it; conductors at their "
    "greatest resistance, hot; cells empty and cold; contributions of chargers not added; switches "
    "closed, or as found if that leaves less; arcs, which draw less, are not covered")


@quantity("battery.open_circuit_voltage_min", dimension="voltage",
          needs={"chemistry": "chemistry", "cells": "cells_in_series"},
          method="Resting voltage of an empty cell of the chemistry times the cells in series",
          citation=cite("common knowledge of the trade", "from memory"),
          valid="chemistries of the table; balanced cells at rest")
def open_circuit_voltage_min(chemistry: str, cells: int) -> Figure:
    return _resting(chemistry, cells, "empty")


@quantity("battery.resting_voltage_full", dimension="voltage",
          needs={"chemistry": "chemistry", "cells": "cells_in_series"},
          method="Resting voltage of a full cell of the chemistry times the cells in series",
          citation=cite("common knowledge of the trade", "from memory"),
          valid="chemistries of the table; balanced cells, rested for hours")
def resting_voltage_full(chemistry: str, cells: int) -> Figure:
    return _resting(chemistry, cells, "full")


def _resting(chemistry: str, cells: int, state: str) -> Figure:
    voltages = table("resting-voltages")
    volts = voltages.cell(chemistry, state)
    if volts is None:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"chemistry {chemistry!r}"))
    return Figure(volts * cells, (voltages.reference(chemistry, state),))


_DIRECT = ("dc", "pulse", "load step", "load test")
_ALTERNATING = ("ac", "khz", "impedance", "conductance")


@quantity("battery.resistance_found_with_dc", kind="truth",
          needs={"how": "internal_resistance.method"},
          method="The method on record speaks of direct current, a pulse or a load step; not of "
                 "alternating current, impedance or conductance, which give less than a short "
                 "circuit meets",
          citation=cite("common practice of the trade", "common practice"),
          valid="methods whose wording tells")
def resistance_found_with_dc(how: str) -> Truth:
    words = re.findall(r"[a-z]+", how.casefold())
    text = f" {' '.join(words)} "
    alternating = any(f" {word} " in text for word in _ALTERNATING)
    if alternating or not any(f" {word} " in text for word in _DIRECT):
        return False if alternating else Unknown.because(OUTSIDE_METHOD, detail=f"method {how!r}")
    return True


@quantity("battery.greatest_source_resistance", dimension="resistance", unknowns="passed",
          needs={"battery": "id", "fresh": "source_resistance", "chemistry": "chemistry",
                 "found_at": "internal_resistance.temperature",
                 "found_full": "internal_resistance.charge_state",
                 "with_dc": "resistance_found_with_dc",
                 "coldest": "place.temperature.low"},
          method="Of lead-acid, 1.7 times the source resistance. Else the internal resistance as "
                 "found, if it was found with direct current at no more than the lowest "
                 "temperature of its place and at a charge of 20 % or less; otherwise at least the "
                 "source resistance",
          citation=cite("IEC 61660-1, resistance for the smallest current", "from memory"),
          valid="lead-acid, or a resistance found on a cold and empty battery; ageing after the "
                "measurement is not covered")
def greatest_source_resistance(battery: str, fresh: Number, chemistry: str | Unknown,
                               found_at: Number, found_full: Number, with_dc: Truth,
                               coldest: Number) -> Figure:
    if isinstance(fresh, Unknown):
        return Figure(fresh)
    if not isinstance(chemistry, Unknown) and chemistry in LEAD_ACID:
        worn = factor("worn_resistance")
        return Figure(fresh * worn.value, (worn.row,))
    emptied = table("bounds-of-classes").read("empty battery", "most")
    cold, empty = found_at <= coldest, found_full <= emptied.value
    if cold is True and empty is True and with_dc is True:
        return Figure(fresh, (emptied.row,))
    why = Unknown.because(NOT_RECORDED, f"{battery}.internal_resistance",
                          "its resistance when cold, empty and aged")
    for each in (cold, empty, with_dc):
        why = why.joined(each) if isinstance(each, Unknown) else why
    return Figure(unrecorded(low_end(fresh), math.inf, why))


@quantity("record.smallest_fault_circuit", kind="opaque",
          needs={"network": "network", "resistances": "record.greatest_resistances",
                 "emfs": "batteries.open_circuit_voltage_min",
                 "internal": "batteries.greatest_source_resistance",
                 "battery_ids": "batteries.id"},
          method="The DC network once for every string, with that string alone: greatest "
                 "resistances of conductors and batteries, devices and switches as recorded, empty "
                 "cells; with every switch closed, and where some were found open also as found",
          citation=_NODAL, valid=SMALLEST_STATE, version="2")
def smallest_fault_circuit(network: Network, resistances: Mapping[str, Number], emfs: Numbers,
                           internal: Numbers, battery_ids: Ids) -> dict[str, Circuit]:
    """The circuits by the id of the string that is left in each, and a word on the switches."""
    resistance = {**resistances, **dict(zip(battery_ids, internal, strict=True))}
    whole = Circuit(network, resistance, dict(zip(battery_ids, emfs, strict=True)))
    own = {string.id: set(string.batteries) for string in network.strings}
    alone = {string: whole.without(*(each for each in battery_ids if each not in batteries))
             for string, batteries in own.items()}
    opened = network.found_open
    return alone | {f"{string} (switches as found)": circuit.without(*opened)
                    for string, circuit in alone.items() if opened}


def smallest_at(circuits: Mapping[str, Circuit], node: str) -> tuple[Number, Ids]:
    """The least current of a short at a node, over the strings that reach it; and which do."""
    found: dict[str, Number] = {}
    for string, circuit in circuits.items():
        current = circuit.fault_current(node)
        if not (isinstance(current, Unknown) and current.reason == OUTSIDE_METHOD
                and not current.paths):
            found[string] = current
    if not found:
        return Unknown.because(OUTSIDE_METHOD, detail=f"no battery reaches {node}"), ()
    return _least(tuple(found.values())), tuple(found)


def _figure(current: Number, strings: Ids) -> Figure:
    return Figure(current, remarks=(f"one at a time: {', '.join(strings) or 'none'}",))


def _least(currents: Numbers) -> Number:
    """The least of some currents; one that is not known is at least nothing."""
    return smallest([unrecorded(0.0, math.inf, each) if isinstance(each, Unknown) else each
                     for each in currents])


_BUS = {"circuits": "record.smallest_fault_circuit", "item": "id"}
_NEEDS = {**_BUS, "network": "network"}


@quantity("bus.smallest_fault_current", dimension="current", needs=_BUS,
          method="Current into a short at the bus, the least over the strings one at a time",
          citation=_NODAL, valid=SMALLEST_STATE)
def bus_smallest_fault_current(circuits: Mapping[str, Circuit], item: str) -> Figure:
    return _figure(*smallest_at(circuits, item))


@quantity("load.smallest_fault_current", dimension="current", needs=_NEEDS,
          method="Current into a short across the load's terminals, the least over the strings "
                 "one at a time",
          citation=_NODAL, valid=SMALLEST_STATE)
def load_smallest_fault_current(circuits: Mapping[str, Circuit], network: Network,
                                item: str) -> Figure:
    return _figure(*smallest_at(circuits, network.layout.positive(item)))


@quantity("conductor.smallest_fault_current", dimension="current", needs=_NEEDS,
          method="Current into a short at either end of the conductor, the lesser; of the strings "
                 "one at a time the least",
          citation=_NODAL, valid=SMALLEST_STATE)
def conductor_smallest_fault_current(circuits: Mapping[str, Circuit], network: Network,
                                     item: str) -> Figure:
    edge = network.graph.edges[item]
    (one, strings), (other, _) = (smallest_at(circuits, node) for node in (edge.start, edge.end))
    return _figure(_least((one, other)), strings)


QUANTITIES = (open_circuit_voltage_min, resting_voltage_full, resistance_found_with_dc,
              greatest_source_resistance,
              smallest_fault_circuit, bus_smallest_fault_current, load_smallest_fault_current,
              conductor_smallest_fault_current)
