"""The device of its own that a string has: between it and the point where strings meet.

A device is a string's own when every way from the string's positive end to the meeting point of its
bank, and to the positive end of any other string, passes through it. Of several in series the
nearest to the string counts. Two devices side by side in one lead are neither of them its own, and
a string that sits on the meeting point has none. Where no other string is joined, the string's own
device is its first device, if there is only one.
"""

from __future__ import annotations

from garboard.network.banks import Bank
from garboard.network.strings import String
from garboard.network.ways import Ways


def own_devices(banks: tuple[Bank, ...], devices: frozenset[str], ways: Ways,
                first: dict[str, tuple[str, ...]]) -> dict[str, str | None]:
    """The own device of each string, by id; ``first`` are each string's first devices."""
    found: dict[str, str | None] = {}
    for bank in banks:
        for string in bank.strings:
            if string.id not in found:
                found |= _of_island(string, banks, devices, ways, first)
    return found


def _of_island(start: String, banks: tuple[Bank, ...], devices: frozenset[str], ways: Ways,
               first: dict[str, tuple[str, ...]]) -> dict[str, str | None]:
    visited, bridges = ways.bridges(start.positive)
    place = {node: position for position, node in enumerate(visited)}
    here = {string: bank for bank in banks for string in bank.strings if string.positive in place}
    if len(here) == 1:
        only = first[start.id]
        return {start.id: only[0] if len(only) == 1 else None}
    tops = [0] * (len(visited) + 1)
    for string in here:
        tops[place[string.positive] + 1] += 1
    for position in range(len(visited)):
        tops[position + 1] += tops[position]
    candidates: dict[str, list[str]] = {string.id: [] for string in here}
    for device, (begin, end) in bridges.items():
        if device not in devices:
            continue
        beyond = tops[end] - tops[begin]
        for alone, side in ((beyond == 1, True), (beyond == len(here) - 1, False)):
            if alone:
                string = next(each for each in here
                              if (begin <= place[each.positive] < end) == side)
                if (begin <= place[here[string].meets] < end) != side:
                    candidates[string.id].append(device)
    return {string.id: _nearest(string, candidates[string.id], ways) for string in here}


def _nearest(string: String, devices: list[str], ways: Ways) -> str | None:
    if len(devices) < 2:
        return devices[0] if devices else None
    for node, _ in ways.walk(string.positive):
        for step in ways.steps(node):
            if step.edge.id in devices:
                return step.edge.id
    return None
