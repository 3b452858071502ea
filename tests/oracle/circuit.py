"""Modified nodal analysis of many draws at once, dense, by numpy."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from oracle.sheet import Figure

#: Conductance of every node to the return, so that a node with nothing on it has a potential, S.
LEAK = 1e-12


@dataclass
class Element:
    """From start to end: a resistance, and an EMF that lifts the end above the start."""

    id: str
    start: str
    end: str
    resistance: Figure
    emf: Figure


@dataclass
class Circuit:
    """Elements between named nodes; ``ground`` is the node of potential zero.

    ``pushed``: currents from outside, each (out of this node, into that node, A). The unknowns are
    the potentials, then the currents of the elements from start to end.
    """

    elements: list[Element]
    ground: str
    draws: int
    pushed: list[tuple[str, str, Figure]] = field(default_factory=list)

    def __post_init__(self) -> None:
        names = dict.fromkeys((self.ground, *(node for each in self.elements
                                              for node in (each.start, each.end))))
        self.nodes = {name: number for number, name in enumerate(names)}
        self.rows = {each.id: len(self.nodes) + number
                     for number, each in enumerate(self.elements)}
        self._resistance = {each.id: each.resistance for each in self.elements}

    @cached_property
    def _inverse(self) -> Figure:
        size = len(self.nodes) + len(self.elements)
        matrix = np.zeros((self.draws, size, size))
        for number in range(1, len(self.nodes)):
            matrix[:, number, number] = LEAK
        for each in self.elements:
            row, start, end = self.rows[each.id], self.nodes[each.start], self.nodes[each.end]
            matrix[:, row, start] += 1
            matrix[:, row, end] -= 1
            matrix[:, start, row] += 1
            matrix[:, end, row] -= 1
            matrix[:, row, row] = -each.resistance
        matrix[:, 0, :] = 0
        matrix[:, 0, 0] = 1
        return np.linalg.inv(matrix)

    @cached_property
    def _at_rest(self) -> Figure:
        """All unknowns with no fault."""
        right = np.zeros(self._inverse.shape[:2])
        for each in self.elements:
            right[:, self.rows[each.id]] = -each.emf
        for source, sink, amount in self.pushed:
            right[:, self.nodes[source]] -= amount
            right[:, self.nodes[sink]] += amount
        right[:, 0] = 0
        return np.einsum("dij,dj->di", self._inverse, right)

    def fault(self, node: str, back: str, linked: str | None = None) -> tuple[Figure, Figure]:
        """The current of a dead short from a node to another, and all unknowns while it flows.

        ``linked``: an element replaced by a link.
        """
        one, other = self.nodes[node], self.nodes[back]
        rest, push = self._at_rest, self._moved(one, other)
        if linked is not None:
            rest, push = self._linked(linked, rest), self._linked(linked, push)
        current = (rest[:, one] - rest[:, other]) / (push[:, other] - push[:, one])
        return current, rest + current[:, None] * push

    def drawn(self, node: str, back: str) -> Figure:
        """All unknowns while 1 A is taken from a node and led back, EMFs left out."""
        return self._moved(self.nodes[node], self.nodes[back])

    def _moved(self, one: int, other: int) -> Figure:
        """What 1 A from one node to another outside the network does."""
        found = np.zeros(self._inverse.shape[:2])
        for node, sign in ((one, -1), (other, 1)):
            if node:
                found = found + sign * self._inverse[:, :, node]
        return found

    def _linked(self, element: str, unknowns: Figure) -> Figure:
        """The same unknowns with the resistance of an element taken out (Sherman and Morrison)."""
        row, ohms = self.rows[element], self._resistance[element]
        column = self._inverse[:, :, row]
        factor = ohms * unknowns[:, row] / (1 + ohms * column[:, row])
        return unknowns - factor[:, None] * column
