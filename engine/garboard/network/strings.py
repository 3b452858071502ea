"""Strings: batteries in series.

Two batteries are in series where a run joins the positive terminal of one directly to the negative
terminal of the other, or where an island apart from the common return holds just one battery's
positive and one battery's negative terminal (a tap between them may carry loads). An island that
holds several of each without such runs is cross-linked: which battery is in series with which
cannot be told, and each of them counts as a string of its own.
"""

from __future__ import annotations

from dataclasses import dataclass

from garboard.network.layout import Layout


@dataclass(frozen=True, slots=True)
class String:
    """Batteries in series, from the negative end to the positive end."""

    id: str
    batteries: tuple[str, ...]
    negative: str
    positive: str


@dataclass(frozen=True, slots=True)
class Series:
    """All strings, and the groups of batteries whose order in series cannot be told."""

    strings: tuple[String, ...]
    cross_linked: tuple[tuple[str, ...], ...]


def find_strings(layout: Layout) -> Series:
    """The strings of a layout, in the order of their first batteries in the record."""
    above: dict[str, str] = {}
    below: dict[str, str] = {}

    def link(lower: str, upper: str) -> None:
        if lower not in above and upper not in below and lower != upper:
            above[lower], below[upper] = upper, lower

    at_positive = {edge.end: edge.id for edge in layout.batteries}
    at_negative = {edge.start: edge.id for edge in layout.batteries
                   if edge.start != layout.reference}
    for start, end in layout.ends.values():
        for one, other in ((start, end), (end, start)):
            if one in at_positive and other in at_negative:
                link(at_positive[one], at_negative[other])
    cross_linked: list[tuple[str, ...]] = []
    for nodes in layout.islands.members.values():
        if layout.reference in nodes:
            continue
        lower = [at_positive[node] for node in nodes if node in at_positive]
        upper = [at_negative[node] for node in nodes if node in at_negative]
        if len(lower) == 1 and len(upper) == 1:
            link(lower[0], upper[0])
        loose = [each for each in lower if each not in above]
        hanging = [each for each in upper if each not in below]
        if loose and hanging and len(lower) > 1 and len(upper) > 1:
            cross_linked.append(tuple(dict.fromkeys((*loose, *hanging))))
    return Series(_chained(layout, above, below), tuple(cross_linked))


def _chained(layout: Layout, above: dict[str, str], below: dict[str, str]) -> tuple[String, ...]:
    edges = {edge.id: edge for edge in layout.batteries}
    order = {battery: position for position, battery in enumerate(edges)}
    found: list[String] = []
    taken: set[str] = set()
    for battery in edges:
        lowest = battery
        seen = {battery}
        while lowest in below and below[lowest] not in seen:
            lowest = below[lowest]
            seen.add(lowest)
        if lowest in taken:
            continue
        members = [lowest]
        while members[-1] in above and above[members[-1]] not in members:
            members.append(above[members[-1]])
        taken.update(members)
        found.append(String("", tuple(members), edges[members[0]].start, edges[members[-1]].end))
    found.sort(key=lambda each: min(order[battery] for battery in each.batteries))
    return tuple(String(f"string-{each.batteries[0]}", each.batteries, each.negative,
                        each.positive) for each in found)
