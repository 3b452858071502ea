"""Every figure of a record, worked out from its text: the second opinion of the program's trail."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from oracle.circuit import Circuit, Element
from oracle.sheet import Data, Figure, Sheet, area, ends, plain, table_current

RETURN = "the common return"
PARTS = {"conductor": "conductor", "fuse": "device", "breaker": "device", "switch": "switch"}


@dataclass
class Part:
    """A part of a run, between two nodes."""

    id: str
    kind: str
    data: Data
    run: Data
    start: str
    end: str

    def other(self, node: str) -> str:
        return self.end if node == self.start else self.start


class Expected:
    """The figures of one record; ``banks`` says which batteries stand on which bus.

    ``bare``: devices and switches without a resistance on record have none, which is the state the
    largest fault currents are of; else any that is not negative.
    """

    def __init__(self, sheet: Sheet, banks: dict[str, list[list[str]]], bare: bool = False) -> None:
        self.sheet, self.banks, self.bare = sheet, banks, bare
        self.batteries = {each["id"]: each for each in sheet.list("batteries")}
        self.users = {each["id"]: each for key in ("charging_sources", "loads")
                      for each in sheet.list(key)}
        self.buses = [each["id"] for each in sheet.list("buses")]
        self.places = {each["id"]: each for each in sheet.list("places")}
        self.parts = list(self._parts())

    # what is joined to what ----------------------------------------------------------------------
    def _terminal(self, name: str) -> str:
        return f"{name}.positive" if name in self.batteries or name in self.users else name

    def _parts(self) -> Iterator[Part]:
        for run in self.sheet.list("runs"):
            through = run["through"]
            nodes = [self._terminal(run["from"]),
                     *(f"{run['id']} after {number}" for number in range(1, len(through))),
                     self._terminal(run["to"])]
            for number, part in enumerate(through):
                ((word, data),) = part.items()
                yield Part(data["id"], PARTS[word], data, run, nodes[number], nodes[number + 1])

    @cached_property
    def steps(self) -> dict[str, list[Part]]:
        found: dict[str, list[Part]] = {}
        for part in self.parts:
            found.setdefault(part.start, []).append(part)
            found.setdefault(part.end, []).append(part)
        return found

    def reach(self, start: str, passes: Callable[[Part], bool]) -> set[str]:
        found, waiting = {start}, [start]
        while waiting:
            node = waiting.pop()
            for part in self.steps.get(node, ()):
                if passes(part) and part.other(node) not in found:
                    found.add(part.other(node))
                    waiting.append(part.other(node))
        return found

    def positive(self, battery: str) -> str:
        return f"{battery}.positive"

    def negative(self, thing: str) -> str:
        node = f"{thing}.negative"
        return node if node in self.steps else self.ground

    @cached_property
    def ground(self) -> str:
        """The negative bus that most negative terminals lead to; else nothing one can point at."""
        counts = dict.fromkeys(self.buses, 0)
        for battery in self.batteries:
            there = self.reach(f"{battery}.negative", lambda part: True)
            if not any(self.positive(each) in there for each in self.batteries):
                for bus in self.buses:
                    counts[bus] += bus in there
        best = max(counts, key=lambda bus: counts[bus], default=RETURN)
        return best if counts.get(best) else RETURN

    @cached_property
    def strings(self) -> list[list[str]]:
        return [string for strings in self.banks.values() for string in strings]

    def _is_positive(self, run: Data) -> bool:
        there = self.reach(self._terminal(run["from"]), lambda part: True)
        lows = any(f"{each}.negative" in there for each in (*self.batteries, *self.users))
        return self.ground not in there and not lows

    # resistances ---------------------------------------------------------------------------------
    def _copper(self, name: str, data: Data, beside: list[Part]) -> Figure:
        """Annealed copper of the whole area, as cold as the coldest place of the conductors it
        lies beside; or as stated, brought to that temperature."""
        if "resistance" in data:
            return self.sheet.figure(f"{name}.resistance", data["resistance"]) * self._cooled(
                name, data, beside)
        if "size" not in data or "length" not in data:
            return self.sheet.at_least_zero(f"{name}.resistance")
        length = self.sheet.figure(f"{name}.length", data["length"])
        return length / 58 / area(data["size"]) * self._cold(f"{name}.cold", beside)

    def _cooled(self, name: str, data: Data, beside: list[Part]) -> Figure:
        """From the temperature of the finding to the coldest place; found at no recorded one, it
        was no colder than that place and no hotter than its insulation allows."""
        leaf = data["resistance"]
        crossed = any(part.data.get("crosses") for part in beside)
        if isinstance(leaf, dict) and "temperature" in leaf:
            return self._cold(f"{name}.cold", beside) / factor(plain(leaf["temperature"]))
        if not crossed:
            return np.ones(self.sheet.count)
        hottest = factor(plain(data["insulation"])) if "insulation" in data else np.inf
        least = self._cold(f"{name}.cold", beside).min() / hottest
        return self.sheet.between(f"{name}.found at", float(least), 1.0)

    def _cold(self, name: str, beside: list[Part]) -> Figure:
        """The factor of the coldest place; at most that where one more place is not recorded."""
        known = [ends(self.places[place]["temperature"])[0]
                 for part in beside for place in part.data.get("crosses", [])]
        if not known:
            return self.sheet.at_least_zero(name)
        least = factor(min(known))
        if all("crosses" in part.data for part in beside):
            return np.full(self.sheet.count, least)
        return self.sheet.between(name, 0.0, least)

    def loop(self, part: Part) -> Figure:
        """A conductor with its share of the way back."""
        out = self._copper(part.id, part.data, [part])
        way = part.run.get("return", self.sheet.data["wiring"].get("returns"))
        if not self._is_positive(part.run) or way in ("neglected", "own runs") or (
                isinstance(way, dict) and "run" in way):
            return out
        if way is None:
            return out + self.sheet.at_least_zero(f"{part.id} back")
        if way == "as outgoing":
            return 2 * out
        mates = [each for each in self.parts
                 if each.run is part.run and each.kind == "conductor"]
        back = self._copper(f"{part.run['id']} back", way, mates)
        if len(mates) == 1:
            return out + back
        lengths = {each.id: self.sheet.figure(f"{each.id}.length", each.data["length"])
                   for each in mates}
        return out + back * lengths[part.id] / sum(lengths.values())

    def resistance(self, part: Part) -> Figure:
        if part.kind == "conductor":
            return self.loop(part)
        if "resistance" in part.data:
            return self.sheet.figure(f"{part.id}.resistance", part.data["resistance"])
        if self.bare:
            return np.zeros(self.sheet.count)
        return self.sheet.at_least_zero(f"{part.id}.resistance")

    def emf(self, battery: str) -> Figure:
        return self.sheet.figure(f"{battery}.emf",
                                 self.batteries[battery]["open_circuit_voltage_max"])

    def internal(self, battery: str) -> Figure:
        data = self.batteries[battery]
        if "internal_resistance" in data:
            return self.sheet.figure(f"{battery}.resistance", data["internal_resistance"])
        return self.emf(battery) / self.sheet.figure(f"{battery}.short",
                                                     data["short_circuit_current"])

    def circuit(self, batteries: list[str] | None = None) -> Circuit:
        """The whole network; or with some batteries only, and nothing from charging sources."""
        nothing = np.zeros(self.sheet.count)
        elements = [Element(part.id, part.start, part.end, self.resistance(part), nothing)
                    for part in self.parts]
        elements += [Element(each, self.negative(each), self.positive(each), self.internal(each),
                             self.emf(each)) for each in batteries or self.batteries]
        return Circuit(elements, self.ground, self.sheet.count,
                       [] if batteries else list(self._contributions()))

    def _contributions(self) -> Iterator[tuple[str, str, Figure]]:
        """What charging sources are declared to add to a fault."""
        for each in self.sheet.list("charging_sources"):
            if "fault_contribution" in each:
                amount = self.sheet.figure(f"{each['id']} adds", each["fault_contribution"])
                yield self.negative(each["id"]), self.positive(each["id"]), amount

    # currents ------------------------------------------------------------------------------------
    def _back(self, node: str) -> str:
        """Where a short at a node leads: the return, or the other terminal of a load or source."""
        thing, _, terminal = node.partition(".")
        if terminal == "positive" and thing in self.users:
            return self.negative(thing)
        there = self.reach(node, lambda part: True)
        if self.ground in there or node == self.ground:
            return next(iter(self.banks))
        return self.ground

    def currents(self) -> dict[str, Figure]:
        """Prospective and through currents of devices, fault currents of buses."""
        circuit = self.circuit()
        found = {}
        for part in self.parts:
            if part.kind == "device":
                for name, linked in (("prospective", part.id), ("through", None)):
                    sides = [circuit.fault(node, self._back(node), linked)[1][
                        :, circuit.rows[part.id]] for node in (part.start, part.end)]
                    found[f"{part.id}.{name}_current"] = np.abs(sides).max(axis=0)
        for bus in self.buses:
            if bus in circuit.nodes:
                found[f"{bus}.fault_current"] = np.abs(circuit.fault(bus, self._back(bus))[0])
        return found

    def charge_limits(self) -> dict[str, Figure]:
        """What a bank accepts: no string may get more than its own limit by its share."""
        found = {}
        for bus, strings in self.banks.items():
            circuit = self.circuit([each for string in strings for each in string])
            flows = circuit.drawn(bus, self._back(bus))
            worst = []
            for string in strings:
                share = flows[:, circuit.rows[string[0]]]
                limit = min(plain(self.batteries[each]["charge"]["current_max"])
                            for each in string)
                worst.append(limit / share)
            found[f"bank-{bus}.charge_current_limit"] = np.min(worst, axis=0)
        return found

    # voltages and sums ---------------------------------------------------------------------------
    def _stage(self, source: Data) -> float:
        stages = [plain(volts) for name, volts in source["stages"].items()
                  if name != "equalising" or source.get("equalising_enabled") != "no"]
        return max(stages) + (plain(source["tolerance"]) if "tolerance" in source else 0.0)

    def _coupled(self, bus: str) -> set[str]:
        """What a bank can be charged from: its own side, and over a combiner another bank's."""
        return self.reach(bus, lambda part: True)

    def _sources(self, nodes: set[str]) -> list[Data]:
        return [each for each in self.sheet.list("charging_sources")
                if f"{each['id']}.positive" in nodes]

    def voltages(self) -> dict[str, Figure]:
        found = {}
        for bus, strings in self.banks.items():
            full = [sum(self.emf(each) for each in string) for string in strings]
            stages = [np.full(self.sheet.count, self._stage(each))
                      for each in self._sources(self._coupled(bus))]
            found[f"bank-{bus}.highest_system_voltage"] = np.max([*full, *stages], axis=0)
        for part in self.parts:
            if part.kind == "device":
                there = self.reach(part.start, lambda part: True)
                seen = [found[f"bank-{bus}.highest_system_voltage"]
                        for bus, strings in self.banks.items()
                        if bus in there or not there.isdisjoint(
                            f"{each}.{end}" for string in strings for each in string
                            for end in ("positive", "negative"))]
                if seen:
                    found[f"{part.id}.highest_system_voltage"] = np.max(seen, axis=0)
        return found

    def sums(self) -> dict[str, float]:
        found = {f"bank-{bus}.charging_current_sum": sum(
            plain(each["current_max"]) for each in self._sources(self._coupled(bus)))
            for bus in self.banks}
        found["record.energy"] = sum(plain(each["energy"]) for each in self.batteries.values())
        return found

    # walks ---------------------------------------------------------------------------------------
    def walks(self) -> dict[str, float | bool | None]:
        found: dict[str, float | bool | None] = {}
        for bus, strings in self.banks.items():
            for string in strings:
                own = self._own_device(string)
                for battery in string:
                    found[f"{battery}.is_paralleled"] = len(self.banks[bus]) > 1
                    found[f"{battery}.has own"] = own is not None
        for battery in self.batteries:
            if self.positive(battery) in self.steps:
                found[f"{battery}.unprotected_length"] = self._longest(self.positive(battery),
                                                                       frozenset())
        for part in self.parts:
            if part.kind == "conductor":
                found |= self._protection(part)
                known = "size" in part.data and "insulation" in part.data
                found[f"{part.id}.ampacity"] = table_current(
                    part.data["size"], plain(part.data["insulation"])) if known else None
        return found

    def _longest(self, node: str, walked: frozenset[str]) -> float:
        """The longest way from a node that meets no device and no node twice."""
        best = 0.0
        for part in self.steps[node]:
            if part.kind != "device" and part.other(node) not in walked | {node}:
                own = plain(part.data["length"]) if part.kind == "conductor" else 0.0
                best = max(best, own + self._longest(part.other(node), walked | {node}))
        return best

    def _own_device(self, string: list[str]) -> str | None:
        """The nearest device without which the string is cut off from every other one and from
        the bus of its bank."""
        top = self.positive(string[-1])
        bus = next(bus for bus, strings in self.banks.items() if string in strings)
        others = {self.positive(each[-1]) for each in self.strings if each is not string}
        joined = others & self.reach(top, lambda part: True)
        nearby = self.reach(top, lambda part: part.kind != "device")
        first = [part.id for part in self.parts
                 if part.kind == "device" and not nearby.isdisjoint((part.start, part.end))]
        if not joined:
            return first[0] if len(first) == 1 else None
        for part in sorted(self.parts, key=lambda part: part.id not in first):
            if part.kind == "device":
                left = self.reach(top, lambda each, gone=part: each is not gone)
                if joined.isdisjoint(left) and bus not in left:
                    return part.id
        return None

    def _protection(self, conductor: Part) -> dict[str, float | bool | None]:
        """What protects a conductor against overload, and by how much."""
        sides = [self._side(conductor, node) for node in (conductor.start, conductor.end)]
        ratings, bare = [], False
        for (direct, feeding, _, _), (_, _, beyond, closed) in (sides, sides[::-1]):
            if not direct and not feeding:
                continue
            if direct and not (closed and beyond):
                bare = True
                continue
            passes = [] if direct else [feeding]
            if closed and (direct or sides_feed(sides, beyond)):
                passes.append(beyond)
            ratings.append(min(sum(self._rating(each) for each in group) for group in passes))
        known = not bare and bool(ratings)
        return {f"{conductor.id}.is_protected": known,
                f"{conductor.id}.protection_rating": max(ratings) if known else None}

    def _rating(self, device: str) -> float:
        return plain(next(part for part in self.parts if part.id == device).data["rating"])

    def _side(self, conductor: Part, node: str) -> tuple[list[str], list[str], list[str], bool]:
        """At one end: batteries without a device, devices that feed, all devices, nothing else."""
        region = self.reach(node, lambda part: part.kind != "device" and part is not conductor)
        live = {terminal for each in self.batteries
                for terminal in (self.positive(each), self.negative(each))} - {self.ground}
        direct = sorted(region & live)
        devices, feeding = [], []
        for part in self.parts:
            if part.kind == "device" and ((part.start in region) != (part.end in region)):
                devices.append(part.id)
                far = part.end if part.start in region else part.start
                if live & self.reach(far, lambda each, gone=part: each is not gone):
                    feeding.append(part.id)
        closed = not direct and region.isdisjoint(f"{each}.positive" for each in self.users)
        return direct, feeding, devices, closed


def factor(temperature: float) -> float:
    """Copper's resistance at a temperature in °C over that at 20 °C."""
    return (temperature + 234.5) / 254.5


def sides_feed(sides: list[tuple[list[str], list[str], list[str], bool]],
               devices: list[str]) -> bool:
    """Whether the end with those devices feeds too."""
    return any(beyond is devices and (direct or feeding)
               for direct, feeding, beyond, _ in sides)
