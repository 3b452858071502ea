"""From a record to its network."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from garboard.network.banks import Bank, find_banks
from garboard.network.graph import Graph
from garboard.network.layout import Layout, lay_out, listed
from garboard.network.network import Network
from garboard.network.polarity import NEGATIVE, island_polarity
from garboard.network.strings import find_strings
from garboard.network.ways import Ways
from garboard.record import Record


def build_network(record: Record) -> Network:
    """The network that the runs of a record describe."""
    layout = lay_out(record)
    series = find_strings(layout)
    ways = Ways(layout.nodes, layout.branches)
    buses = tuple(bus.id for bus in listed(record, "bus"))
    banks = find_banks(layout, series.strings, buses, ways)
    taken = set(record.things)
    series = replace(series, strings=tuple(
        replace(each, id=_unused(each.id, taken)) for each in series.strings))
    named = {each.batteries: each for each in series.strings}
    banks = tuple(replace(bank, id=_unused(bank.id, taken), strings=tuple(
        named[string.batteries] for string in bank.strings)) for bank in banks)
    graph = Graph(layout.nodes, (*layout.branches, *layout.batteries, *layout.injectors),
                  layout.reference, _returns(layout, banks))
    return Network(record, layout, graph, series, banks, ways)


def _unused(identity: str, taken: Iterable[str]) -> str:
    """An id nobody has written: one of that name in the record gets the derived one a number."""
    known = set(taken)
    number, unused = 1, identity
    while unused in known:
        number += 1
        unused = f"{identity}-{number}"
    return unused


def _returns(layout: Layout, banks: tuple[Bank, ...]) -> dict[str, str]:
    """The node a fault at a node is taken to, where that is not the common return.

    Two cases: the positive terminal of a load or source whose negative terminal is traced (across
    its own terminals); a node of the negative side (to where the strings meet of the bank on the
    same negative side; of several the first).
    """
    returns: dict[str, str] = {}
    batteries = {edge.id for edge in layout.batteries}
    for node in layout.nodes:
        identity, _, terminal = node.partition(".")
        if terminal == "positive" and identity not in batteries and node in layout.traced:
            negative = layout.negative(identity)
            if negative != layout.reference:
                returns[node] = negative
    polarity = island_polarity(layout)
    for name, nodes in layout.islands.members.items():
        if polarity.get(name) != NEGATIVE:
            continue
        meets = next((bank.meets for bank in banks for string in bank.strings
                      if layout.islands.of(string.negative) == name), None)
        if meets is not None:
            returns |= {node: meets for node in nodes if node in layout.nodes}
    return returns
