"""Three packs in parallel behind fuses, a main fuse, a feed to a panel: with known answers."""

from __future__ import annotations

from garboard.network import Circuit, Edge, Graph
from garboard.values import Bounds, Number

EMF = 26.8
RESISTANCE = {
    "pack-1": 2.1e-3, "pack-2": 2.1e-3, "pack-3": 2.4e-3,
    "w1": 0.12e-3, "w2": 0.12e-3, "w3": 0.12e-3,
    "f1": 0.2e-3, "f2": 0.2e-3, "f3": 0.2e-3,
    "x1": 0.20e-3, "x2": 0.30e-3, "x3": 0.40e-3,
    "f0": 0.15e-3, "feed": 0.9e-3,
}


def graph() -> Graph:
    edges: list[Edge] = []
    for number in (1, 2, 3):
        edges += [Edge(f"pack-{number}", "return", f"post-{number}", "battery"),
                  Edge(f"w{number}", f"post-{number}", f"in-{number}", "conductor"),
                  Edge(f"f{number}", f"in-{number}", f"out-{number}", "device"),
                  Edge(f"x{number}", f"out-{number}", "bus", "conductor")]
    edges += [Edge("f0", "bus", "behind-f0", "device"),
              Edge("feed", "behind-f0", "panel", "conductor")]
    return Graph([node for edge in edges for node in (edge.start, edge.end)], edges, "return")


def circuit(resistance: dict[str, Number] | None = None,
            emf: dict[str, Number] | None = None) -> Circuit:
    """The circuit with some values changed."""
    return Circuit(graph(), {**RESISTANCE, **(resistance or {})},
                   {**dict.fromkeys(("pack-1", "pack-2", "pack-3"), EMF), **(emf or {})})


def ten_percent(value: float) -> Bounds:
    return Bounds(0.9 * value, 1.1 * value, value)
