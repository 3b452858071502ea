"""Fault currents: the circuit in its largest state, and what a short draws through each device."""

from __future__ import annotations

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.values import (
    OUTSIDE_METHOD,
    UNRECORDED,
    Bounds,
    Cause,
    Number,
    Unknown,
    total,
)

Ids = tuple[str, ...]
Numbers = tuple[Number, ...]

_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
_STATE = ("steady current into a dead short; sources at their greatest open-circuit voltage, "
          "conductors cold; joints of no resistance; of chargers and machines only what is "
          "declared as their contribution; arcs are not covered")


@quantity("record.declared_contributions", kind="opaque", unknowns="passed",
          needs={"ids": "sources.id", "values": "sources.fault_contribution"},
          method="The fault contribution of every charging source that declares one, by its id",
          citation=cite("definition", "definition"),
          valid="what is not declared is left out, not taken to be nothing: see the figures' range")
def declared_contributions(ids: Ids | Unknown, values: Numbers | Unknown) -> dict[str, Number]:
    if isinstance(ids, Unknown) or isinstance(values, Unknown):
        return {}
    return {source: value for source, value in zip(ids, values, strict=True)
            if not isinstance(value, Unknown)}


@quantity("record.motor_contributions", dimension="current", unknowns="passed",
          needs={"values": "loads.fault_contribution"},
          method="Sum of the fault contributions that loads (running motors) declare",
          citation=cite("definition", "definition"),
          valid="what is not declared is left out, not taken to be nothing: see the figures' range")
def motor_contributions(values: Numbers | Unknown) -> Number:
    if isinstance(values, Unknown):
        return 0.0
    return total([value for value in values if not isinstance(value, Unknown)])


def _with_motors(current: Number, motors: Number) -> Number:
    """What motors declare reaches a short in part or whole: by superposition between 0 and all."""
    most = motors.hi if isinstance(motors, Bounds) else motors
    if isinstance(most, Unknown) or most == 0:
        return current
    why = Cause(OUTSIDE_METHOD, detail="how much of the motors' contribution reaches the short")
    return current + Bounds(0.0, most, basis=(UNRECORDED,), causes=(why,))


@quantity("record.largest_fault_circuit", kind="opaque",
          needs={"network": "network", "conductors": "conductors.loop_resistance",
                 "conductor_ids": "conductors.id", "devices": "devices.least_resistance",
                 "device_ids": "devices.id", "switches": "switches.least_resistance",
                 "switch_ids": "switches.id", "emfs": "batteries.open_circuit_voltage_max",
                 "internal": "batteries.source_resistance", "battery_ids": "batteries.id",
                 "injected": "declared_contributions"},
          method="The DC network with the resistance of every conductor, device and switch, and "
                 "the EMF and source resistance of every battery; a declared fault contribution of "
                 "a charging source as a current into its terminal",
          citation=_NODAL, valid=_STATE)
def largest_fault_circuit(
        network: Network, conductors: Numbers, conductor_ids: Ids, devices: Numbers,
        device_ids: Ids, switches: Numbers, switch_ids: Ids, emfs: Numbers, internal: Numbers,
        battery_ids: Ids, injected: dict[str, Number]) -> Circuit:
    resistance: dict[str, Number] = {}
    for ids, values in ((conductor_ids, conductors), (device_ids, devices),
                        (switch_ids, switches), (battery_ids, internal)):
        resistance |= zip(ids, values, strict=True)
    return Circuit(network, resistance, dict(zip(battery_ids, emfs, strict=True)), injected)


@quantity("device.prospective_current", dimension="current",
          needs={"circuit": "record.largest_fault_circuit", "device": "id",
                 "motors": "record.motor_contributions"},
          method="Current through the device's place with the device replaced by a link, for a "
                 "short at either of its terminals; the larger of the two",
          citation=_NODAL, valid=_STATE)
def prospective_current(circuit: Circuit, device: str, motors: Number) -> Figure:
    return _sided(circuit, device, motors, own_resistance=False)


@quantity("device.through_current", dimension="current",
          needs={"circuit": "record.largest_fault_circuit", "device": "id",
                 "motors": "record.motor_contributions"},
          method="Current through the device with its own resistance, for a short at either of "
                 "its terminals; the larger of the two",
          citation=_NODAL, valid=_STATE)
def through_current(circuit: Circuit, device: str, motors: Number) -> Figure:
    return _sided(circuit, device, motors, own_resistance=True)


def _sided(circuit: Circuit, device: str, motors: Number, *,
           own_resistance: bool) -> Figure:
    sided = circuit.device_current(device, own_resistance=own_resistance)
    remarks = () if sided.side is None else (f"short at the {sided.side!r} terminal",)
    return Figure(_with_motors(sided.value, motors), remarks=remarks)


@quantity("bus.fault_current", dimension="current",
          needs={"circuit": "record.largest_fault_circuit", "bus": "id",
                 "motors": "record.motor_contributions"},
          method="Current into a short at the bus", citation=_NODAL, valid=_STATE)
def bus_fault_current(circuit: Circuit, bus: str, motors: Number) -> Number:
    return _with_motors(circuit.fault_current(bus), motors)


QUANTITIES = (declared_contributions, motor_contributions, largest_fault_circuit,
              prospective_current, through_current, bus_fault_current)
