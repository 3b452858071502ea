"""How a conductor can be fed: from which end, by which sources, past which devices.

At each end of the conductor stands everything in reach of that end without passing a protective
device. Its border are the devices that are met first. A device *feeds* when a battery or charging
source lies beyond it. Where a battery lies within, the end is fed without protection.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass, field
from itertools import accumulate
from typing import Literal

from garboard.network.graph import Edge
from garboard.network.regions import Inner, Kind, Region, Side
from garboard.network.ways import Ways


@dataclass(frozen=True, slots=True)
class Feed:
    """One end of a conductor.

    ``batteries`` and ``sources`` reach it without passing a device; ``feeding`` are the devices
    bordering it with a battery beyond, ``charging`` those with only charging sources beyond.
    ``closed``: no battery, source or load lies within the border.
    """

    end: Literal["from", "to"]
    batteries: tuple[str, ...]
    sources: tuple[str, ...]
    feeding: tuple[str, ...]
    charging: tuple[str, ...]
    closed: bool
    _region: Region = field(repr=False)
    _side: Side = field(repr=False)

    @property
    def fed(self) -> bool:
        """Whether a battery feeds the conductor from this end."""
        return bool(self.batteries or self.feeding)

    @property
    def devices(self) -> tuple[str, ...]:
        """All devices that border it, whatever lies beyond them."""
        return self._region.members("device", self._side)


class Feeds:
    """Answers for all conductors; regions, and what lies beyond each device, are found once."""

    def __init__(self, nodes: Iterable[str], ways: Ways,
                 at: Mapping[Kind, Mapping[str, Iterable[str]]]) -> None:
        """``at`` gives the batteries, sources and loads by kind and node."""
        self._ways, self._at = ways, at
        self._counted: dict[str, _Counted] = {}
        self._found: dict[str, tuple[Feed, Feed]] = {}
        self._regions: dict[str, Region] = {}
        inside = ways.past_no_device()
        for node in nodes:
            if node not in self._regions:
                region = Region(inside, node)
                self._regions |= dict.fromkeys(region.place, region)
                self._fill(region)

    def of(self, conductor: Edge) -> tuple[Feed, Feed]:
        """Both ends of a conductor."""
        found = self._found.get(conductor.id)
        if found is None:
            found = self._found[conductor.id] = (self._end(conductor, conductor.start, "from"),
                                                 self._end(conductor, conductor.end, "to"))
        return found

    def _end(self, conductor: Edge, node: str, end: Literal["from", "to"]) -> Feed:
        region = self._regions[node]
        side = region.side(conductor.id, node)
        batteries, sources = region.members("battery", side), region.members("source", side)
        return Feed(end, batteries, sources, region.members("feeding", side),
                    region.members("charging", side),
                    not batteries and not sources and not region.members("load", side),
                    region, side)

    def _fill(self, region: Region) -> None:
        """Put down what stands at the nodes of a region, and the devices on its border."""
        for node, place in region.place.items():
            for kind, standing in self._at.items():
                for identity in standing.get(node, ()):
                    region.put(kind, place, identity)
            for edge, other, _ in self._ways.steps(node):
                if edge.kind != "device":
                    continue
                if other not in region.place:
                    for kind in self._kinds(edge, other):
                        region.put(kind, place, edge.id)
                elif node == edge.start:
                    region.inner.append(Inner(
                        edge.id, (place, region.place[other]),
                        (self._kinds(edge, other), self._kinds(edge, node))))

    def _kinds(self, device: Edge, node: str) -> tuple[Kind, ...]:
        """What a device counts as for a region, by what lies beyond it at its other node."""
        if node not in self._counted:
            island = _Counted(self._ways.bridges(node), (self._at["battery"], self._at["source"]))
            self._counted |= dict.fromkeys(island.place, island)
        batteries, sources = self._counted[node].beyond(device.id, node)
        if batteries:
            return ("device", "feeding")
        return ("device", "charging") if sources else ("device",)


class _Counted:
    """How many nodes of two kinds lie on the side of a device that a node is on."""

    def __init__(self, bridges: tuple[list[str], dict[str, tuple[int, int]]],
                 kinds: tuple[Container[str], Container[str]]) -> None:
        nodes, self._bridges = bridges
        self.place = {node: position for position, node in enumerate(nodes)}
        self._sums = [list(accumulate((node in kind for node in nodes), initial=0))
                      for kind in kinds]

    def beyond(self, device: str, node: str) -> list[int]:
        """A device that is no bridge leaves everything joined: all of the island lies beyond it."""
        totals = [sums[-1] for sums in self._sums]
        if device not in self._bridges:
            return totals
        first, last = self._bridges[device]
        there = [sums[last] - sums[first] for sums in self._sums]
        if first <= self.place[node] < last:
            return there
        return [total - count for total, count in zip(totals, there, strict=True)]


def protecting(feeds: tuple[Feed, Feed]) -> tuple[str, ...]:
    """The devices that protect a conductor, or none when a battery feeds it past none of them.

    For each end that a battery feeds: the feeding devices at that end, when all of the feeding
    passes them; else the devices that border the other end, when nothing but they lies there (the
    lead between a battery and its first fuse). When one fed end has neither, the conductor is not
    protected.
    """
    found: dict[str, None] = {}
    for near, far in (feeds, feeds[::-1]):
        if not near.fed:
            continue
        if not near.batteries:
            found |= dict.fromkeys(near.feeding)
        elif far.closed and far.devices:
            found |= dict.fromkeys(far.devices)
        else:
            return ()
    return tuple(found)
