"""How a conductor can be fed: from which end, by which sources, past which devices.

At each end of the conductor stands everything in reach of that end without passing a protective
device. Its border are the devices that are met first. A device *feeds* when a battery or charging
source lies beyond it. Where a battery lies within, the end is fed without protection.
"""

from __future__ import annotations

from collections.abc import Container
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from garboard.network.graph import Edge
from garboard.network.ways import Ways


@dataclass(frozen=True, slots=True)
class Feed:
    """One end of a conductor.

    ``batteries`` and ``sources`` reach it without passing a device; ``devices`` border it;
    ``feeding`` are those of them with a battery beyond, ``charging`` those with only charging
    sources beyond. ``closed``: no battery, source or load lies within the border.
    """

    end: Literal["from", "to"]
    batteries: tuple[str, ...]
    sources: tuple[str, ...]
    devices: tuple[str, ...]
    feeding: tuple[str, ...]
    charging: tuple[str, ...]
    closed: bool

    @property
    def fed(self) -> bool:
        """Whether a battery feeds the conductor from this end."""
        return bool(self.batteries or self.feeding)


class Feeds:
    """Answers for all conductors; what lies beyond each device is found once for an island."""

    def __init__(self, ways: Ways, batteries: dict[str, tuple[str, ...]],
                 sources: dict[str, str], loads: frozenset[str]) -> None:
        self._ways = ways
        self._batteries, self._sources, self._loads = batteries, sources, loads
        self._counted: dict[str, _Counted] = {}

    def of(self, conductor: Edge) -> tuple[Feed, Feed]:
        """Both ends of a conductor."""
        return (self._at(conductor, conductor.start, "from"),
                self._at(conductor, conductor.end, "to"))

    def _at(self, conductor: Edge, node: str, end: Literal["from", "to"]) -> Feed:
        region = self._ways.reached(node, (conductor.id,), past_devices=False)
        border: dict[str, str] = {}
        for inside in region:
            for edge, other, _ in self._ways.steps(inside):
                if edge.kind == "device" and other not in region:
                    border.setdefault(edge.id, other)
        batteries = tuple(battery for inside in region
                          for battery in self._batteries.get(inside, ()))
        sources = tuple(self._sources[inside] for inside in region if inside in self._sources)
        kinds = {device: self._past(device, other) for device, other in border.items()}
        return Feed(end, batteries, sources, tuple(border),
                    tuple(each for each, kind in kinds.items() if kind == "battery"),
                    tuple(each for each, kind in kinds.items() if kind == "source"),
                    not batteries and not sources and self._loads.isdisjoint(region))

    def _past(self, device: str, node: str) -> str:
        """What lies beyond a device: ``battery``, else ``source``, else nothing."""
        if node not in self._counted:
            island = _Counted(self._ways.bridges(node), (self._batteries, self._sources))
            self._counted |= dict.fromkeys(island.place, island)
        batteries, sources = self._counted[node].beyond(device, node)
        return "battery" if batteries else "source" if sources else ""


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
