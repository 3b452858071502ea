"""A second way to solve a network, for comparison: modified nodal analysis, dense, by numpy.

Every element is an unknown current of its own, so resistances of zero need no special care. The
least-squares solution is taken: floating islands get some potential, loops of no resistance some
split, and neither is compared.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from garboard.network.graph import Edge, Graph


@dataclass
class Solved:
    """Potentials by node and currents by edge id (a fault is called ``fault``)."""

    potentials: dict[str, float]
    currents: dict[str, float]
    residual: float = field(default=0.0)


def solve(graph: Graph, resistance: dict[str, float], emf: dict[str, float],
          fault: tuple[str, str] | None = None, draw: tuple[str, str, float] | None = None,
          injected: dict[str, float] | None = None, omitted: tuple[str, ...] = ()) -> Solved:
    """Kirchhoff's equations as they stand."""
    edges = [edge for edge in graph.edges.values()
             if edge.id not in omitted and edge.kind != "injector"]
    if fault:
        edges.append(Edge("fault", fault[0], fault[1], "conductor"))
    nodes = list(graph.nodes)
    at = {node: row for row, node in enumerate(nodes)}
    size = len(nodes) + len(edges)
    matrix, right = np.zeros((size, size)), np.zeros(size)
    for number, edge in enumerate(edges):
        column = len(nodes) + number
        start, end = at[edge.start], at[edge.end]
        matrix[start, column] += 1
        matrix[end, column] -= 1
        if edge.id != "fault" and resistance[edge.id] == float("inf"):
            matrix[column, column] = 1
            continue
        matrix[column, start] += 1
        matrix[column, end] -= 1
        if edge.id != "fault":
            matrix[column, column] -= resistance[edge.id]
        right[column] = -emf.get(edge.id, 0.0)
    sources = [(edge.start, edge.end, (injected or {})[edge.id])
               for edge in graph.of_kind("injector") if edge.id in (injected or {})]
    if draw:
        sources.append(draw)
    for start, end, amount in sources:
        right[at[start]] -= amount
        right[at[end]] += amount
    row = at[graph.reference]
    matrix[row] = 0
    matrix[row, row] = 1
    right[row] = 0
    solution = np.linalg.lstsq(matrix, right, rcond=1e-13)[0]
    residual = float(np.abs(matrix @ solution - right).max())
    return Solved({node: float(solution[at[node]]) for node in nodes},
                  {edge.id: float(solution[len(nodes) + number])
                   for number, edge in enumerate(edges)}, residual)
