"""Regions: what hangs together without passing a protective device, and what borders on it.

Taking a conductor out of a region either leaves it whole or makes it fall into two. Which
conductors do the latter, and what then lies where, is found once for a region, in linear time: the
nodes are put in an order in which what lies beyond such a conductor is one stretch.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from typing import Final, Literal, NamedTuple

from garboard.network.ways import Ways

#: Stretches of the order of a region, each from a place up to but not including another.
Side = tuple[tuple[int, int], ...]

#: What stands in a region or borders on it: devices whatever lies beyond them, those with a battery
#: beyond, and those with a charging source but no battery beyond.
Kind = Literal["battery", "source", "load", "device", "feeding", "charging"]
_NONE: Final[tuple[list[int], list[str]]] = ([], [])


class Inner(NamedTuple):
    """A device with both ends in the region: their places, and the kinds it is of seen from each.

    It borders only on what a conductor taken out leaves on one side of it.
    """

    device: str
    places: tuple[int, int]
    kinds: tuple[tuple[Kind, ...], tuple[Kind, ...]]


class Region:
    """One region: its nodes in order, and what stands there by kind."""

    def __init__(self, ways: Ways, start: str) -> None:
        nodes, self._bridges = ways.bridges(start)
        self.place = {node: number for number, node in enumerate(nodes)}
        self._whole: Side = ((0, len(nodes)),)
        self._members: dict[Kind, tuple[list[int], list[str]]] = {}
        self.inner: list[Inner] = []
        self._all: dict[Kind, tuple[str, ...]] = {}

    def put(self, kind: Kind, place: int, identity: str) -> None:
        """Something stands at a place; places come in order."""
        places, identities = self._members.setdefault(kind, ([], []))
        places.append(place)
        identities.append(identity)

    def side(self, conductor: str, node: str) -> Side:
        """What a node still hangs together with when a conductor is taken out."""
        whole = len(self.place)
        if conductor not in self._bridges:
            return self._whole
        first, last = self._bridges[conductor]
        return ((first, last),) if first <= self.place[node] < last else ((0, first), (last, whole))

    def members(self, kind: Kind, side: Side) -> tuple[str, ...]:
        """What of a kind stands on a side, once everything is put down."""
        if side != self._whole:
            return tuple(self._on(kind, side))
        known = self._all.get(kind)
        if known is None:
            known = self._all[kind] = tuple(self._members.get(kind, _NONE)[1])
        return known

    def _on(self, kind: Kind, side: Side) -> Iterator[str]:
        places, identities = self._members.get(kind, _NONE)
        for first, last in side:
            yield from identities[bisect_left(places, first):bisect_left(places, last)]
        yield from self._inner_of(kind, side)

    def _inner_of(self, kind: Kind, side: Side) -> Iterator[str]:
        for device, places, kinds in self.inner:
            here = [any(first <= place < last for first, last in side) for place in places]
            if here[0] != here[1] and kind in kinds[here.index(True)]:
                yield device
