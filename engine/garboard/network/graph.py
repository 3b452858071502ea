"""The DC network as a graph: nodes, and edges with two ends each.

A conductor, device or switch joins two nodes; a joint does so without any resistance. A battery
runs from its negative to its positive node and raises the potential from start to end. An injector
stands for a source that gives a declared current whatever the voltage (the fault contribution of a
charger or a running motor); it runs from the return to its positive node.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final, Literal

Kind = Literal["conductor", "device", "switch", "joint", "battery", "injector"]

JOINT: Final = "joint"
BATTERY: Final = "battery"
INJECTOR: Final = "injector"


@dataclass(frozen=True, slots=True)
class Edge:
    """Something that joins two nodes; a positive current in it flows from ``start`` to ``end``."""

    id: str
    start: str
    end: str
    kind: Kind

    def other(self, node: str) -> str:
        """The end that is not ``node``."""
        return self.end if node == self.start else self.start


class Graph:
    """Nodes and edges, and for each node the one a fault there returns to.

    ``reference`` is the common return. ``returns`` names another return node where a fault is
    taken across two other points (a load's own two terminals, or the positive side for a point of
    the negative side). Raises ValueError when an id is used twice or an end is no node.
    """

    def __init__(self, nodes: Iterable[str], edges: Iterable[Edge], reference: str,
                 returns: Mapping[str, str] | None = None) -> None:
        self.nodes = tuple(dict.fromkeys((*nodes, reference)))
        self.edges: dict[str, Edge] = {}
        self.reference = reference
        self.returns = dict(returns or {})
        incident: dict[str, list[Edge]] = {node: [] for node in self.nodes}
        for edge in edges:
            if edge.id in self.edges:
                raise ValueError(f"two edges are called {edge.id!r}")
            self.edges[edge.id] = edge
            for node in dict.fromkeys((edge.start, edge.end)):
                if node not in incident:
                    raise ValueError(f"{edge.id!r} ends at {node!r}, which is no node")
                incident[node].append(edge)
        self.incident: dict[str, tuple[Edge, ...]] = {
            node: tuple(edges) for node, edges in incident.items()}
        #: Results of analysing this graph, kept by whoever made them.
        self.kept: dict[Any, Any] = {}

    def return_of(self, node: str) -> str:
        """The node that a fault at ``node`` is taken to."""
        return self.returns.get(node, self.reference)

    def of_kind(self, *kinds: Kind) -> tuple[Edge, ...]:
        """All edges of some kinds, in order."""
        return tuple(edge for edge in self.edges.values() if edge.kind in kinds)
