"""From a record to its network."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from garboard.network.banks import Bank, find_banks
from garboard.network.graph import Graph
from garboard.network.layout import Layout, lay_out, listed
from garboard.network.network import Network
from garboard.network.polarity import NEGATIVE, island_polarity
from garboard.network.strings import find_strings
from garboard.network.ways import Ways
from garboard.record import Fact, Record


def build_network(record: Record) -> Network:
    """The network that the runs of a record describe, every switch closed."""
    found_open = frozenset(switch.id for switch in listed(record, "switch")
                           if _is_open(switch.facts.get("found")))
    as_found = partial(_built, record, found_open) if found_open else None
    return _built(record, frozenset(), as_found, found_open)


def _is_open(fact: Fact | None) -> bool:
    return fact is not None and fact.value == "open"


def _built(record: Record, opened: frozenset[str],
           as_found: Callable[[], Network] | None = None,
           found_open: frozenset[str] = frozenset()) -> Network:
    layout = lay_out(record, opened)
    series = find_strings(layout)
    ways = Ways(layout.nodes, layout.branches)
    buses = tuple(bus.id for bus in listed(record, "bus"))
    banks = find_banks(layout, series.strings, buses, ways)
    edges = (*layout.branches, *layout.batteries, *layout.injectors, *layout.motors)
    graph = Graph(layout.nodes, edges, layout.reference, _returns(layout, banks))
    return Network(record, layout, graph, series, banks, ways, as_found, found_open)


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
    known = set(layout.nodes)
    polarity = island_polarity(layout)
    for name, nodes in layout.islands.members.items():
        if polarity.get(name) != NEGATIVE:
            continue
        meets = next((bank.meets for bank in banks for string in bank.strings
                      if layout.islands.of(string.negative) == name), None)
        if meets is not None:
            returns |= {node: meets for node in nodes if node in known}
    return returns
