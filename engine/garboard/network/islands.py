"""Islands: nodes joined by conductors, devices and switches, without going over a battery."""

from __future__ import annotations

from collections.abc import Iterable

from garboard.network.graph import Edge


class Islands:
    """Which nodes are joined. All switches count as closed."""

    def __init__(self, nodes: Iterable[str], branches: Iterable[Edge]) -> None:
        self._parent = {node: node for node in nodes}
        for branch in branches:
            one, other = self.of(branch.start), self.of(branch.end)
            if one != other:
                self._parent[other] = one
        members: dict[str, list[str]] = {}
        for node in self._parent:
            members.setdefault(self.of(node), []).append(node)
        #: The nodes of each island, in order, by the node that names it.
        self.members = {name: tuple(found) for name, found in members.items()}

    def of(self, node: str) -> str:
        """The name of a node's island."""
        parent = self._parent
        while parent[node] != node:
            parent[node] = parent[parent[node]]
            node = parent[node]
        return node

    def joined(self, one: str, other: str) -> bool:
        """Whether two nodes are in the same island."""
        return self.of(one) == self.of(other)

    def around(self, node: str) -> tuple[str, ...]:
        """All nodes of the island of a node."""
        return self.members[self.of(node)]
