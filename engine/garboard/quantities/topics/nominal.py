"""Nominal voltages of circuits, which decide whether a text for 50 V and more applies."""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import cite, quantity
from garboard.values import OUTSIDE_METHOD, Number, Unknown, largest, total

_DEFINITION = cite("definition", "definition")
_HOW = ("The greatest nominal voltage of the banks it is connected to; sixteen lithium iron "
        "phosphate cells in series are 51.2 V")


@quantity("string.nominal_voltage", dimension="voltage",
          needs={"voltages": "batteries.nominal_voltage"},
          method="Sum of the nominal voltages of its batteries in series", citation=_DEFINITION,
          valid="nominal voltages as recorded, not charging voltages")
def string_nominal_voltage(voltages: tuple[Number, ...]) -> Number:
    return total(voltages)


@quantity("bank.nominal_voltage", dimension="voltage",
          needs={"voltages": "strings.nominal_voltage"},
          method="The greatest nominal voltage of its strings", citation=_DEFINITION,
          valid="nominal voltages as recorded, not charging voltages")
def bank_nominal_voltage(voltages: tuple[Number, ...]) -> Number:
    return largest(voltages)


@quantity("record.nominal_voltages", kind="opaque",
          needs={"ids": "banks.id", "values": "banks.nominal_voltage"},
          method="The nominal voltage of every bank, by its id", citation=_DEFINITION,
          valid="any record")
def nominal_voltages(ids: tuple[str, ...], values: tuple[Number, ...]) -> dict[str, Number]:
    return dict(zip(ids, values, strict=True))


_NEEDS = {"network": "network", "part": "id", "voltages": "record.nominal_voltages"}


@quantity("conductor.nominal_voltage", dimension="voltage", needs=_NEEDS, method=_HOW,
          citation=_DEFINITION, valid="conductors that a bank is connected to, switches closed")
def conductor_nominal_voltage(network: Network, part: str,
                              voltages: Mapping[str, Number]) -> Number:
    return _at(network, part, voltages)


@quantity("device.nominal_voltage", dimension="voltage", needs=_NEEDS, method=_HOW,
          citation=_DEFINITION, valid="devices that a bank is connected to, switches closed")
def device_nominal_voltage(network: Network, part: str,
                           voltages: Mapping[str, Number]) -> Number:
    return _at(network, part, voltages)


def _at(network: Network, part: str, voltages: Mapping[str, Number]) -> Number:
    edge = network.graph.edges[part]
    found = [voltages[bank.id] for node in (edge.start, edge.end)
             for bank in network.banks_at(node)]
    return largest(found) if found else Unknown.because(
        OUTSIDE_METHOD, detail="no battery bank is connected to it")


QUANTITIES = (string_nominal_voltage, bank_nominal_voltage, nominal_voltages,
              conductor_nominal_voltage, device_nominal_voltage)
