"""The rest of a network as seen from two nodes, for a given fault or load: structure only.

Every figure asked of a network is the current in one element (or in a fault, an element of no
resistance) that closes a loop with all the rest. The rest is what is built here: points where
chains are cut, nodes that a fault makes one, stems of dead trees that the fault brings to life;
and of all that only what matters to the current between the two nodes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from garboard.network.blocks import between, elimination_order
from garboard.network.skeleton import Signed, Skeleton


class Link(NamedTuple):
    """A connection from u to v: elements in series, or (``bundle`` >= 0) all chains of a bundle
    but the ``skipped`` ones."""

    u: int
    v: int
    elements: tuple[Signed, ...]
    bundle: int = -1
    skipped: tuple[int, ...] = ()


class Local(NamedTuple):
    """Where a rest is seen from, for the quick way to work it out (see ``surroundings``).

    ``chain`` and ``position`` of the point (``chain`` -1: a hub), or of the element left out; then
    ``fault`` is its end that is joined to the return.
    """

    chain: int
    position: int
    fault: int = -1


class Rest:
    """What closes the loop between ``u`` and ``v``.

    ``draw`` names two nodes between which a current is drawn from outside, or is ``None``. The
    links that matter are found only when they are asked for.
    """

    def __init__(self, u: int, v: int, candidates: Callable[[], Iterable[Link]],
                 draw: tuple[int, int] | None = None, local: Local | None = None) -> None:
        self.u, self.v, self.local = u, v, local
        self._candidates, self._drawn = candidates, draw

    @cached_property
    def _found(self) -> tuple[tuple[Link, ...], tuple[int, ...], tuple[int, int] | None]:
        candidates = [link for link in self._candidates() if link.u != link.v]
        ends = [(link.u, link.v) for link in candidates]
        draw = self._drawn
        if draw is not None:
            ends.append(draw)
        matter = between(ends, self.u, self.v)
        if len(candidates) not in matter:
            draw = None
        links = tuple(candidates[number] for number in matter if number < len(candidates))
        return links, elimination_order([ends[n] for n in matter], (self.u, self.v)), draw

    @property
    def links(self) -> tuple[Link, ...]:
        """The connections that matter to the current between u and v."""
        return self._found[0]

    @property
    def order(self) -> tuple[int, ...]:
        """How to eliminate the other nodes."""
        return self._found[1]

    @property
    def draw(self) -> tuple[int, int] | None:
        """Where a current is drawn, if that matters."""
        return self._found[2]


class Question(NamedTuple):
    """The current asked for: in ``elements``, in series, from ``rest.u`` to ``rest.v``.

    ``rest`` is ``None`` where the elements close a loop on their own.
    """

    rest: Rest | None
    elements: tuple[Signed, ...]


class Situation:
    """Where chains are cut, which stems are live, which nodes a fault joins."""

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

    def set_apart(self, element: int) -> None:
        """List the chain of a live element on its own, not within its bundle."""
        chain, _ = self._skeleton.chain_of[element]
        self._cuts.setdefault(chain, set())

    def make_same(self, node: int, other: int) -> None:
        """Let a fault of no resistance join two nodes; ``other`` names both."""
        self._same[node] = other

    def named(self, node: int) -> int:
        """The name of a node, after joining."""
        return self._same.get(node, node)

    def links(self) -> list[Link]:
        """All live connections, those from a node to itself included."""
        skeleton = self._skeleton
        found: list[Link] = []
        for number, bundle in enumerate(skeleton.bundles):
            skipped = tuple(chain for chain in bundle.chains if chain in self._cuts)
            if len(skipped) < len(bundle.chains):
                found.append(Link(bundle.u, bundle.v, (), number, skipped))
        for number, positions in self._cuts.items():
            elements, nodes = skeleton.chains[number]
            marks = sorted({0, len(elements), *positions})
            for first, last in pairwise(marks):
                piece = elements[first:last]
                if not (len(piece) == 1 and piece[0][0] in self._without):
                    found.append(Link(nodes[first], nodes[last], piece))
        found += self._stems
        if not self._same:
            return found
        return [link._replace(u=self.named(link.u), v=self.named(link.v)) for link in found]

    def rest(self, u: int, v: int, links: Iterable[Link] | None = None,
             draw: tuple[int, int] | None = None, local: Local | None = None) -> Rest | None:
        """What closes the loop between two nodes; ``None`` when they are the same."""
        u, v = self.named(u), self.named(v)
        if u == v:
            return None
        if draw is not None:
            draw = (self.named(draw[0]), self.named(draw[1]))
        return Rest(u, v, self.links if links is None else lambda: links, draw, local)
