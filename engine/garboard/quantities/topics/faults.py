"""Fault currents: the circuit in its largest state, and what a short draws through each device."""

from __future__ import annotations

from functools import reduce
from typing import Final

from garboard.network import Circuit, Network, SidedCurrent
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.largest import LargestFaults, contacts_of
from garboard.values import NOT_RECORDED, Number, Unknown, format_value

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
_DEFINITION = cite("definition", "definition")
STATE: Final = (
    "steady current into a dead short with every source connected: sources at their greatest "
    "open-circuit voltage, conductors cold, every switch closed that can be, as found or not; "
    "joints of no resistance, nor devices and switches without one on record; of chargers, "
    "machines and motors what they declare as their contribution; arcs are not covered")
#: Kinds of load that turn, and may feed back into a short while they do.
MOTORS: Final = ("motor", "pump", "bilge pump", "blower", "cranking motor", "windlass", "thruster",
                 "winch", "propulsion")


@quantity("record.declared_contributions", kind="opaque", unknowns="passed",
          needs={"ids": "sources.id", "values": "sources.fault_contribution",
                 "loads": "loads.id", "fed_back": "loads.fault_contribution"},
          method="The fault contribution of every charging source, and of every load that feeds "
                 "back as a running motor does, that declares one, by its id",
          citation=_DEFINITION, version="2",
          valid="what is not declared is left out, not taken to be nothing: the figures name it")
def declared_contributions(ids: Ids | Unknown, values: Numbers | Unknown, loads: Ids | Unknown,
                           fed_back: Numbers | Unknown) -> dict[str, Number]:
    found: dict[str, Number] = {}
    for names, amounts in ((ids, values), (loads, fed_back)):
        if not isinstance(names, Unknown) and not isinstance(amounts, Unknown):
            found |= {each: amount for each, amount in zip(names, amounts, strict=True)
                      if not isinstance(amount, Unknown)}
    return found


@quantity("record.undeclared_contributions", kind="opaque", unknowns="passed",
          needs={"known": "declared_contributions", "sources": "sources.id", "loads": "loads.id",
                 "kinds": "loads.kind"},
          method="The charging sources, and the loads that are motors by their kind, that declare "
                 "no fault contribution",
          citation=_DEFINITION, valid="loads with their kind on record")
def undeclared_contributions(known: dict[str, Number], sources: Ids | Unknown,
                             loads: Ids | Unknown,
                             kinds: tuple[str | Unknown, ...] | Unknown) -> Ids:
    found = [] if isinstance(sources, Unknown) else list(sources)
    if not isinstance(loads, Unknown) and not isinstance(kinds, Unknown):
        found += [load for load, kind in zip(loads, kinds, strict=True)
                  if not isinstance(kind, Unknown) and kind in MOTORS]
    return tuple(each for each in found if each not in known)


@quantity("record.contributions_on_record", kind="truth",
          needs={"sources": "sources.id", "loads": "loads.id",
                 "left_out": "undeclared_contributions"},
          method="Every charging source, and every load that is a motor by its kind, declares what "
                 "it adds to a short circuit, if only that it is nothing",
          citation=_DEFINITION, valid="records that list charging sources and loads")
def contributions_on_record(sources: Ids, loads: Ids, left_out: Ids) -> Figure:
    return Figure(not left_out, remarks=_remarks(left_out))


@quantity("record.largest_fault_circuit", kind="opaque",
          needs={"network": "network", "conductors": "conductors.loop_resistance",
                 "conductor_ids": "conductors.id", "devices": "devices.least_resistance",
                 "device_ids": "devices.id", "switches": "switches.least_resistance",
                 "switch_ids": "switches.id", "emfs": "batteries.open_circuit_voltage_max",
                 "internal": "batteries.source_resistance", "battery_ids": "batteries.id",
                 "injected": "declared_contributions"},
          method="The DC network with the resistance of every conductor, device and switch, and "
                 "the EMF and source resistance of every battery; a declared fault contribution of "
                 "a charging source or motor as a current into its terminal. Every switch counts "
                 "as closed",
          citation=_NODAL, version="2",
          valid="steady currents; sources at their greatest open-circuit voltage, conductors cold; "
                "a device or switch without a resistance on record has at least none")
