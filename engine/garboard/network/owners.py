"""The device of its own that a string has: alone between it and every other string.

A device is a string's own when every way from the string's positive end to the positive end of any
other string passes through it, and it has no other string on its side. Of several in series the
nearest to the string counts. Two devices side by side in one lead are neither of them its own.
Where no other string is joined, the string's own device is its first device, if there is only one.
"""

from __future__ import annotations

from itertools import accumulate

from garboard.network.graph import Edge
from garboard.network.strings import String
from garboard.network.ways import Ways


def own_devices(strings: tuple[String, ...], devices: tuple[Edge, ...], ways: Ways,
                first: dict[str, tuple[str, ...]]) -> dict[str, str | None]:
    """The own device of each string, by id; ``first`` are each string's first devices."""
    found: dict[str, str | None] = {}
    known = {device.id for device in devices}
    for string in strings:
        if string.id not in found:
            found |= _of_island(string, strings, known, ways, first)
    return found


def _of_island(start: String, strings: tuple[String, ...], devices: set[str], ways: Ways,
               first: dict[str, tuple[str, ...]]) -> dict[str, str | None]:
    visited, bridges = ways.bridges(start.positive)
    place = {node: position for position, node in enumerate(visited)}
    here = [string for string in strings if string.positive in place]
    if len(here) == 1:
        only = first[start.id]
        return {start.id: only[0] if len(only) == 1 else None}
    at: dict[int, list[String]] = {}
    for string in here:
        at.setdefault(place[string.positive], []).append(string)
    ends = list(accumulate((len(at.get(position, ())) for position in range(len(visited))),
                           initial=0))
    candidates: dict[str, list[str]] = {string.id: [] for string in here}
    for device, (begin, end) in bridges.items():
        if device not in devices:
            continue
        beyond = ends[end] - ends[begin]
        if beyond == 1:
            alone = next(each[0] for position, each in at.items() if begin <= position < end)
            candidates[alone.id].append(device)
        if beyond == len(here) - 1:
            near = next(each for each in here if not begin <= place[each.positive] < end)
            candidates[near.id].append(device)
    return {string.id: _nearest(string, candidates[string.id], ways) for string in here}


def _nearest(string: String, devices: list[str], ways: Ways) -> str | None:
    if len(devices) < 2:
        return devices[0] if devices else None
    for node in ways.reached(string.positive, lambda edge: True):
        for edge, _ in ways.steps(node):
            if edge.id in devices:
                return edge.id
    return None
