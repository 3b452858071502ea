"""Ways through the network over conductors, devices and switches, never through a battery."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from garboard.network.graph import Edge


class Step(NamedTuple):
    """One step of a way: over an edge to a node."""

    edge: Edge
    node: str


class Ways:
    """What can be reached from where. Switches count as closed, joints as nothing at all."""

    def __init__(self, nodes: Iterable[str], branches: Iterable[Edge]) -> None:
        self._steps: dict[str, list[Step]] = {node: [] for node in nodes}
        for branch in branches:
            self._steps[branch.start].append(Step(branch, branch.end))
            self._steps[branch.end].append(Step(branch, branch.start))

    def steps(self, node: str) -> list[Step]:
        """The steps that leave a node."""
        return self._steps[node]

    def reached(self, start: str, passes: Callable[[Edge], bool]) -> dict[str, Step | None]:
        """Every node in reach over edges that ``passes`` allows, nearest first.

        Each with the step that led to it; the start with ``None``.
        """
        found: dict[str, Step | None] = {start: None}
        waiting = [start]
        for node in waiting:
            for edge, other in self._steps[node]:
                if other not in found and passes(edge):
                    found[other] = Step(edge, node)
                    waiting.append(other)
        return found

    def bridges(self, start: str) -> tuple[list[str], dict[str, tuple[int, int]]]:
        """The edges without which the island of a node falls apart.

        Gives the nodes of the island in an order of their own, and for each such edge, by id, the
        stretch of that order (from, up to but not including) that lies beyond it, away from
        ``start``. Linear.
        """
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
                edge, other = steps[position]
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
