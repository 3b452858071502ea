"""Loads: what they draw, what every part then carries, and the voltage that is lost on the way."""

from __future__ import annotations

import math
from collections.abc import Mapping

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.flows import Case, Flows, Working
from garboard.quantities.spans import at_least_zero, low_end, size, total_at_least, unrecorded
from garboard.quantities.table import table
from garboard.values import (
    OUTSIDE_METHOD,
    Number,
    Unknown,
    largest,
    quotient,
    total,
)
from garboard.values.conductor_size import ConductorSize

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")
_CASE = ("all loads of a load case at once, or all charging sources; what is not recorded leaves "
         "the figure open upwards")
_CONSTANT = "drop-constant-iso10133"


@quantity("load.lowest_working_voltage", dimension="voltage", unknowns="passed",
          needs={"cut_out": "cut_out", "least": "voltage.min"},
          method="The voltage below which it switches itself off, else the least voltage it works "
                 "at; of the two recorded the greater",
          citation=_PRACTICE, valid="loads with a cut-out or a least voltage on record")
def lowest_working_voltage(cut_out: Number, least: Number) -> Number:
    known = [each for each in (cut_out, least) if not isinstance(each, Unknown)]
    if not known:
        assert isinstance(cut_out, Unknown)
        return cut_out.joined(least)
    return largest(known)


@quantity("load.continuous_current", dimension="current", unknowns="passed",
          needs={"current": "current", "power": "power", "lowest": "lowest_working_voltage",
                 "bank": "bank.lowest_voltage"},
          method="The current it draws as recorded, else its power over the lowest voltage it "
                 "works at: a load of constant power draws the most there. Without such a voltage, "
                 "at least its power over the lowest voltage of its bank",
          citation=_PRACTICE, valid="loads of constant current or constant power")
def load_continuous_current(current: Number, power: Number, lowest: Number,
                            bank: Number) -> Number:
    if not isinstance(current, Unknown):
        return current
    if isinstance(power, Unknown):
        return current.joined(power)
    if isinstance(lowest, Unknown):
        least = low_end(quotient(power, bank))
        return unrecorded(max(least, 0.0), math.inf, lowest.joined(bank))
    return quotient(power, lowest)


@quantity("load.greatest_current", dimension="current", unknowns="passed",
          needs={"continuous": "continuous_current", "surge": "surge_current"},
          method="The greater of its continuous current and its surge; an unrecorded surge leaves "
                 "it open upwards",
          citation=_PRACTICE, valid="surges as recorded")
def load_greatest_current(continuous: Number, surge: Number) -> Number:
    if isinstance(continuous, Unknown):
        return continuous
    if isinstance(surge, Unknown):
        return unrecorded(low_end(continuous), math.inf, surge.joined(continuous))
    return largest([continuous, surge])


@quantity("record.currents", kind="opaque",
          needs={"network": "network", "circuit": "record.largest_fault_circuit",
                 "loads": "loads.id", "drawn": "loads.continuous_current",
                 "sources": "sources.id", "given": "sources.current_max"},
          method="The continuous current of every load and the greatest output of every charging "
                 "source, on the DC network with equal EMFs; with every switch closed, and where "
                 "some were found open also as found",
          citation=_PRACTICE, valid=_CASE, version="2")
def currents(network: Network, circuit: Circuit, loads: Ids, drawn: Numbers, sources: Ids,
             given: Numbers) -> Working:
    driven = dict(zip(loads, drawn, strict=True)), dict(zip(sources, given, strict=True))
    equal = circuit.with_equal_emfs()
    closed = Flows(network, equal, *driven)
    if network.as_found is None:
        return Working(closed)
    return Working(closed, Flows(network.as_found, equal.without(*network.found_open), *driven))


@quantity("record.surges", kind="opaque",
          needs={"loads": "loads.id", "greatest": "loads.greatest_current"},
          method="The greatest current of every load, by its id", citation=_DEFINITION,
          valid="any record")
def surges(loads: Ids, greatest: Numbers) -> dict[str, Number]:
    return dict(zip(loads, greatest, strict=True))


_CARRIED = {"flows": "record.currents", "part": "id"}
_HOW = ("The greater of all loads beyond it together and of all charging sources beyond it "
        "together; where batteries stand on both sides, each divided as the DC network says. "
        "Switches found open count as closed or as found, whichever gives the more")


@quantity("conductor.continuous_current", dimension="current", needs=_CARRIED, method=_HOW,
          citation=_PRACTICE, valid=_CASE)
def conductor_continuous_current(flows: Working, part: str) -> Number:
    return flows.greatest(part)


