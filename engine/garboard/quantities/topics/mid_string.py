"""Shorts between the batteries of a string, from the link of two of them to the common return."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from garboard.network import Circuit, Network
from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.largest import LargestFaults
from garboard.quantities.topics.faults import STATE
from garboard.quantities.topics.smallest_faults import SMALLEST_STATE, smallest_at
from garboard.values import OUTSIDE_METHOD, Number, Unknown, largest, smallest

_NODAL = cite("nodal analysis of a resistive network, checked against ngspice", "definition")
_LINKS = "strings of two batteries and more"


def links_of(network: Network, string: str) -> tuple[str, ...]:
    """The terminals between the batteries of a string: two for every pair of neighbours."""
    batteries = next(each.batteries for each in network.strings if each.id == string)
    edges = [network.graph.edges[battery] for battery in batteries]
    return tuple(dict.fromkeys(node for lower, upper in pairwise(edges)
                               for node in (lower.end, upper.start)))


_SINGLE = Unknown.because(OUTSIDE_METHOD, detail="a string of one battery has no link")


@quantity("string.largest_link_fault_current", dimension="current",
          needs={"network": "network", "string": "id", "faults": "record.largest_faults"},
          method="The greatest current into a short from a link between two of its batteries to "
                 "the common return, from both sides of the link",
          citation=_NODAL, valid=f"{_LINKS}; {STATE}")
def largest_link_fault_current(network: Network, string: str, faults: LargestFaults) -> Figure:
    nodes = links_of(network, string)
    found: Number = largest([faults.fault_current(node) for node in nodes]) if nodes else _SINGLE
    return Figure(found, remarks=(f"shorts at: {', '.join(nodes) or 'none'}",))


@quantity("string.smallest_link_fault_current", dimension="current",
          needs={"network": "network", "string": "id",
                 "circuits": "record.smallest_fault_circuit"},
          method="The least current into a short from a link between two of its batteries to the "
                 "common return, from the strings one at a time",
          citation=_NODAL, valid=f"{_LINKS}; {SMALLEST_STATE}")
def smallest_link_fault_current(network: Network, string: str,
                                circuits: Mapping[str, Circuit]) -> Figure:
    nodes = links_of(network, string)
    found: Number = smallest([smallest_at(circuits, node)[0] for node in nodes]) if nodes \
        else _SINGLE
    return Figure(found, remarks=(f"shorts at: {', '.join(nodes) or 'none'}",))


QUANTITIES = (largest_link_fault_current, smallest_link_fault_current)
