"""Where a device or a node stands between the batteries and the rest: before, beside, beyond."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from garboard.network.graph import JOINT, Edge, Graph
from garboard.network.islands import Islands
from garboard.network.layout import Layout
from garboard.network.sides import Sides
from garboard.network.ways import Step, Ways


class Standing:
    """Answers for all parts of a network; what they have in common is found once."""

    def __init__(self, layout: Layout, graph: Graph, ways: Ways, sides: Sides,
                 batteries: Iterable[str]) -> None:
        self._layout, self._graph, self._ways, self._sides = layout, graph, ways, sides
        self._batteries = tuple(batteries)
        self._walked: dict[str, dict[str, Step | None]] = {}
        self._attached: dict[str, str] = {}

    @cached_property
    def _regions(self) -> Islands:
        """What hangs together without passing a protective device."""
        return Islands(self._layout.nodes,
                       (edge for edge in self._layout.branches if edge.kind != "device"))

    @cached_property
    def _unprotected(self) -> frozenset[str]:
        """The regions that a battery stands in."""
        return frozenset(self._regions.of(node) for node in self._batteries)

    @cached_property
    def _between(self) -> dict[frozenset[str], tuple[str, ...]]:
        """Devices by the two regions they stand between."""
        found: dict[frozenset[str], list[str]] = {}
        for edge in self._graph.of_kind("device"):
            found.setdefault(self._ends(edge), []).append(edge.id)
        return {regions: tuple(devices) for regions, devices in found.items()}

    def _ends(self, device: Edge) -> frozenset[str]:
        return frozenset((self._regions.of(device.start), self._regions.of(device.end)))

    @cached_property
    def _feeding(self) -> dict[str, tuple[str, ...]]:
        """For each region the devices that bring it current from batteries beyond them."""
        found: dict[str, list[str]] = {}
        for edge in self._graph.of_kind("device"):
            fed = self._sides.fed(edge)
            for node, beyond in ((edge.start, 1), (edge.end, 0)):
                if fed is None or fed[beyond]:
                    found.setdefault(self._regions.of(node), []).append(edge.id)
        return {region: tuple(devices) for region, devices in found.items()}

    def beside(self, device: str) -> tuple[str, ...]:
        """The devices side by side with a device, itself included: all between the same two."""
        return self._between[self._ends(self._graph.edges[device])]

    def before(self, device: str) -> tuple[str, ...] | None:
        """The devices next to a device on its way from the batteries.

        ``None`` where a battery stands before it past no device, where batteries stand on both
        sides of it or on neither, and in a ring.
        """
        edge = self._graph.edges[device]
        fed = self._sides.fed(edge)
        if fed is None or fed[0] == fed[1]:
            return None
        near = self._regions.of(edge.start if fed[0] else edge.end)
        if near in self._unprotected:
            return None
        return tuple(each for each in self._feeding.get(near, ()) if each != device)

    def attached(self, node: str) -> str:
        """Where a branch without batteries, with a node in it, leaves what has batteries."""
        island = self._layout.islands.of(node)
        root = next((each for each in self._batteries
                     if self._layout.islands.of(each) == island), None)
        if root is None:
            return node
        reached, passed = self._reached(root), []
        while node not in self._attached:
            passed.append(node)
            step = reached[node]
            if step is None or not self._hangs_on(step):
                self._attached[node] = node
                break
            node = step.left
        found = self._attached[node]
        self._attached.update(dict.fromkeys(passed, found))
        return found

    def _hangs_on(self, step: Step) -> bool:
        """Whether a step leads away from all batteries."""
        fed = self._sides.fed(step.edge)
        return fed is not None and not fed[0 if step.edge.start == step.node else 1]

    def way(self, start: str, end: str) -> tuple[str, ...] | None:
        """The parts between two nodes, from start to end; ``None`` where there is no way or two.

        Ways from one start are found together.
        """
        reached = self._reached(start)
        if end not in reached:
            return None
        step, parts = reached[end], []
        while step is not None:
            if self._sides.fed(step.edge) is None:
                return None
            parts.append(step.edge)
            step = reached[step.left]
        return tuple(part.id for part in reversed(parts) if part.kind != JOINT)

    def path(self, start: str, end: str) -> tuple[str, ...]:
        """The parts of one way between two nodes, whichever of several; none where there is none.

        Every part that all ways between the two have in common is among them.
        """
        reached = self._reached(start)
        step, parts = reached.get(end), []
        while step is not None:
            parts.append(step.edge)
            step = reached[step.left]
        return tuple(part.id for part in reversed(parts) if part.kind != JOINT)

    def _reached(self, start: str) -> dict[str, Step | None]:
        if start not in self._walked:
            self._walked[start] = self._ways.reached(start)
        return self._walked[start]