@quantity("device.continuous_current", dimension="current", needs=_CARRIED, method=_HOW,
          citation=_PRACTICE, valid=_CASE)
def device_continuous_current(flows: Working, part: str) -> Number:
    return flows.greatest(part)


@quantity("switch.carried_current", dimension="current", needs=_CARRIED, method=_HOW,
          citation=_PRACTICE, valid=_CASE)
def switch_carried_current(flows: Working, part: str) -> Number:
    return flows.greatest(part)


@quantity("conductor.surge_current", dimension="current",
          needs={**_CARRIED, "surges": "record.surges"},
          method="As the continuous current, with every load at the greater of its continuous "
                 "current and its surge",
          citation=_PRACTICE, valid="all loads starting at once, an upper bound")
def conductor_surge_current(flows: Working, part: str,
                            surges: Mapping[str, Number]) -> Number:
    return flows.greatest(part, surges)


@quantity("bus.continuous_current", dimension="current",
          needs={"flows": "record.currents", "bus": "id"},
          method="What its other runs carry together, if batteries deliver to it and stand behind "
                 "none of those; else half of what all its runs carry; with all loads on or all "
                 "sources on, the greater",
          citation=_PRACTICE, version="2",
          valid="all loads at once, or all charging sources at once; switches as for conductors")
def bus_continuous_current(flows: Working, bus: str) -> Number:
    found: list[Number] = []
    for number, state in enumerate(flows.states):
        parts = [edge.id for edge in state.network.graph.incident[bus]
                 if edge.kind not in ("battery", "injector")]
        if number == 0 or any(map(state.reaches, parts)):
            found += [_passing(state, parts, bus, "loads"), _passing(state, parts, bus, "sources")]
    return largest(found)


def _passing(flows: Flows, parts: list[str], bus: str, case: Case) -> Number:
    """Half of all currents at a bus; what delivers to it together balances all the others.

    That needs others which only take: one with batteries behind it may deliver as well.
    """
    others = [part for part in parts if not flows.delivers(part, bus, case)]
    if len(others) < len(parts) and not any(flows.may_deliver(part, bus) for part in others):
        return total_at_least(size(flows.signed(part, case)) for part in others)
    sizes = [size(flows.signed(part, case)) for part in parts]
    unknown = [each for each in sizes if isinstance(each, Unknown)]
    return unknown[0] if unknown else total(sizes) * 0.5


@quantity("record.greatest_resistances", kind="opaque",
          needs={"conductors": "conductors.id", "loops": "conductors.greatest_loop_resistance",
                 "devices": "devices.id", "own": "devices.least_resistance",
                 "switches": "switches.id", "contacts": "switches.least_resistance"},
          method="The greatest loop resistance of every conductor, and the resistance of every "
                 "device and switch as recorded (at least zero where it is not), by id",
          citation=_DEFINITION, valid="any record")
def greatest_resistances(conductors: Ids, loops: Numbers, devices: Ids, own: Numbers,
                         switches: Ids, contacts: Numbers) -> dict[str, Number]:
    return {**dict(zip(conductors, map(at_least_zero, loops), strict=True)),
            **dict(zip(devices, own, strict=True)),
            **dict(zip(switches, contacts, strict=True))}


@quantity("load.voltage_drop", dimension="voltage",
          needs={"flows": "record.currents", "load": "id",
                 "bank": "bank.id", "resistances": "record.greatest_resistances"},
          method="Sum over every conductor, device and switch between where the strings meet and "
                 "the load, out and back, of its greatest resistance times its current with all "
                 "loads on; switches found open count as closed or as found, whichever gives the "
                 "more. Basis: the greatest resistance of IEC 60228, hot; not the constant of a "
                 "small-craft formula",
          citation=_PRACTICE, version="2",
          valid="one way only between bank and load; steady currents; joints where recorded, else "
                "at least the figure")
def voltage_drop(flows: Working, load: str, bank: str,
                 resistances: Mapping[str, Number]) -> Figure:
    ways = circuits_of(flows, load)
    drops = [parts if isinstance(parts, Unknown) else total_at_least(
        size(state.signed(part, "loads")) * resistances[part] for part in parts)
        for state, parts in ways]
    return Figure(largest(drops), remarks=(
        "basis: greatest resistances of IEC 60228, as hot as the insulation allows", *(
        f"through: {', '.join(parts) or 'nothing'}" for _, parts in ways
        if not isinstance(parts, Unknown))))


def circuits_of(flows: Working, load: str) -> list[tuple[Flows, Ids | Unknown]]:
    """For each state of the switches in which a bank supplies it, the circuit of a load."""
    return [(state, circuit_of(state.network, load)) for number, state in enumerate(flows.states)
            if number == 0 or isinstance(state.network.related(load, "bank"), str)]


