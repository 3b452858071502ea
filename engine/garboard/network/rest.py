"""The rest of a network as seen from two nodes, for a given fault or load: structure only.

Every figure asked of a network is the current in one element (or in a fault, an element of no
resistance) that closes a loop with all the rest: of which only what lies on a path between the two
nodes matters.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from typing import NamedTuple

from garboard.network.blocks import between, elimination_order
from garboard.network.skeleton import Signed


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
    def _found(self) -> tuple[tuple[Link, ...], tuple[int, int] | None]:
        candidates = [link for link in self._candidates() if link.u != link.v]
        ends = [(link.u, link.v) for link in candidates]
        draw = self._drawn
        if draw is not None:
            ends.append(draw)
        matter = between(ends, self.u, self.v)
        if draw is not None and len(candidates) not in matter:
            draw = None
        return tuple(candidates[n] for n in matter if n < len(candidates)), draw

    @property
    def links(self) -> tuple[Link, ...]:
        """The connections that matter to the current between u and v."""
        return self._found[0]

    @property
    def draw(self) -> tuple[int, int] | None:
        """Where a current is drawn, if that matters."""
        return self._found[1]

    @cached_property
    def order(self) -> tuple[int, ...]:
        """How to eliminate the other nodes."""
        ends = [(link.u, link.v) for link in self.links]
        if self.draw is not None:
            ends.append(self.draw)
        return elimination_order(ends, (self.u, self.v))


class Question(NamedTuple):
    """The current asked for: in ``elements``, in series, from ``rest.u`` to ``rest.v``.

    ``rest`` is ``None`` where the elements close a loop on their own.
    """

    rest: Rest | None
    elements: tuple[Signed, ...]
