"""A network with a fault or load in it.

Where chains are cut, which nodes the fault makes one, which stems of dead trees it brings to life.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from garboard.network.rest import Link, Local, Rest
from garboard.network.skeleton import Signed, Skeleton


class Situation:
    """Built up step by step, then asked for its links, or for the rest seen from two nodes."""

    def __init__(self, skeleton: Skeleton) -> None:
        self._skeleton = skeleton
        self._cuts: dict[int, set[int]] = {}
        self._stems: list[Link] = []
        self._same: dict[int, int] = {}
        self._without: set[int] = set()

    def enliven(self, node: int, besides: int | None = None) -> None:
        """Make a point a node of its own, its stem live; ``besides`` is one already live."""
        core, path = self._skeleton.stem(node)
        self.cut(core)
        if besides is not None:
            other_core, other = self._skeleton.stem(besides)
            if other_core == core:
                path, core = self._beyond_fork(core, path, other)
        if path:
            self._stems.append(Link(core, node, path))

    def _beyond_fork(self, core: int, path: tuple[Signed, ...],
                     other: tuple[Signed, ...]) -> tuple[tuple[Signed, ...], int]:
        """Two stems from one point: split the first where the second leaves it."""
        shared = 0
        while shared < min(len(path), len(other)) and path[shared] == other[shared]:
            shared += 1
        if not shared:
            return path, core
        element, sign = path[shared - 1]
        fork = self._skeleton.ends[element][1 if sign > 0 else 0]
        self._stems = [piece for link in self._stems for piece in (
            (Link(core, fork, link.elements[:shared]), Link(fork, link.v, link.elements[shared:]))
            if link.elements == other else (link,)) if piece.elements]
        return path[shared:], fork

    def cut(self, node: int) -> None:
        """Make a live point inside a chain a node of its own."""
        if node in self._skeleton.inside:
            chain, position = self._skeleton.inside[node]
            self._cuts.setdefault(chain, set()).add(position)

    def take_out(self, element: int) -> None:
        """Leave out a live element; its two ends become nodes."""
        for node in self._skeleton.ends[element]:
            self.cut(node)
        chain, _ = self._skeleton.chain_of[element]
        self._cuts.setdefault(chain, set())
        self._without.add(element)

    def make_same(self, node: int, other: int) -> None:
        """Let a fault of no resistance join two nodes; ``other`` names both."""
        self._same[node] = other

    def named(self, node: int) -> int:
        """The name of a node, after joining."""
        return self._same.get(node, node)

    def links(self) -> list[Link]:
        """All live connections, those from a node to itself included."""
        skeleton = self._skeleton
        found = self._bundles()
        for number, positions in self._cuts.items():
            elements, nodes = skeleton.chains[number]
            marks = sorted({0, len(elements), *positions})
            for first, last in pairwise(marks):
                piece = elements[first:last]
                if not (len(piece) == 1 and piece[0][0] in self._without):
                    found.append(Link(nodes[first], nodes[last], piece))
        found += self._stems
        same = self._same
        return [link._replace(u=same.get(link.u, link.u), v=same.get(link.v, link.v))
                if link.u in same or link.v in same else link for link in found]

    def _bundles(self) -> list[Link]:
        """The bundles without the chains that are cut."""
        skeleton = self._skeleton
        if "links" not in skeleton.kept:
            skeleton.kept["links"] = [Link(each.u, each.v, (), number)
                                      for number, each in enumerate(skeleton.bundles)]
        found: list[Link | None] = list(skeleton.kept["links"])
        for chain in self._cuts:
            number = skeleton.bundle_of.get(chain, -1)
            link = found[number] if number >= 0 else None
            if link is not None:
                skipped = (*link.skipped, chain)
                left = len(skipped) < len(skeleton.bundles[number].chains)
                found[number] = link._replace(skipped=skipped) if left else None
        return [link for link in found if link is not None]

    def rest(self, u: int, v: int, links: Iterable[Link] | None = None,
             draw: tuple[int, int] | None = None, local: Local | None = None) -> Rest | None:
        """What closes the loop between two nodes; ``None`` when they are the same."""
        u, v = self.named(u), self.named(v)
        if u == v:
            return None
        if draw is not None:
            draw = (self.named(draw[0]), self.named(draw[1]))
        return Rest(u, v, self.links if links is None else lambda: links, draw, local)