def circuit_of(network: Network, load: str) -> Ids | Unknown:
    """The parts of the only way from where the strings meet to a load, and of a traced return."""
    layout = network.layout
    bank = network.related(load, "bank")
    if not isinstance(bank, str):
        return bank if isinstance(bank, Unknown) else Unknown.because(
            OUTSIDE_METHOD, detail="no bank supplies it")
    out = network.way(network.bank(bank).meets, layout.positive(load))
    back: Ids | None = ()
    if layout.negative(load) != layout.reference:
        back = network.way(layout.reference, layout.negative(load))
    if out is None or back is None:
        return Unknown.because(OUTSIDE_METHOD, detail="not one single way from bank to load")
    return (*out, *back)


@quantity("load.voltage_drop_share", dimension="ratio",
          needs={"drop": "voltage_drop", "nominal": "vessel.nominal_voltage"},
          method="Voltage drop over the nominal voltage of the vessel's system",
          citation=_DEFINITION, valid="loads on the main DC system")
def voltage_drop_share(drop: Number, nominal: Number) -> Number:
    return quotient(drop, nominal)


@quantity("record.conductor_sizes", kind="opaque",
          needs={"ids": "conductors.id", "values": "conductors.size"},
          method="The size of every conductor, by its id", citation=_DEFINITION,
          valid="any record")
def conductor_sizes(ids: Ids, values: tuple[object, ...]) -> dict[str, object]:
    return dict(zip(ids, values, strict=True))


@quantity("load.small_craft_voltage_drop", dimension="voltage",
          needs={"flows": "record.currents", "load": "id",
                 "bank": "bank.id", "lengths": "record.conductor_lengths",
                 "sizes": "record.conductor_sizes", "loops": "record.conductor_returns"},
          method="E = 0.0164 I L / S of every conductor between where the strings meet and the "
                 "load, L out and back. The constant is 4.9 % below that of annealed copper at "
                 "20 °C, so the drop is understated; devices and joints are not in the formula",
          citation=cite("ISO 10133 Annex A", "from memory"),
          valid="returns as the outgoing conductor, neglected, or of own runs")
def small_craft_voltage_drop(flows: Working, load: str, bank: str,
                             lengths: Mapping[str, Number], sizes: Mapping[str, object],
                             loops: Mapping[str, Number]) -> Figure:
    constant = table(_CONSTANT).rows["copper"]["constant"]
    drops = [parts if isinstance(parts, Unknown) else _by_formula(
        state, parts, constant, lengths, sizes, loops)
        for state, parts in circuits_of(flows, load)]
    return Figure(largest(drops), (table(_CONSTANT).reference("copper", "constant"),))


def _by_formula(flows: Flows, parts: Ids, constant: float, lengths: Mapping[str, Number],
                sizes: Mapping[str, object], loops: Mapping[str, Number]) -> Number:
    drops: list[Number] = []
    for part in parts:
        if part not in lengths:
            continue
        gauge, current = sizes[part], flows.signed(part, "loads")
        if not isinstance(gauge, ConductorSize) or isinstance(current, Unknown):
            return gauge if isinstance(gauge, Unknown) else total([current])
        length = lengths[part] * loops[part]
        drops.append(size(current) * length * (constant / gauge.area_mm2))
    return total(drops)


@quantity("record.conductor_returns", kind="opaque",
          needs={"ids": "conductors.id", "carries": "conductors.run.carries",
                 "returns": "conductors.run.returns"},
          method="How often the length of every conductor counts, out and back: twice where the "
                 "return is as the outgoing conductor, else once",
          citation=_DEFINITION, valid="returns other than of a stated size")
def conductor_returns(ids: Ids, carries: tuple[str, ...],
                      returns: tuple[str | Unknown, ...]) -> dict[str, Number]:
    found: dict[str, Number] = {}
    for each, side, word in zip(ids, carries, returns, strict=True):
        if side != "positive":
            found[each] = 1.0
        elif isinstance(word, Unknown):
            found[each] = word
        elif word in ("own runs", "neglected"):
            found[each] = 1.0
        else:
            found[each] = 2.0 if word == "as outgoing" else Unknown.because(
                OUTSIDE_METHOD, detail="the return has a size of its own")
    return found


QUANTITIES = (lowest_working_voltage, load_continuous_current, load_greatest_current, currents,
              surges, conductor_continuous_current, device_continuous_current,
              switch_carried_current, conductor_surge_current, bus_continuous_current,
              greatest_resistances, voltage_drop, voltage_drop_share, conductor_sizes,
              small_craft_voltage_drop, conductor_returns)
