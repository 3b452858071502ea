"""What reaches the loads: lowest and highest voltage, surges against trips, loss of the bank."""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.flows import Working
from garboard.quantities.largest import LargestFaults
from garboard.quantities.spans import total_at_least
from garboard.quantities.topics.faults import STATE
from garboard.quantities.topics.loads import circuits_of
from garboard.values import (
    OUTSIDE_METHOD,
    Number,
    Truth,
    Unknown,
    any_of,
    largest,
    member_of,
    smallest,
)

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("load.surge_voltage_drop", dimension="voltage",
          needs={"flows": "record.currents", "load": "id", "bank": "bank.id",
                 "drop": "voltage_drop", "continuous": "continuous_current",
                 "greatest": "greatest_current", "resistances": "record.greatest_resistances"},
          method="Voltage drop with all loads on, plus what its own surge adds over the whole way",
          citation=_PRACTICE, valid="as the voltage drop; one load starting at a time")
def surge_voltage_drop(flows: Working, load: str, bank: str, drop: Number, continuous: Number,
                       greatest: Number, resistances: Mapping[str, Number]) -> Number:
    ways = [parts if isinstance(parts, Unknown) else total_at_least(
        resistances[part] for part in parts) for _, parts in circuits_of(flows, load)]
    return drop + (greatest - continuous) * largest(ways)


@quantity("load.lowest_voltage", dimension="voltage",
          needs={"bank": "bank.lowest_voltage", "drop": "voltage_drop"},
          method="Lowest voltage of its bank, where the last management system disconnects, less "
                 "the voltage drop with all loads on",
          citation=_PRACTICE, valid="steady loads; as the voltage drop")
def load_lowest_voltage(bank: Number, drop: Number) -> Number:
    return bank - drop


@quantity("load.lowest_voltage_on_surge", dimension="voltage",
          needs={"bank": "bank.lowest_voltage", "drop": "surge_voltage_drop"},
          method="Lowest voltage of its bank less the voltage drop while it starts",
          citation=_PRACTICE, valid="as the voltage drop on surge")
def lowest_voltage_on_surge(bank: Number, drop: Number) -> Number:
    return bank - drop


@quantity("load.highest_voltage", dimension="voltage",
          needs={"bank": "bank.highest_system_voltage"},
          method="Highest system voltage of its bank; no voltage drop is counted",
          citation=_PRACTICE, valid="steady voltages; no transients such as a load dump")
def load_highest_voltage(bank: Number) -> Number:
    return bank


@quantity("load.works_at_all_voltages", kind="truth",
          needs={"lowest": "lowest_voltage", "highest": "highest_voltage", "least": "voltage.min",
                 "most": "voltage.max"},
          method="The lowest voltage at it is not below the least it works at, the highest not "
                 "above the greatest it stands",
          citation=_DEFINITION, valid="loads with both voltages on record")
def works_at_all_voltages(lowest: Number, highest: Number, least: Number, most: Number) -> Truth:
    holds: Truth = (lowest >= least) & (highest <= most)
    return holds


@quantity("load.bank_current_on_surge", dimension="current",
          needs={"load": "id", "surges": "bank.currents_on_surge"},
          method="What all loads of its bank draw while it starts and the others run",
          citation=_DEFINITION, valid="one load starting at a time")
def bank_current_on_surge(load: str, surges: Mapping[str, Number]) -> Number:
    return surges[load]


@quantity("bank.least_trip_delay", dimension="time",
          needs={"delays": "batteries.managed_by.delays.discharge_current"},
          method="The least time for which too much discharging current must flow before a "
                 "management system of the bank disconnects",
          citation=_DEFINITION, valid="batteries with a management system")
def least_trip_delay(delays: Numbers) -> Number:
    return smallest(delays)


_SURGE = {"current": "bank_current_on_surge", "lasts": "surge_time",
          "delay": "bank.least_trip_delay"}


@quantity("load.surge_trips_bank", kind="truth", unknowns="passed",
          needs={**_SURGE, "trip": "bank.discharge_trip"},
          method="While it starts, the bank gives more than the current its first management "
                 "system trips at, for as long as that one waits",
          citation=_PRACTICE, valid="trips and delays on record; equal states of charge")
