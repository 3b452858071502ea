"""The DC network of a record: what is joined to what, and what follows from it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from garboard.network.around import Around, find_around
from garboard.network.banks import Bank
from garboard.network.feeds import Feed, Feeds, protecting
from garboard.network.graph import Graph
from garboard.network.irregularities import find_irregularities
from garboard.network.irregularity import Irregularity
from garboard.network.layout import Layout, listed
from garboard.network.owners import own_devices
from garboard.network.polarity import Polarity, island_polarity
from garboard.network.related import Related
from garboard.network.relations import Relations
from garboard.network.sides import Side, Sides
from garboard.network.standing import Standing
from garboard.network.strings import Series, String
from garboard.network.ways import Ways
from garboard.network.zones import Zone, find_zone
from garboard.record import Record
from garboard.values import NOT_RECORDED, Unknown

#: The data path of the list that everything here rests on.
RUNS: Final = "runs"


@dataclass(frozen=True, slots=True)
class DerivedThing:
    """A string or bank: worked out from the runs, written down by nobody."""

    id: str
    members: tuple[str, ...]


class Network:
    """Nodes, strings, banks and the relations between things, of one record.

    ``graph`` is what a circuit is made on. ``derived`` lists strings (members: batteries from the
    negative end up) and banks (members: strings). What is not traced is unknown, not absent.
    """

    def __init__(self, record: Record, layout: Layout, graph: Graph, series: Series,
                 banks: tuple[Bank, ...], ways: Ways,
                 as_found: Callable[[], Network] | None = None,
                 found_open: frozenset[str] = frozenset()) -> None:
        self._record, self.layout, self.graph = record, layout, graph
        self._find_as_found, self.found_open = as_found, found_open
        self.strings, self._series, self.banks, self._ways = series.strings, series, banks, ways
        self.derived: Mapping[str, tuple[DerivedThing, ...]] = {
            "string": tuple(DerivedThing(each.id, each.batteries) for each in self.strings),
            "bank": tuple(DerivedThing(each.id, tuple(string.id for string in each.strings))
                          for each in banks)}
        self._relations = Relations(record, self)

    @cached_property
    def as_found(self) -> Network | None:
        """The network with the switches open that were found open; ``None`` where none was.

        ``found_open`` holds their ids. This network itself has every switch closed.
        """
        return None if self._find_as_found is None else self._find_as_found()

    # lookups -------------------------------------------------------------------------------------
    @property
    def traced(self) -> bool:
        """Whether the runs are recorded at all."""
        return self._record.lists.get("run") is not None

    def related(self, item: str, relation: str) -> Related:
        """The ids a relation leads to: one id, several, ``None`` for none, or unknown.

        Raises KeyError for a relation the subject does not have.
        """
        return self._relations.find(item, relation)

    @cached_property
    def string_of(self) -> dict[str, String]:
        """The string of each battery."""
        return {battery: string for string in self.strings for battery in string.batteries}

    @cached_property
    def bank_of(self) -> dict[str, Bank]:
        """The bank of each string, by the string's id."""
        return {string.id: bank for bank in self.banks for string in bank.strings}

    def bank(self, identity: str) -> Bank:
        """A bank by its id; KeyError when there is none."""
        return next(bank for bank in self.banks if bank.id == identity)

    # sides ---------------------------------------------------------------------------------------
    @cached_property
    def _polarities(self) -> dict[str, Polarity]:
        return island_polarity(self.layout)

    def polarity(self, node: str) -> Polarity:
        """The side a node is on: ``positive``, ``negative``, ``link`` (in series) or ``none``."""
        return self._polarities[self.layout.islands.of(node)]

    def carries(self, run: str) -> Polarity:
        """The side a run is on; on the positive side its return may be folded into it."""
        return self.polarity(self.layout.ends[run][0])

    def return_is_traced(self, run: str) -> bool:
        """Whether the current of a run to a positive terminal comes back over runs of its own: the
        negative terminal of that load, source or string (at its lowest battery) is traced."""
        for node in self.layout.ends[run]:
            identity, _, terminal = node.partition(".")
            string = self.string_of.get(identity)
            lowest = identity if string is None else string.batteries[0]
            if terminal == "positive" and f"{lowest}.negative" in self.layout.traced:
                return True
        return False

    def on_path_of_a_battery(self, branch: str) -> bool:
        """Whether a battery's current can reach one of the ends of a part of a run."""
        edge = self.graph.edges[branch]
        nodes = self.layout.islands.around(edge.start)
        return not self._battery_nodes.isdisjoint(nodes)

    @cached_property
    def _battery_nodes(self) -> frozenset[str]:
        return frozenset(node for edge in self.layout.batteries for node in (edge.start, edge.end)
                         if node in self.layout.traced)

    def banks_at(self, node: str) -> tuple[Bank, ...]:
        """The banks that a node belongs to, switches closed: on either side, or in a string."""
        return self._banks_by_island.get(self.layout.islands.of(node), ())

    @cached_property
    def _banks_by_island(self) -> dict[str, tuple[Bank, ...]]:
        found: dict[str, dict[str, Bank]] = {}
        for bank in self.banks:
            for battery in bank.batteries:
                edge = self.graph.edges[battery]
                for end in (edge.start, edge.end):
                    found.setdefault(self.layout.islands.of(end), {})[bank.id] = bank
        return {island: tuple(banks.values()) for island, banks in found.items()}

    # walks ---------------------------------------------------------------------------------------
    def zone(self, feeder: str) -> Zone | Unknown:
        """The unprotected zone behind the positive terminal of a battery or charging source."""
        positive = self.layout.positive(feeder)
        if positive not in self.layout.traced:
            return Unknown.because(NOT_RECORDED, RUNS, f"no run leads to {positive}")
        return find_zone(feeder, positive, self._terminals, self._ways)

    @cached_property
    def _terminals(self) -> frozenset[str]:
        batteries = {node for edge in self.layout.batteries for node in (edge.start, edge.end)}
        return frozenset(node for node in self.graph.nodes if node in batteries
                         or node.endswith((".positive", ".negative")))

    def around(self, node: str) -> Around:
        """What lies around a node before any protective device, switches closed."""
        return find_around(node, self.layout, self._ways, self.load_terminals)

    @cached_property
    def load_terminals(self) -> dict[str, str]:
        """The loads by their positive terminal."""
        return {self.layout.positive(load.id): load.id for load in listed(self._record, "load")}

    def feeds(self, conductor: str) -> tuple[Feed, Feed]:
        """How a conductor is fed at its ``from`` and at its ``to`` end."""
        return self._feeds.of(self.graph.edges[conductor])

    def protecting(self, conductor: str) -> tuple[str, ...]:
        """The devices that protect a conductor; none when a battery feeds it past none of them."""
        return protecting(self.feeds(conductor))

    @cached_property
    def _feeds(self) -> Feeds:
        layout = self.layout
        batteries: dict[str, list[str]] = {}
        for edge in layout.batteries:
            for node in (edge.end, edge.start):
                if node != layout.reference:
                    batteries.setdefault(node, []).append(edge.id)
        loads = (load.id for load in listed(self._record, "load"))
        return Feeds(layout.nodes, self._ways, {
            "battery": batteries,
            "source": {edge.end: (edge.id,) for edge in layout.injectors},
            "load": {layout.positive(load): (load,) for load in loads}})

    def fed(self, part: str) -> tuple[bool, bool] | None:
        """Whether a string stands at its start, and at its end; ``None`` for a part in a ring."""
        return self._sides.fed(self.graph.edges[part])

    def sides(self, part: str) -> tuple[Side, Side] | None:
        """What lies at the start and at the end of a part; ``None`` for a part in a ring."""
        return self._sides.of(self.graph.edges[part])

    @cached_property
    def _sides(self) -> Sides:
        loads = (load.id for load in listed(self._record, "load"))
        return Sides(self.layout, self._ways, self.strings, loads)

    @cached_property
    def _standing(self) -> Standing:
        return Standing(self.layout, self.graph, self._ways, self._sides,
                        sorted(self._battery_nodes))

    def beside(self, device: str) -> tuple[str, ...]:
        """The devices side by side with a device, itself included: all between the same two."""
        return self._standing.beside(device)

    def before(self, device: str) -> tuple[str, ...] | None:
        """The devices next to a device on its way from the batteries; see ``Standing``."""
        return self._standing.before(device)

    def attached(self, node: str) -> str:
        """Where a branch without batteries, with a node in it, leaves what has batteries."""
        return self._standing.attached(node)

    def path(self, start: str, end: str) -> tuple[str, ...]:
        """The parts of one way between two nodes, with all that every way has; see ``Standing``."""
        return self._standing.path(start, end)

    def way(self, start: str, end: str) -> tuple[str, ...] | None:
        """The parts between two nodes, from start to end; ``None`` where there is no way or two."""
        return self._standing.way(start, end)

    def first_devices(self, battery: str) -> tuple[str, ...] | Unknown:
        """The devices met first on every way from the positive terminal of a battery."""
        zone = self.zone(battery)
        return zone if isinstance(zone, Unknown) else zone.devices

    def loads_fed(self, bank: str, opened: Collection[str]) -> dict[str, bool | Unknown]:
        """Whether a bank feeds each load while some switches are open and all others closed.

        Unknown for a load that no run leads to."""
        reached: set[str] = set()
        for string in self.bank(bank).strings:
            reached.update(node for node, _ in self._ways.walk(string.positive, opened))
        fed: dict[str, bool | Unknown] = {}
        for load in listed(self._record, "load"):
            terminal = self.layout.positive(load.id)
            traced = terminal in self.layout.traced
            fed[load.id] = terminal in reached if traced else Unknown.because(
                NOT_RECORDED, RUNS, f"no run leads to {terminal}")
        return fed

    @cached_property
    def own_devices(self) -> dict[str, str | None]:
        """The device of its own of each string, by the string's id."""
        first = {}
        for string in self.strings:
            devices = self.first_devices(string.batteries[-1])
            first[string.id] = () if isinstance(devices, Unknown) else devices
        known = frozenset(edge.id for edge in self.graph.of_kind("device"))
        return own_devices(self.banks, known, self._ways, first)

    @cached_property
    def irregularities(self) -> tuple[Irregularity, ...]:
        """What does not hang together as it should, in a fixed order."""
        return find_irregularities(self._record, self.layout, self._series, self.banks, self._ways)
