"""A network with values: fault currents, currents through devices and branches, shares.

The equations are linear: resistances and EMFs do not depend on the current, arcs are not covered,
and a battery takes current as readily as it gives it. They are solved by eliminating nodes, which
here is exact to the last few digits however far the resistances lie apart, needs no library, and
gives the same bits on every processor.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Literal, Protocol

from garboard.network.banks import Bank
from garboard.network.currents import Currents
from garboard.network.graph import BATTERY, INJECTOR, Graph
from garboard.network.questions import at_fault, in_branch, in_device
from garboard.network.ranges import Ranges
from garboard.network.skeleton import skeleton_of
from garboard.values import (
    OUTSIDE_METHOD,
    Bounds,
    Number,
    Unknown,
    largest,
    quotient,
    rounded_value,
)

Side = Literal["from", "to"]


class HasGraph(Protocol):
    """A graph and its banks, as a network read from a record is."""

    @property
    def graph(self) -> Graph: ...

    def bank(self, identity: str) -> Bank: ...


@dataclass(frozen=True, slots=True)
class SidedCurrent:
    """The larger of the currents through a device for a fault at either of its terminals, in A.

    ``side`` is the terminal at which the fault draws, or may draw, the larger current; ``None``
    when a current is not known. ``at_from`` and ``at_to`` are those for a fault at each terminal.
    """

    value: Number
    side: Side | None
    at_from: Number
    at_to: Number


class Circuit:
    """A graph with a resistance for every edge and an EMF for every battery.

    ``resistance``: Ω by edge id, batteries included; unknown on a conductor, device or switch means
    at least zero. ``emf``: V by battery id. ``injected``: A by injector id; injectors without one
    are left out. ``omitted``: ids taken out, such as open switches and batteries not connected.
    Raises KeyError for a missing value, ValueError for a negative resistance.
    """

    def __init__(self, network: Graph | HasGraph, resistance: Mapping[str, Number],
                 emf: Mapping[str, Number], injected: Mapping[str, Number] | None = None,
                 omitted: Collection[str] = ()) -> None:
        self._network = network
        self._graph = network if isinstance(network, Graph) else network.graph
        self._values = (resistance, emf, injected or {})
        silent = {edge.id for edge in self._graph.of_kind(INJECTOR)
                  if edge.id not in self._values[2]}
        self._omitted = frozenset(silent.union(omitted))
        self._skeleton = skeleton_of(self._graph, self._omitted)
        self._ranges = Ranges(self._skeleton.elements, *self._values)
        self._currents = Currents(self._skeleton, self._ranges)

    def without(self, *ids: str) -> Circuit:
        """The same with some elements taken out: a switch open, a string disconnected."""
        return Circuit(self._network, *self._values, self._omitted.union(ids))

    def with_resistances(self, resistance: Mapping[str, Number]) -> Circuit:
        """The same with some resistances in place of its own, in Ω by id."""
        known, emf, injected = self._values
        return Circuit(self._network, {**known, **resistance}, emf, injected, self._omitted)

    def with_equal_emfs(self) -> Circuit:
        """The same with one EMF everywhere: what is drawn divides by the resistances alone."""
        resistance, emf, _ = self._values
        return Circuit(self._network, resistance, dict.fromkeys(emf, 0.0), None, self._omitted)

    def with_emfs(self, emf: Mapping[str, Number]) -> Circuit:
        """The same with other EMFs, in V by battery id, and nothing injected."""
        return Circuit(self._network, self._values[0], emf, None, self._omitted)

    def fault_current(self, node: str, back_to: str | None = None) -> Number:
        """Current in A of a fault without resistance from a node to the return of that node.

        ``back_to`` names another node the fault leads to. The magnitude is given.
        """
        back = self._graph.return_of(node) if back_to is None else back_to
        if node == back:
            return Unknown.because(OUTSIDE_METHOD, detail=f"{node} is the return itself")
        numbers = self._skeleton.node_number
        current = self._currents.current(
            at_fault(self._skeleton, numbers[node], numbers[back]))
        if current is None:
            return Unknown.because(OUTSIDE_METHOD, detail=f"no source reaches {node}")
        return _magnitude(current)

    def device_current(self, device: str, *, own_resistance: bool,
                       back_to: str | None = None) -> SidedCurrent:
        """Largest current in A that a fault at one of its terminals sends through a device.

        Prospective (``own_resistance=False``): the device is replaced by a link. Through
        (``True``): its own resistance counts. The network around it is solved for a fault at either
        terminal; the side the fault is on adds nothing to what flows through the device.
        """
        edge = self._graph.edges[device]
        if device in self._omitted:
            nothing = Unknown.because(OUTSIDE_METHOD, detail=f"{device} is taken out")
            return SidedCurrent(nothing, None, nothing, nothing)
        at_from = self._through(device, edge.start, own_resistance, back_to)
        at_to = self._through(device, edge.end, own_resistance, back_to)
        if at_from is None and at_to is None:
            nothing = Unknown.because(OUTSIDE_METHOD, detail="no source reaches this device")
            return SidedCurrent(nothing, None, nothing, nothing)
        sides = (0.0 if at_from is None else at_from, 0.0 if at_to is None else at_to)
        return SidedCurrent(largest(sides), larger_side(*sides), *sides)

    def _through(self, device: str, fault: str, own_resistance: bool,
                 back_to: str | None) -> Number | None:
        """The current for a fault at one terminal; ``None`` when no source drives any."""
        back = self._graph.return_of(fault) if back_to is None else back_to
        if fault == back:
            return Unknown.because(OUTSIDE_METHOD, detail=f"{fault} is the return itself")
        numbers = self._skeleton.node_number
        question = in_device(self._skeleton, self._skeleton.element_number[device],
                             numbers[fault], numbers[back], linked=not own_resistance)
        current = None if question is None else self._currents.current(question)
        return None if current is None else _magnitude(current)

    def branch_current(self, branch: str, fault: str | None = None,
                       back_to: str | None = None) -> Number:
        """Current in A in an edge, positive from its start to its end (a battery giving current).

        ``fault`` names a node shorted to its return, or to ``back_to``; without one only what the
        batteries drive through each other flows.
        """
        pair = None
        if fault is not None:
            numbers = self._skeleton.node_number
            back = self._graph.return_of(fault) if back_to is None else back_to
            pair = (numbers[fault], numbers[back])
        return self._in_branch(self._currents, branch, fault=pair)

    def currents_at(self, total: Number, node: str, branches: Collection[str],
                    back_to: str | None = None) -> dict[str, Number]:
        """Currents in some edges in A while a total is drawn at a node (negative: charging)."""
        numbers = self._skeleton.node_number
        back = self._graph.return_of(node) if back_to is None else back_to
        currents = Currents(self._skeleton, self._ranges, total)
        draw = (numbers[node], numbers[back])
        if node == back or not currents.has_source(at_fault(self._skeleton, *draw)):
            nothing = Unknown.because(OUTSIDE_METHOD, detail=f"no source reaches {node}")
            return dict.fromkeys(branches, nothing)
        return {branch: self._in_branch(currents, branch, draw=draw) for branch in branches}

    def string_currents(self, bank: str, total: Number) -> dict[str, Number]:
        """Current of each string of a bank in A while a total is drawn where the strings meet.

        Positive when a string gives current; ``total`` is negative while charging, and 0 for what
        strings of different voltage drive through each other. Batteries of other banks are left
        out, as with the switches between banks open. Raises TypeError without a record's network.
        """
        if isinstance(self._network, Graph):
            raise TypeError("a graph without a record has no banks")
        strings = self._network.bank(bank).strings
        batteries = {string.batteries[0] for string in strings}
        own = {battery for string in strings for battery in string.batteries}
        others = [edge.id for edge in self._graph.of_kind(BATTERY) if edge.id not in own]
        alone = self.without(*others)
        currents = alone.currents_at(total, self._network.bank(bank).meets, batteries)
        return {string.id: currents[string.batteries[0]] for string in strings}

    def shares(self, bank: str, total: Number | None = None) -> dict[str, Number]:
        """The part of a current that each string of a bank carries, by string id.

        With a ``total`` in A, the EMFs as they are; without one, equal EMFs, where the parts do not
        depend on the current.
        """
        if total is not None:
            return {string: _part(current, total)
                    for string, current in self.string_currents(bank, total).items()}
        return self.with_equal_emfs().string_currents(bank, 1.0)

    def _in_branch(self, currents: Currents, branch: str, fault: tuple[int, int] | None = None,
                   draw: tuple[int, int] | None = None) -> Number:
        if branch in self._omitted:
            return 0.0
        found = in_branch(self._skeleton, self._skeleton.element_number[branch], fault, draw)
        value = None if found is None else currents.current(found[0])
        if found is None or value is None:
            return 0.0
        return value if found[1] > 0 else 0.0 - value


def _magnitude(current: Number) -> Number:
    if isinstance(current, Bounds):
        return abs(current)
    return current if isinstance(current, Unknown) else abs(current)


def _part(current: Number, total: Number) -> Number:
    if isinstance(total, Bounds):
        return Unknown.because(OUTSIDE_METHOD, detail="a share is of a single total")
    part = rounded_value(quotient(current, total))
    assert isinstance(part, (float, Bounds, Unknown))
    return part


def larger_side(at_from: Number, at_to: Number) -> Side | None:
    """The end at which a fault draws, or may draw, the larger current."""
    if isinstance(at_from, Unknown) or isinstance(at_to, Unknown):
        return None
    ends = [(each.hi, each.lo) if isinstance(each, Bounds) else (each, each)
            for each in (at_from, at_to)]
    return "from" if ends[0] >= ends[1] else "to"
