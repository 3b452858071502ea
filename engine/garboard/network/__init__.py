"""The DC network of a record: what hangs together, and the currents in it."""

from garboard.network.banks import Bank
from garboard.network.build import build_network
from garboard.network.circuit import Circuit, SidedCurrent
from garboard.network.feeds import Feed
from garboard.network.graph import Edge, Graph
from garboard.network.irregularity import Irregularity
from garboard.network.network import DerivedThing, Network
from garboard.network.sides import Side
from garboard.network.strings import String
from garboard.network.zones import Zone, ZonePath

__all__ = [
    "Bank", "Circuit", "DerivedThing", "Edge", "Feed", "Graph", "Irregularity", "Network", "Side",
    "SidedCurrent", "String", "Zone", "ZonePath", "build_network",
]
