"""How slowly a short-circuit current can rise, against what a device was tested at.

Where cables lie is not on record, so their inductance is bounded, not assumed: no loop of a given
length of wire has more than a circle has. Each conductor with its return alone then has a longest
time constant, and a network of such conductors has none longer than the longest of its parts (its
time constants are weighted means of theirs; resistances without inductance only shorten them).

A conductor whose return is a run of its own shares a loop with others, however those lie. By itself
it has no more (partial) inductance than if it were straight; the inductance between two is at most
the root of the product of their own. A network then has no time constant longer than the sum of
theirs (Cauchy's inequality on its stored energy over its losses), and only what can carry current
from a battery to the short counts.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from garboard.network import Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.item import Item
from garboard.quantities.spans import high_end, low_end, unrecorded
from garboard.quantities.table import Cell, table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, chosen, largest, total
from garboard.values.conductor_size import ConductorSize

_CIRCLE = cite("inductance of a circular loop, L = µ0 R (ln(8R/a) - 7/4), F. W. Grover, "
               "Inductance Calculations", "from memory")


def magnetic_constant() -> Cell:
    """The magnetic constant in H/m."""
    return table("physical-constants").read("magnetic constant", "value")


def greatest_inductance(wire: float, area: float) -> float:
    """Inductance in H of a circle of so many metres of wire of so many mm²."""
    radius, thin = wire / (2 * math.pi), math.sqrt(area / math.pi) / 1000
    return magnetic_constant().value * radius * (math.log(8 * radius / thin) - 1.75)


def straight_inductance(wire: float, area: float) -> float:
    """Partial inductance in H of so many metres of straight wire of so many mm²."""
    thin = math.sqrt(area / math.pi) / 1000
    return magnetic_constant().value / (2 * math.pi) * wire * (math.log(2 * wire / thin) - 0.75)


@quantity("conductor.greatest_inductance", dimension="inductance",
          needs={"size": "size", "length": "length", "ways": "run.returns",
                 "carries": "run.carries"},
          method="That of a circle of the conductor's length out and back; where the return is a "
                 "run of its own, the partial inductance of its length of straight wire; at least "
                 "nothing",
          citation=_CIRCLE, version="2",
          valid="a return as the outgoing conductor or of own runs; a conductor at least twenty "
                "times as long as it is thick and in no coil; no iron around it")
def conductor_greatest_inductance(size: ConductorSize, length: Number, ways: str,
                                  carries: str) -> Figure:
    alone = ways == "own runs" or carries == "negative"
    if not alone and ways != "as outgoing":
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="how long the way back is"))
    wire = high_end(length) * (1 if alone else 2)
    if wire < 40 * math.sqrt(size.area_mm2 / math.pi) / 1000 or not math.isfinite(wire):
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="too short for the form"))
    greatest = (straight_inductance if alone else greatest_inductance)(wire, size.area_mm2)
    return Figure(unrecorded(0.0, greatest, Unknown.because(
        OUTSIDE_METHOD, detail="how the conductor and its return lie")),
        (magnetic_constant().row,))


@quantity("record.time_constants", kind="opaque",
          needs={"ids": "conductors.id", "inductances": "conductors.greatest_inductance",
                 "resistances": "conductors.loop_resistance"},
          method="The longest time constant of every conductor with its return, by its id",
          citation=_CIRCLE, valid="any record")
def time_constants(ids: tuple[str, ...], inductances: tuple[Number, ...],
                   resistances: tuple[Number, ...]) -> dict[str, Number]:
    found: dict[str, Number] = {}
    for each, inductance, resistance in zip(ids, inductances, resistances, strict=True):
        least = low_end(resistance)
        if isinstance(inductance, Unknown):
            found[each] = inductance
        elif least <= 0:
            found[each] = Unknown.because(OUTSIDE_METHOD, detail="its least resistance") \
                .joined(resistance)
        else:
            found[each] = high_end(inductance) / least
    return found


@quantity("record.longest_time_constants", kind="opaque",
          needs={"network": "network", "known": "record.time_constants"},
          method="The longest time constant of any conductor of what hangs together, by its name",
          citation=_CIRCLE, valid="any record")
def longest_time_constants(network: Network, known: Mapping[str, Number]) -> dict[str, Number]:
    islands: dict[str, list[Number]] = {}
    for conductor, value in known.items():
        name = network.layout.islands.of(network.graph.edges[conductor].start)
        islands.setdefault(name, []).append(value)
    return {name: largest(values) for name, values in islands.items()}


@quantity("record.separate_conductors", kind="opaque",
          needs={"ids": "conductors.id", "ways": "conductors.run.returns",
                 "carries": "conductors.run.carries"},
          method="The conductors whose return is a run of its own, and those that are such a "
                 "return",
          citation=cite("definition", "definition"), valid="any record")
def separate_conductors(ids: tuple[str, ...], ways: tuple[str | Unknown, ...],
                        carries: tuple[str, ...]) -> frozenset[str]:
    return frozenset(each for each, way, side in zip(ids, ways, carries, strict=True)
                     if side == "negative" or (not isinstance(way, Unknown) and way == "own runs"))


@quantity("device.longest_time_constant", dimension="time",
          needs={"network": "network", "device": "id", "known": "record.longest_time_constants",
                 "each": "record.time_constants", "separate": "record.separate_conductors"},
          method="The longest time constant of any conductor that hangs together with it; where "
                 "returns are runs of their own, the sum over all conductors on ways from the "
                 "batteries to the device and back",
          citation=_CIRCLE, version="2",
          valid="cold conductors; with returns as outgoing, inductance of one run upon another is "
                "not covered")
def longest_time_constant(network: Network, device: str, known: Mapping[str, Number],
                          each: Mapping[str, Number], separate: frozenset[str]) -> Figure:
    remarks: tuple[str, ...] = ()
    if separate:
        live = _live(network, device, each)
        longest: Number | None = total(each[conductor] for conductor in live) if live else None
        remarks = (f"sum over: {', '.join(live[:20])}"
                   + (f" and {len(live) - 20} more" if len(live) > 20 else ""),)
    else:
        longest = known.get(network.layout.islands.of(network.graph.edges[device].start))
    if longest is None:
        return Figure(Unknown.because(OUTSIDE_METHOD, detail="no conductor hangs together with it"))
    if isinstance(longest, Unknown):
        return Figure(longest)
    return Figure(unrecorded(0.0, high_end(longest), Unknown.because(
        OUTSIDE_METHOD, detail="how the cables lie").joined(longest)), remarks=remarks)


def _live(network: Network, device: str, conductors: Mapping[str, Number]) -> list[str]:
    """The conductors that can carry current from a battery to a short at a device and back.

    Left out are dead branches: with a battery on one side only, and not on the way between a string
    and the device or the common return.
    """
    layout, edge = network.layout, network.graph.edges[device]
    ways: set[str] = set()
    for string in network.strings:
        for start in (string.positive, string.negative):
            for end in (edge.start, edge.end, layout.reference):
                ways.update(network.path(start, end))
    joined = {layout.islands.of(edge.start), layout.islands.of(layout.reference)}
    joined |= {layout.islands.of(end) for battery in layout.batteries
               for end in (battery.start, battery.end)}
    found = []
    for conductor in conductors:
        if layout.islands.of(network.graph.edges[conductor].start) in joined:
            fed = network.fed(conductor)
            if fed is None or all(fed) or conductor in ways:
                found.append(conductor)
    return found


@quantity("device.declared_time_constant", dimension="time",
          needs={"device": "id", "breaks": "breaks", "highest": "highest_system_voltage",
                 "current": "prospective_current"},
          method="The greatest time constant among the declared points on direct current that "
                 "cover the highest system voltage and the prospective current",
          citation=cite("definition", "definition"), valid="declared points")
def declared_time_constant(device: str, breaks: tuple[Item, ...], highest: Number,
                           current: Number) -> Number:
    fitting: list[Number] = []
    for point in breaks:
        covers = ((point["voltage.kind"] == "DC") & (point["voltage"] >= highest)
                  & (point["current"] >= current))
        if covers is not False:
            value = chosen(covers, point["time_constant"], 0.0)
            assert value is not None
            fitting.append(value)  # type: ignore[arg-type]
    if not fitting:
        return Unknown.because(OUTSIDE_METHOD, f"{device}.breaks",
                               "no declared point covers the voltage and the current")
    return largest(fitting)


QUANTITIES = (conductor_greatest_inductance, time_constants, longest_time_constants,
              separate_conductors, longest_time_constant, declared_time_constant)
