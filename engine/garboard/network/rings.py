"""Rings of conductors, and conductors that batteries feed from both ends."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from garboard.network.graph import JOINT, Edge
from garboard.network.irregularity import Irregularity
from garboard.network.layout import RETURN, Layout
from garboard.network.strings import String
from garboard.network.ways import Ways


class Rings:
    """Parts that lie in a ring: with any one of them taken out, its ends stay joined."""

    def __init__(self, layout: Layout, ways: Ways) -> None:
        self._bridges: set[str] = set()
        for nodes in layout.islands.members.values():
            if nodes != (RETURN,):
                self._bridges.update(ways.bridges(nodes[0])[1])
        self._ways = ways
        self._edges = [edge for edge in layout.branches if edge.id not in self._bridges]
        self.members = frozenset(edge.id for edge in self._edges)

    def found(self) -> Iterator[Irregularity]:
        """Each ring, or rings that share a part, once."""
        for group in self._groups():
            parts = tuple(edge.id for edge in group if edge.kind != JOINT)
            if parts:
                yield Irregularity("ring", parts, (
                    f"{', '.join(parts)} form a ring without a battery in it: the current "
                    "divides between the ways"))

    def side_by_side(self) -> Iterator[Irregularity]:
        """Devices of one ring that lie in parallel ways: neither carries the whole current."""
        for group in self._groups():
            devices = tuple(edge.id for edge in group if edge.kind == "device")
            if len(devices) > 1:
                yield Irregularity("devices-side-by-side", devices, (
                    f"the devices {', '.join(devices)} lie in ways side by side"))

    def _groups(self) -> list[list[Edge]]:
        groups: list[list[Edge]] = []
        taken: set[str] = set()
        for edge in self._edges:
            if edge.id not in taken:
                nodes = self._ways.reached(edge.start, self._bridges)
                groups.append([each for each in self._edges if each.start in nodes])
                taken.update(each.id for each in groups[-1])
        return groups


def fed_from_both(layout: Layout, strings: tuple[String, ...], ways: Ways,
                   rings: frozenset[str]) -> Iterator[Irregularity]:
    """Conductors between two feeding points that are not a string's own lead.

    On either side lies a string, and besides it another string, a load or a charging source.
    """
    tops = {string.positive for string in strings}
    users = {node for node in layout.traced if node.endswith(".positive")} - tops
    users -= {edge.end for edge in layout.batteries}
    for nodes in layout.islands.members.values():
        if sum(node in tops for node in nodes) < 2:
            continue
        visited, bridges = ways.bridges(nodes[0])
        count_tops = _counter(visited, lambda node: node in tops)
        count_users = _counter(visited, lambda node: node in users)
        conductors = {edge.id for edge in layout.branches if edge.kind == "conductor"}
        for conductor, (first, last) in bridges.items():
            sides = [(count(first, last), count(0, len(visited)) - count(first, last))
                     for count in (count_tops, count_users)]
            tied = all(sides[0][side] and sides[0][side] + sides[1][side] > 1 for side in (0, 1))
            if tied and conductor in conductors and conductor not in rings:
                yield Irregularity("fed-from-both-ends", (conductor,),
                                   f"batteries feed the conductor {conductor} from both ends")


def _counter(nodes: list[str], counts: Callable[[str], bool]) -> Callable[[int, int], int]:
    """Counts some nodes of a stretch in one subtraction."""
    sums = [0]
    for node in nodes:
        sums.append(sums[-1] + counts(node))
    return lambda first, last: sums[last] - sums[first]