def surge_trips_bank(current: Number, lasts: Number, delay: Number, trip: Number) -> Truth:
    trips: Truth = (current > trip) & (lasts >= delay)
    return trips


@quantity("load.surge_trips_bank_one_out", kind="truth", unknowns="passed",
          needs={**_SURGE, "trip": "bank.discharge_trip_one_out"},
          method="The same with any one string of the bank out",
          citation=_PRACTICE, valid="trips and delays on record; equal states of charge")
def surge_trips_bank_one_out(current: Number, lasts: Number, delay: Number,
                             trip: Number) -> Truth:
    trips: Truth = (current > trip) & (lasts >= delay)
    return trips


@quantity("load.loses_supply_with_bank", kind="truth", unknowns="passed",
          needs={"network": "network", "bank": "bank.id", "second": "second_supply",
                 "supplied_from": "second_supply_from", "batteries": "bank.batteries.id",
                 "sources": "bank.sources.id"},
          method="It has no second supply, or the second supply hangs on the same bank",
          citation=_PRACTICE, valid="a bank that its management systems cut off")
def loses_supply_with_bank(network: Network, bank: str | Unknown, second: Truth,
                           supplied_from: str | Unknown | None, batteries: Ids | Unknown,
                           sources: Ids | Unknown) -> Truth:
    if second is False or supplied_from is None:
        return True
    if isinstance(supplied_from, Unknown):
        return second ^ True
    if isinstance(bank, Unknown):
        return bank
    same = [member_of(supplied_from, group)
            for group in (batteries, sources, network.bank(bank).nodes)]
    return any_of(same) | (second ^ True)


@quantity("load.fault_current", dimension="current",
          needs={"network": "network", "faults": "record.largest_faults", "load": "id"},
          method="Current into a short across its terminals",
          citation=cite("nodal analysis of a resistive network, checked against ngspice",
                        "definition"), valid=STATE, version="2")
def load_fault_current(network: Network, faults: LargestFaults, load: str) -> Number:
    terminal = network.layout.positive(load)
    if terminal not in network.layout.traced:
        return Unknown.because(OUTSIDE_METHOD, detail="no run leads to it")
    return faults.fault_current(terminal)


@quantity("load.inrush_current", dimension="current", unknowns="passed",
          needs={"capacitance": "capacitance", "current": "fault_current"},
          method="With an input capacitance on record, the current into a short across its "
                 "terminals: what an empty capacitor draws at first",
          citation=_PRACTICE,
          valid="an upper bound: inductance and the capacitor's own resistance not counted; no "
                "precharge")
def inrush_current(capacitance: Number, current: Number) -> Number:
    return capacitance.joined(current) if isinstance(capacitance, Unknown) else current


@quantity("record.inrushes", kind="opaque",
          needs={"ids": "loads.id", "values": "loads.inrush_current"},
          method="The inrush current of every load, by its id", citation=_DEFINITION,
          valid="any record")
def inrushes(ids: Ids, values: Numbers) -> dict[str, Number]:
    return dict(zip(ids, values, strict=True))


@quantity("switch.inrush_current", dimension="current",
          needs={"network": "network", "switch": "id", "known": "record.inrushes"},
          method="The greatest inrush current of the loads it connects to batteries",
          citation=_PRACTICE, valid="loads on one side of it, no precharge")
def switch_inrush_current(network: Network, switch: str, known: Mapping[str, Number]) -> Figure:
    sides = network.sides(switch)
    if sides is None or bool(sides[0].strings) == bool(sides[1].strings):
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="batteries not on one side only"))
    loads = sides[1 if sides[0].strings else 0].loads
    if not loads:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="it connects no load"))
    return Figure(largest([known[load] for load in loads]),
                  remarks=(f"loads: {', '.join(loads)}",))


QUANTITIES = (surge_voltage_drop, load_lowest_voltage, lowest_voltage_on_surge,
              load_highest_voltage, works_at_all_voltages, bank_current_on_surge,
              least_trip_delay, surge_trips_bank, surge_trips_bank_one_out,
              loses_supply_with_bank, load_fault_current, inrush_current, inrushes,
              switch_inrush_current)
