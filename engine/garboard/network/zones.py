"""The unprotected zone of a battery: what a fault can reach before any fuse or breaker.

It is everything in reach of the positive terminal over conductors, switches and buses without
passing a protective device. Switches do not protect; a management system's electronics are not in
the runs at all and so never count. The zone does not go on through another battery: in a string
each battery has a zone of its own. Where the zone forks, each way to a device, to another terminal
or to a dead end is a path, over the fewest parts where ways meet again; a part over which they do
(the second of two leads side by side) is the last of a path of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from garboard.network.ways import Step, Ways
from garboard.values import Number, Truth, all_of, largest

Ending = Literal["device", "terminal", "dead end"]


@dataclass(frozen=True, slots=True)
class ZonePath:
    """A way from the battery, conductor by conductor, to what ends it.

    ``end`` is the id of a device, a terminal (``pack-2.positive``), or the node of a dead end.
    """

    conductors: tuple[str, ...]
    end: str
    ending: Ending


@dataclass(frozen=True, slots=True)
class Zone:
    """The unprotected zone of one battery, nearest parts first."""

    battery: str
    conductors: tuple[str, ...]
    switches: tuple[str, ...]
    devices: tuple[str, ...]
    paths: tuple[ZonePath, ...]
    #: Ways, conductor by conductor, that end where another has led.
    rings: tuple[tuple[str, ...], ...] = ()

    @property
    def closed(self) -> bool:
        """Whether every way out of it leads to a protective device."""
        return bool(self.paths) and all(path.ending == "device" for path in self.paths)

    def longest(self, lengths: Mapping[str, Number]) -> Number:
        """The length in m of the longest path; 0 when a device sits on the terminal itself."""
        ways = (*(path.conductors for path in self.paths), *self.rings)
        return largest([_sum(way, lengths) for way in ways] or [0.0])

    def total(self, lengths: Mapping[str, Number]) -> Number:
        """The length in m of all its conductors together."""
        return _sum(self.conductors, lengths)

    def sheathed(self, flags: Mapping[str, Truth]) -> Truth:
        """Whether every conductor in it is sheathed over its whole length."""
        return all_of(flags[conductor] for conductor in self.conductors)


def find_zone(battery: str, positive: str, terminals: frozenset[str], ways: Ways) -> Zone:
    """The zone behind the positive terminal of a battery; ``terminals`` end a path."""
    reached = ways.reached(positive, past_devices=False)
    conductors: list[str] = []
    switches: list[str] = []
    devices: dict[str, None] = {}
    paths: list[ZonePath] = []
    rings: list[tuple[str, ...]] = []
    for node, came in reached.items():
        if came is not None and came.edge.kind == "conductor":
            conductors.append(came.edge.id)
        elif came is not None and came.edge.kind == "switch":
            switches.append(came.edge.id)
        ended = False
        for step in ways.steps(node):
            edge = step.edge
            if edge.kind == "device":
                devices[edge.id] = None
                paths.append(ZonePath(_way(node, reached), edge.id, "device"))
                ended = True
            elif reached[step.node] is step:
                ended = True
            elif came is None or edge is not came.edge:
                _add_closing(edge.id, edge.kind, conductors, switches)
                if edge.kind == "conductor" and not _leads_over(step.node, node, reached):
                    rings.append((*_way(node, reached), edge.id))
        if node in terminals and node != positive:
            paths.append(ZonePath(_way(node, reached), node, "terminal"))
        elif not ended and node != positive:
            paths.append(ZonePath(_way(node, reached), node, "dead end"))
    return Zone(battery, tuple(conductors), tuple(switches), tuple(devices), tuple(paths),
                tuple(rings))


def _add_closing(identity: str, kind: str, conductors: list[str], switches: list[str]) -> None:
    """Add a part that closes a ring of ways, once."""
    listed = {"conductor": conductors, "switch": switches}.get(kind)
    if listed is not None and identity not in listed:
        listed.append(identity)


def _way(node: str, reached: Mapping[str, Step | None]) -> tuple[str, ...]:
    """The conductors from the battery to a node."""
    conductors: list[str] = []
    step = reached[node]
    while step is not None:
        if step.edge.kind == "conductor":
            conductors.append(step.edge.id)
        step = reached[step.left]
    return tuple(reversed(conductors))


def _leads_over(passed: str, node: str, reached: Mapping[str, Step | None]) -> bool:
    """Whether the way from the battery to a node leads over another."""
    step = reached[node]
    while node != passed and step is not None:
        node, step = step.left, reached[step.left]
    return node == passed


def _sum(conductors: tuple[str, ...], lengths: Mapping[str, Number]) -> Number:
    total: Number = 0.0
    for conductor in conductors:
        total = total + lengths[conductor]
    return total