def largest_fault_circuit(
        network: Network, conductors: Numbers, conductor_ids: Ids, devices: Numbers,
        device_ids: Ids, switches: Numbers, switch_ids: Ids, emfs: Numbers, internal: Numbers,
        battery_ids: Ids, injected: dict[str, Number]) -> Circuit:
    resistance: dict[str, Number] = {}
    for ids, values in ((conductor_ids, conductors), (device_ids, devices),
                        (switch_ids, switches), (battery_ids, internal)):
        resistance |= zip(ids, values, strict=True)
    return Circuit(network, resistance, dict(zip(battery_ids, emfs, strict=True)), injected)


@quantity("record.largest_faults", kind="opaque",
          needs={"network": "network", "circuit": "largest_fault_circuit",
                 "devices": "devices.least_resistance", "device_ids": "devices.id",
                 "switches": "switches.least_resistance", "switch_ids": "switches.id",
                 "left_out": "undeclared_contributions", "batteries": "batteries.id"},
          method="The circuit of the largest fault, a device or switch without a resistance on "
                 "record having none; where one of no resistance would draw current away from the "
                 "place asked about, the greatest current over all resistances it may have",
          citation=_NODAL, version="2",
          valid=f"{STATE}; a battery to which no run leads could be joined anywhere, so that it "
                "leaves every current open upwards")
def largest_faults(network: Network, circuit: Circuit, devices: Numbers, device_ids: Ids,
                   switches: Numbers, switch_ids: Ids, left_out: Ids,
                   batteries: Ids) -> LargestFaults:
    contacts = contacts_of({**dict(zip(device_ids, devices, strict=True)),
                            **dict(zip(switch_ids, switches, strict=True))})
    return LargestFaults(network, circuit, contacts, left_out, _untraced(network, batteries))


def _untraced(network: Network, batteries: Ids) -> Unknown | None:
    """Why batteries are in no circuit: no run leads to their positive terminal."""
    missing = [network.layout.positive(each) for each in batteries
               if network.layout.positive(each) not in network.layout.traced]
    unknown = [Unknown.because(NOT_RECORDED, "runs", f"no run leads to {each}")
               for each in missing]
    return reduce(Unknown.joined, unknown) if unknown else None


@quantity("device.prospective_current", dimension="current",
          needs={"faults": "record.largest_faults", "device": "id"},
          method="Current through the device's place with the device replaced by a link, for a "
                 "short at either of its terminals; the larger of the two",
          citation=_NODAL, valid=STATE, version="2")
def prospective_current(faults: LargestFaults, device: str) -> Figure:
    return sided(faults, faults.through(device, own_resistance=False))


@quantity("device.through_current", dimension="current",
          needs={"faults": "record.largest_faults", "device": "id"},
          method="Current through the device with its own resistance, for a short at either of "
                 "its terminals; the larger of the two",
          citation=_NODAL, valid=STATE, version="2")
def through_current(faults: LargestFaults, device: str) -> Figure:
    return sided(faults, faults.through(device, own_resistance=True))


def sided(faults: LargestFaults, current: SidedCurrent) -> Figure:
    """The larger of two currents, with a remark for either side."""
    remarks = tuple(f"short at the {end!r} terminal: {format_value(each, 'current')}"
                    for end, each in (("from", current.at_from), ("to", current.at_to)))
    if current.side is not None:
        remarks = (f"short at the {current.side!r} terminal", *remarks)
    return Figure(current.value, remarks=(*remarks, *_remarks(faults.left_out)))


@quantity("bus.fault_current", dimension="current",
          needs={"faults": "record.largest_faults", "bus": "id"},
          method="Current into a short at the bus", citation=_NODAL, valid=STATE, version="2")
def bus_fault_current(faults: LargestFaults, bus: str) -> Figure:
    return Figure(faults.fault_current(bus), remarks=_remarks(faults.left_out))


def _remarks(left_out: Ids) -> Ids:
    if not left_out:
        return ()
    shown = ", ".join(left_out[:20]) + ("" if len(left_out) <= 20 else
                                        f" and {len(left_out) - 20} more")
    return (f"not counted, for they declare no contribution: {shown}",)


QUANTITIES = (declared_contributions, undeclared_contributions, contributions_on_record,
              largest_fault_circuit, largest_faults, prospective_current, through_current,
              bus_fault_current)
