"""What lies on either side of a part of a run: strings, charging sources and loads.

A part has two sides when the island it is in falls apart without it. A part in a ring, or one of
several side by side, has none. Switches count as closed, and no way goes over a battery; a string
or a load belongs to the island of its positive terminal and to that of its negative one.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal

from garboard.network.graph import Edge
from garboard.network.layout import Layout
from garboard.network.strings import String
from garboard.network.ways import Ways

Kind = Literal["string", "source", "load"]
_KINDS: Final[tuple[Kind, ...]] = ("string", "source", "load")


@dataclass(frozen=True, slots=True)
class Side:
    """The ids of what stands on one side of a part, nearest first."""

    strings: tuple[str, ...]
    sources: tuple[str, ...]
    loads: tuple[str, ...]


class _Island:
    """The nodes of an island in an order in which what lies beyond a part is one stretch."""

    def __init__(self, start: str, ways: Ways, at: dict[str, list[tuple[Kind, str]]]) -> None:
        order, self.beyond = ways.bridges(start)
        self.place = {node: position for position, node in enumerate(order)}
        self._members: dict[Kind, list[tuple[int, str]]] = {kind: [] for kind in _KINDS}
        for position, node in enumerate(order):
            for kind, identity in at.get(node, ()):
                self._members[kind].append((position, identity))

    def has_strings(self, first: int, last: int) -> tuple[bool, bool]:
        """Whether a string is in a stretch of the order, and whether one is outside it."""
        members = self._members["string"]
        inside = bisect_left(members, (last, "")) - bisect_left(members, (first, ""))
        return inside > 0, inside < len(members)

    def side(self, first: int, last: int) -> tuple[Side, Side]:
        """What lies in a stretch of the order, and what lies outside it."""
        inside, outside = [], []
        for kind in _KINDS:
            members = self._members[kind]
            begin, end = (bisect_left(members, (edge, "")) for edge in (first, last))
            inside.append(tuple(each for _, each in members[begin:end]))
            outside.append(tuple(each for _, each in (*members[:begin], *members[end:])))
        return Side(*inside), Side(*outside)


class Sides:
    """Answers for all parts of a layout; each island is walked once."""

    def __init__(self, layout: Layout, ways: Ways, strings: Iterable[String],
                 loads: Iterable[str]) -> None:
        self._layout, self._ways = layout, ways
        self._at: dict[str, list[tuple[Kind, str]]] = {}
        for string in strings:
            self._put("string", string.id, (string.positive, string.negative))
        for edge in layout.injectors:
            self._put("source", edge.id, (edge.start, edge.end))
        for load in loads:
            if layout.positive(load) in layout.traced:
                self._put("load", load, (layout.positive(load), layout.negative(load)))
        self._islands: dict[str, _Island] = {}

    def _put(self, kind: Kind, identity: str, nodes: tuple[str, str]) -> None:
        for node in nodes:
            self._at.setdefault(node, []).append((kind, identity))

    def of(self, part: Edge) -> tuple[Side, Side] | None:
        """What lies on the side of its start and of its end; ``None`` for a part in a ring."""
        island = self._island(part)
        stretch = island.beyond.get(part.id)
        if stretch is None:
            return None
        inside, outside = island.side(*stretch)
        if stretch[0] <= island.place[part.start] < stretch[1]:
            return inside, outside
        return outside, inside

    def fed(self, part: Edge) -> tuple[bool, bool] | None:
        """Whether a string lies on the side of its start and of its end; as ``of``, but quick."""
        island = self._island(part)
        stretch = island.beyond.get(part.id)
        if stretch is None:
            return None
        inside, outside = island.has_strings(*stretch)
        if stretch[0] <= island.place[part.start] < stretch[1]:
            return inside, outside
        return outside, inside

    def _island(self, part: Edge) -> _Island:
        name = self._layout.islands.of(part.start)
        if name not in self._islands:
            self._islands[name] = _Island(name, self._ways, self._at)
        return self._islands[name]
