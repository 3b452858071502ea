"""Banks: strings in parallel.

Strings are in one bank when their positive ends are joined by conductors, devices, switches and
buses. A switch that couples two banks does not make them one: such a switch has, on either side of
it, a string as well as a load or charging source (a start battery with its starter, and a house
bank with its loads). An isolator in a string's own lead has nothing but that string on its side,
and two halves of one bank may be joined by a switch when only one half carries the loads.

A bank is named after its bus: of the buses in the bank, the one nearest to the most strings
(counted in parts passed; the first in the record of several). There its strings meet. Without a
bus it is named after its first battery, and its strings meet at the terminal that the most runs
end at.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.network.graph import Edge
from garboard.network.layout import Layout
from garboard.network.strings import String
from garboard.network.ways import Ways


@dataclass(frozen=True, slots=True)
class Bank:
    """Strings in parallel; ``meets`` is the node where their currents come together."""

    id: str
    strings: tuple[String, ...]
    meets: str
    nodes: frozenset[str]

    @property
    def batteries(self) -> tuple[str, ...]:
        """All batteries, string by string."""
        return tuple(battery for string in self.strings for battery in string.batteries)


def find_banks(layout: Layout, strings: tuple[String, ...], buses: tuple[str, ...],
               ways: Ways) -> tuple[Bank, ...]:
    """The banks of a layout, in the order of their first strings."""
    users = {f"{edge.id}.positive" for edge in layout.injectors}
    users |= {node for node in layout.traced if node.endswith(".positive")}
    users -= {edge.end for edge in layout.batteries}
    coupling = {switch.id for switch in layout.branches if switch.kind == "switch"
                and len(strings) > 1 and _couples(switch, layout, strings, users, ways)}
    found: list[Bank] = []
    placed: set[str] = set()
    for string in strings:
        if string.id in placed:
            continue
        nodes = ways.reached(string.positive, coupling)
        members = tuple(each for each in strings if each.positive in nodes)
        placed.update(each.id for each in members)
        bus = _bus(members, [bus for bus in buses if bus in nodes], ways, coupling)
        found.append(Bank(f"bank-{bus or members[0].batteries[0]}", members,
                          bus or _busiest(nodes, layout), frozenset(nodes)))
    return tuple(found)


def _couples(switch: Edge, layout: Layout, strings: tuple[String, ...], users: set[str],
             ways: Ways) -> bool:
    sides = [ways.reached(end, (switch.id,)) for end in (switch.start, switch.end)]
    if switch.end in sides[0]:
        return False
    return all(any(string.positive in side for string in strings)
               and any(user in side for user in users) for side in sides)


def _busiest(nodes: Iterable[str], layout: Layout) -> str:
    """The terminal that the most runs end at."""
    return max(nodes, key=lambda node: len(layout.runs_at.get(node, ())))


def _bus(strings: tuple[String, ...], buses: list[str], ways: Ways,
         coupling: set[str]) -> str | None:
    """The bus nearest to the most strings."""
    if not buses:
        return None
    tops = [string.positive for string in strings]
    parts = _parts_between(tops, buses, ways, coupling)
    nearest = dict.fromkeys(buses, 0)
    for top in tops:
        least = min(parts[top, bus] for bus in buses)
        for bus in buses:
            nearest[bus] += parts[top, bus] == least
    place = {bus: position for position, bus in enumerate(buses)}
    return min(buses, key=lambda bus: (-nearest[bus], sum(parts[top, bus] for top in tops),
                                       place[bus]))


def _parts_between(tops: list[str], buses: list[str], ways: Ways,
                   coupling: set[str]) -> dict[tuple[str, str], int]:
    """How many parts lie between each top and each bus, walked from the fewer of the two."""
    found: dict[tuple[str, str], int] = {}
    for start in min(buses, tops, key=len):
        steps: dict[str, int] = {}
        for node, step in ways.walk(start, coupling):
            steps[node] = 0 if step is None else steps[step.left] + 1
        if len(buses) <= len(tops):
            found |= {(top, start): steps[top] for top in tops}
        else:
            found |= {(start, bus): steps[bus] for bus in buses}
    return found
