"""What switches, shunts, buses and holders withstand for a short time, against what can flow."""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.largest import LargestFaults
from garboard.quantities.topics.faults import STATE, sided
from garboard.values import OUTSIDE_METHOD, Number, Unknown, largest, quotient

_DEFINITION = cite("definition", "definition")
_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")


@quantity("switch.through_current", dimension="current",
          needs={"faults": "record.largest_faults", "switch": "id"},
          method="Current through it with its own resistance, for a short at either of its "
                 "terminals; the larger of the two",
          citation=_NODAL, valid=STATE, version="2")
def switch_through_current(faults: LargestFaults, switch: str) -> Figure:
    return sided(faults, faults.through(switch, own_resistance=True))


@quantity("switch.withstand_energy", dimension="let_through",
          needs={"current": "withstand_current", "time": "withstand_time"},
          method="Square of its short-time withstand current times the time", citation=_DEFINITION,
          valid="faults no longer than the stated time")
def switch_withstand_energy(current: Number, time: Number) -> Number:
    return current * current * time


@quantity("bus.withstand_energy", dimension="let_through",
          needs={"current": "withstand_current", "time": "withstand_time"},
          method="Square of its short-time withstand current times the time", citation=_DEFINITION,
          valid="faults no longer than the stated time")
def bus_withstand_energy(current: Number, time: Number) -> Number:
    return current * current * time


@quantity("record.let_throughs", kind="opaque",
          needs={"ids": "devices.id", "values": "devices.let_through",
                 "at": "devices.let_through.at_current"},
          method="The let-through of every device and the current it is declared at, by its id",
          citation=_DEFINITION, valid="any record")
def let_throughs(ids: tuple[str, ...], values: tuple[Number, ...],
                 at: tuple[Number, ...]) -> dict[str, tuple[Number, Number]]:
    return dict(zip(ids, zip(values, at, strict=True), strict=True))


@quantity("switch.let_through", dimension="let_through",
          needs={"network": "network", "switch": "id", "through": "through_current",
                 "known": "record.let_throughs"},
          method="The greatest let-through of the devices that protect it, each declared at a "
                 "current no less than the current through the switch",
          citation=_DEFINITION, valid="let-through figures declared with their current")
def switch_let_through(network: Network, switch: str, through: Number,
                       known: Mapping[str, tuple[Number, Number]]) -> Number:
    devices = network.protecting(switch)
    if not devices:
        return Unknown.because(OUTSIDE_METHOD, detail="no device protects it")
    return largest([declared_for(through, *known[device]) for device in devices])


def declared_for(current: Number, value: Number, at: Number) -> Number:
    """A let-through, if it was declared at no less than the current it is wanted for."""
    reaches = current <= at
    if isinstance(reaches, Unknown):
        return reaches.joined(value)
    return value if reaches else Unknown.because(
        OUTSIDE_METHOD, detail="let-through declared at less than the fault current")


@quantity("switch.let_through_share", dimension="ratio",
          needs={"passed": "let_through", "withstood": "withstand_energy"},
          method="Let-through of its protection over the energy it withstands",
          citation=_DEFINITION,
          valid="energies; a longer fault of the same energy heats it less, a shorter one is not "
                "covered")
def switch_let_through_share(passed: Number, withstood: Number) -> Number:
    return quotient(passed, withstood)


@quantity("bus.withstand_share", dimension="ratio",
          needs={"current": "fault_current", "withstood": "withstand_current"},
          method="Current into a short at the bus over the current it withstands",
          citation=_DEFINITION, valid="faults no longer than the stated time")
def bus_withstand_share(current: Number, withstood: Number) -> Number:
    return quotient(current, withstood)


QUANTITIES = (switch_through_current, switch_withstand_energy, bus_withstand_energy, let_throughs,
              switch_let_through, switch_let_through_share, bus_withstand_share)
