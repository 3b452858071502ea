"""The structure of a network, apart from its values: dead branches, chains, and what joins them.

Most of a boat's network is trees of loads hanging off a few buses, and leads that are chains of
conductors, fuses and switches. A *stem* is the path from the live part to a point in a dead tree; a
*chain* runs between two *hubs* (points where three or more live ways meet, and the return); chains
between the same two hubs form a *bundle*. All of it is found once per graph, in linear time.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Any, NamedTuple

from garboard.network.graph import INJECTOR, Edge, Graph

#: An element and the direction it is passed in: (number, +1 from start to end or -1).
Signed = tuple[int, int]


class Chain(NamedTuple):
    """A series of elements between two hubs; ``nodes`` has one more entry than ``elements``."""

    elements: tuple[Signed, ...]
    nodes: tuple[int, ...]


class Bundle(NamedTuple):
    """All chains from hub ``u`` to hub ``v``."""

    u: int
    v: int
    chains: tuple[int, ...]


class Skeleton:
    """Elements and nodes by number, and how they hang together.

    ``omitted`` ids are left out, as an open switch or a battery taken out.
    """

    def __init__(self, graph: Graph, omitted: Collection[str] = ()) -> None:
        self.node_number = {node: number for number, node in enumerate(graph.nodes)}
        self.elements: tuple[Edge, ...] = tuple(
            edge for edge in graph.edges.values() if edge.id not in omitted)
        self.element_number = {edge.id: number for number, edge in enumerate(self.elements)}
        self.ends = [(self.node_number[edge.start], self.node_number[edge.end])
                     for edge in self.elements]
        self._at: list[list[int]] = [[] for _ in graph.nodes]
        for element, (start, end) in enumerate(self.ends):
            self._at[start].append(element)
            self._at[end].append(element)
        self.reference = self.node_number[graph.reference]
        self._fixed = {self.reference}
        self._fixed |= {node for number, edge in enumerate(self.elements)
                        if edge.kind == INJECTOR for node in self.ends[number]}
        self._live = [True] * len(self.elements)
        #: A node of a dead tree -> its neighbour towards the live part, and the element between.
        self.hangs: dict[int, tuple[int, int]] = {}
        self.chains: list[Chain] = []
        #: An inner node of a chain -> (chain, position in its nodes).
        self.inside: dict[int, tuple[int, int]] = {}
        #: A live element -> (chain, position in its elements).
        self.chain_of: dict[int, tuple[int, int]] = {}
        self._prune()
        self._trace_chains()
        self.bundles = self._bundled()
        self.bundle_of = {chain: number for number, bundle in enumerate(self.bundles)
                          for chain in bundle.chains}
        #: Analyses made on this structure, kept by whoever made them.
        self.kept: dict[Any, Any] = {}

    # finding the structure -----------------------------------------------------------------------
    def _prune(self) -> None:
        """Take off leaf after leaf: no current flows there unless a fault is there."""
        degree = [len(elements) for elements in self._at]
        waiting = [node for node, count in enumerate(degree) if count == 1]
        while waiting:
            node = waiting.pop()
            if degree[node] != 1 or node in self._fixed:
                continue
            element = next(each for each in self._at[node] if self._live[each])
            start, end = self.ends[element]
            towards = end if node == start else start
            self._live[element] = False
            self.hangs[node] = (towards, element)
            degree[node] = 0
            degree[towards] -= 1
            waiting.append(towards)

    def _trace_chains(self) -> None:
        live_at = [[each for each in elements if self._live[each]] for elements in self._at]
        hubs = {node: None for node, elements in enumerate(live_at)
                if elements and (len(elements) != 2 or node in self._fixed)}
        for hub in hubs:
            self._trace_from(hub, live_at, hubs)
        for node, elements in enumerate(live_at):  # rings without a hub
            if any(each not in self.chain_of for each in elements):
                self._trace_from(node, live_at, {node: None})

    def _trace_from(self, hub: int, live_at: list[list[int]], hubs: dict[int, None]) -> None:
        for first in live_at[hub]:
            if first in self.chain_of:
                continue
            nodes, elements, element = [hub], list[Signed](), first
            while True:
                start, end = self.ends[element]
                forward = start == nodes[-1]
                elements.append((element, 1 if forward else -1))
                self.chain_of[element] = (0, 0)
                nodes.append(end if forward else start)
                if nodes[-1] in hubs:
                    break
                element = next(each for each in live_at[nodes[-1]] if each != element)
            self._add_chain(nodes, elements)

    def _add_chain(self, nodes: list[int], elements: list[Signed]) -> None:
        if nodes[0] > nodes[-1]:
            nodes = nodes[::-1]
            elements = [(element, -sign) for element, sign in reversed(elements)]
        number = len(self.chains)
        self.chains.append(Chain(tuple(elements), tuple(nodes)))
        for position, (element, _) in enumerate(elements):
            self.chain_of[element] = (number, position)
        for position, node in enumerate(nodes[1:-1], start=1):
            self.inside[node] = (number, position)

    def _bundled(self) -> tuple[Bundle, ...]:
        members: dict[tuple[int, int], list[int]] = {}
        for number, chain in enumerate(self.chains):
            if chain.nodes[0] != chain.nodes[-1]:
                members.setdefault((chain.nodes[0], chain.nodes[-1]), []).append(number)
        return tuple(Bundle(u, v, tuple(chains)) for (u, v), chains in members.items())

    # asking --------------------------------------------------------------------------------------
    def stem(self, node: int) -> tuple[int, tuple[Signed, ...]]:
        """The live node a point hangs on (itself if live) and the elements from there to it."""
        path: list[Signed] = []
        while node in self.hangs:
            towards, element = self.hangs[node]
            path.append((element, 1 if self.ends[element][0] == towards else -1))
            node = towards
        return node, tuple(reversed(path))


def skeleton_of(graph: Graph, omitted: frozenset[str] = frozenset()) -> Skeleton:
    """The skeleton of a graph without some elements, found once and kept with the graph."""
    key = ("skeleton", omitted)
    if key not in graph.kept:
        graph.kept[key] = Skeleton(graph, omitted)
    skeleton: Skeleton = graph.kept[key]
    return skeleton
