"""Devices among each other: which way current can come, what stands before and beside, opening."""

from __future__ import annotations

from collections.abc import Mapping

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import at_least_zero, size
from garboard.quantities.table import table
from garboard.values import (
    OUTSIDE_METHOD,
    Bounds,
    Number,
    Truth,
    Unknown,
    quotient,
    smallest,
)

_DEFINITION = cite("definition", "definition")
_PRACTICE = cite("common practice of the trade", "common practice")


@quantity("device.fed_from_both_sides", kind="truth",
          needs={"network": "network", "device": "id"},
          method="Batteries or charging sources stand on both sides of it, or it is in a ring",
          citation=_DEFINITION, valid="devices in traced runs; switches closed")
def fed_from_both_sides(network: Network, device: str) -> bool:
    sides = network.sides(device)
    return sides is None or all(side.strings or side.sources for side in sides)


@quantity("device.polarity_suits", kind="truth", unknowns="passed",
          needs={"kind": "kind", "sensitive": "polarity_sensitive", "correct": "polarity_correct",
                 "both": "fed_from_both_sides"},
          method="A fuse, or a breaker that is not polarity-sensitive; a polarity-sensitive one "
                 "where current comes from one side only and it is fitted the right way round",
          citation=_PRACTICE, valid="breakers with their polarity on record")
def polarity_suits(kind: str, sensitive: Truth, correct: Truth, both: Truth) -> Truth:
    if kind == "fuse":
        return True
    suits: Truth = (both ^ True) & correct
    return (sensitive ^ True) | suits


@quantity("device.devices_in_parallel", kind="count", needs={"network": "network", "device": "id"},
          method="How many devices stand side by side between the same two places, itself included",
          citation=_DEFINITION, valid="devices in traced runs; switches closed")
def devices_in_parallel(network: Network, device: str) -> Figure:
    beside = network.beside(device)
    return Figure(len(beside), remarks=(f"side by side: {', '.join(beside)}",))


@quantity("record.device_classes", kind="opaque",
          needs={"ids": "devices.id", "values": "devices.class"},
          method="The class of every device, by its id", citation=_DEFINITION, valid="any record")
def device_classes(ids: tuple[str, ...],
                   values: tuple[str | Unknown, ...]) -> dict[str, str | Unknown]:
    return dict(zip(ids, values, strict=True))


@quantity("device.series_ratio", dimension="ratio",
          needs={"network": "network", "device": "id", "rating": "rating",
                 "ratings": "record.device_ratings"},
          method="The least rating of the devices next before it, on its way from the batteries, "
                 "over its own rating; of several that feed it side by side each alone",
          citation=_DEFINITION,
          valid="a device that batteries feed from one side, past another device")
def series_ratio(network: Network, device: str, rating: Number,
                 ratings: Mapping[str, Number]) -> Figure:
    before = network.before(device)
    if not before:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="no device stands before it"))
    return Figure(quotient(smallest([ratings[each] for each in before]), rating),
                  remarks=(f"before it: {', '.join(before)}",))


@quantity("device.opens_before_those_before_it", kind="truth",
          needs={"network": "network", "device": "id", "ratio": "series_ratio",
                 "classes": "record.device_classes"},
          method="The ratings of gG fuses in series are as 1.6 to 1 or more",
          citation=cite("IEC 60269, discrimination of gG fuse-links", "from memory"),
          valid="gG fuses throughout; of other devices their curves would be needed")
def opens_before_those_before_it(network: Network, device: str, ratio: Number,
                                 classes: Mapping[str, str | Unknown]) -> Figure:
    for each in (device, *(network.before(device) or ())):
        of = classes[each]
        if isinstance(of, Unknown):
            return Figure(of)
        if of != "gG":
            return Figure(Unknown.because(OUTSIDE_METHOD, detail=f"{each} is of class {of}"))
    least = table("discrimination-iec60269-gg")
    return Figure(ratio >= least.rows["gG"]["ratio"], (least.reference("gG", "ratio"),))


@quantity("record.conductors_by_device", kind="opaque",
          needs={"network": "network", "conductors": "conductors.id"},
          method="The conductors that each device protects, by its id", citation=_PRACTICE,
          valid="any record")
def conductors_by_device(network: Network,
                         conductors: tuple[str, ...]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for conductor in conductors:
        for device in network.protecting(conductor):
            found.setdefault(device, []).append(conductor)
    return {device: tuple(each) for device, each in found.items()}


@quantity("device.smallest_fault_current", dimension="current",
          needs={"network": "network", "circuits": "record.smallest_fault_circuit",
                 "device": "id", "conductors": "record.conductors_by_device"},
          method="The least current through it for a short at either end of any conductor that it "
                 "protects, from the strings one at a time",
          citation=cite("nodal analysis of a resistive network, checked against ngspice",
                        "definition"),
          valid="the circuit of the smallest fault; arcs, which draw less, are not covered")
def device_smallest_fault_current(network: Network, circuits: Mapping[str, Circuit], device: str,
                                  conductors: Mapping[str, tuple[str, ...]]) -> Figure:
    nodes = dict.fromkeys(node for conductor in conductors.get(device, ())
                          for edge in (network.graph.edges[conductor],)
                          for node in (edge.start, edge.end))
    found: list[Number] = []
    for node in nodes:
        for circuit in circuits.values():
            current = circuit.branch_current(device, fault=node)
            if isinstance(current, (Unknown, Bounds)) or current != 0.0:
                found.append(size(at_least_zero(current)))
    if not found:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="it protects no conductor"))
    return Figure(smallest(found), remarks=(f"shorts at: {', '.join(nodes)}",))


QUANTITIES = (fed_from_both_sides, polarity_suits, devices_in_parallel, device_classes,
              series_ratio, opens_before_those_before_it, conductors_by_device,
              device_smallest_fault_current)
