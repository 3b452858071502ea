"""Ways through the network over conductors, devices and switches, never through a battery."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import NamedTuple

from garboard.network.graph import Edge


class Step(NamedTuple):
    """One step of a way: over an edge to a node, from the node it leaves."""

    edge: Edge
    node: str
    left: str


class Ways:
    """What can be reached from where. Switches count as closed, joints as nothing at all."""

    def __init__(self, nodes: Iterable[str], branches: Iterable[Edge]) -> None:
        self._steps: dict[str, list[Step]] = {node: [] for node in nodes}
        self._bridges: dict[str, tuple[list[str], dict[str, tuple[int, int]]]] = {}
        for branch in branches:
            self._steps[branch.start].append(Step(branch, branch.end, branch.start))
            self._steps[branch.end].append(Step(branch, branch.start, branch.end))

    def past_no_device(self) -> Ways:
        """The ways that pass no device."""
        inside = Ways((), ())
        inside._steps = {node: [step for step in steps if step.edge.kind != "device"]
                         for node, steps in self._steps.items()}
        return inside

    def steps(self, node: str) -> list[Step]:
        """The steps that leave a node."""
        return self._steps[node]

    def walk(self, start: str, without: Collection[str] = (), *,
             past_devices: bool = True) -> Iterator[tuple[str, Step | None]]:
        """Every node in reach, nearest first, each with the step that led there (start: none).

        ``without`` are ids of edges not to use; unless ``past_devices`` no device is passed.
        """
        seen = {start}
        waiting: list[tuple[str, Step | None]] = [(start, None)]
        for node, came in waiting:
            yield node, came
            for step in self._steps[node]:
                edge, other, _ = step
                if other in seen or edge.id in without:
                    continue
                if past_devices or edge.kind != "device":
                    seen.add(other)
                    waiting.append((other, step))

    def reached(self, start: str, without: Collection[str] = (), *,
                past_devices: bool = True) -> dict[str, Step | None]:
        """The same by node."""
        return dict(self.walk(start, without, past_devices=past_devices))

    def bridges(self, node: str) -> tuple[list[str], dict[str, tuple[int, int]]]:
        """The edges without which the island of a node falls apart, found once for an island.

        Gives the nodes of the island in an order of their own, and for each such edge, by id, the
        stretch of that order (from, up to but not including) that lies beyond it, away from the
        first of them.
        """
        if node not in self._bridges:
            found = self._find_bridges(node)
            self._bridges |= dict.fromkeys(found[0], found)
        return self._bridges[node]

    def _find_bridges(self, start: str) -> tuple[list[str], dict[str, tuple[int, int]]]:
        order = {start: 0}
        low = {start: 0}
        visited = [start]
        stack: list[tuple[str, str, int]] = [(start, "", 0)]
        found: dict[str, tuple[int, int]] = {}
        while stack:
            node, came_by, position = stack.pop()
            steps = self._steps[node]
            if position < len(steps):
                stack.append((node, came_by, position + 1))
                edge, other, _ = steps[position]
                if edge.id == came_by or other == node:
                    continue
                if other in order:
                    low[node] = min(low[node], order[other])
                else:
                    order[other] = low[other] = len(visited)
                    visited.append(other)
                    stack.append((other, edge.id, 0))
            elif stack:
                parent = stack[-1][0]
                low[parent] = min(low[parent], low[node])
                if low[node] > order[parent]:
                    found[came_by] = (order[node], len(visited))
        return visited, found
