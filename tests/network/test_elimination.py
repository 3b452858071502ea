"""Star-mesh elimination, and which connections matter: against exact fractions and brute force."""

from __future__ import annotations

import itertools
import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.network import Circuit, Edge, Graph
from garboard.network.blocks import between, elimination_order
from garboard.network.starmesh import (
    INF,
    Net,
    NoAnswer,
    Unlimited,
    eliminate,
    join,
    loop_current,
)
from garboard.values import Unknown

RESISTANCES = st.sampled_from([0.0, 1e-30, 1e-9, 1e-5, 2e-4, 1e-3, 0.3, 1e3, 1e12])
EMFS = st.sampled_from([0.0, 3.2, 12.8, 13.4, 26.8])


def _net(*connections: tuple[int, int, float, float]) -> Net:
    net: Net = {}
    for u, v, g, s in connections:
        join(net, u, v, g, s)
    return net


def test_series_adds_resistances_and_emfs() -> None:
    net = _net((0, 1, 1 / 2.0, 6.0 / 2.0), (1, 2, 1 / 3.0, 6.0 / 3.0))
    eliminate(net, 1)
    g, s = net[0][2]
    assert (g, s) == pytest.approx((1 / 5.0, 12.0 / 5.0))


def test_three_pointed_star_becomes_a_triangle() -> None:
    net = _net((0, 1, 1.0, 0.0), (0, 2, 2.0, 0.0), (0, 3, 3.0, 0.0))
    eliminate(net, 0)
    assert net[1][2][0] == pytest.approx(2 / 6)
    assert net[1][3][0] == pytest.approx(3 / 6)
    assert net[2][3][0] == pytest.approx(6 / 6)


def test_a_tie_moves_everything_to_its_other_end() -> None:
    net = _net((0, 1, INF, 13.0), (0, 2, 2.0, 1.0))
    eliminate(net, 0)
    assert net[1][2] == (2.0, 1.0 - 2.0 * 13.0)


def test_ties_of_different_voltage_have_no_limit() -> None:
    net = _net((0, 1, INF, 13.0))
    with pytest.raises(Unlimited):
        join(net, 1, 0, INF, -12.0)
    join(net, 1, 0, INF, -13.0)


def test_a_current_with_nowhere_to_go() -> None:
    with pytest.raises(NoAnswer):
        eliminate(_net((0, 1, 0.0, 5.0)), 0)
    eliminate(_net((0, 1, 0.0, 5.0), (0, 2, 0.0, -5.0)), 0)


@pytest.mark.parametrize(("rest", "resistance", "emf", "current"), [
    ((0.5, 0.0), 2.0, 12.0, 3.0),           # 12 V around 4 Ω
    ((0.0, -5.0), 3.0, 0.0, 5.0),           # an injected current
    ((INF, 2.0), 4.0, 10.0, 2.0),           # the rest is a source of no resistance
    ((0.5, 0.0), math.inf, 12.0, 0.0),
])
def test_loop_current(rest: tuple[float, float], resistance: float, emf: float,
                      current: float) -> None:
    assert loop_current(rest, resistance, emf) == pytest.approx(current)


def test_loop_without_any_resistance() -> None:
    with pytest.raises(Unlimited):
        loop_current((INF, 0.0), 0.0, 12.0)
    with pytest.raises(NoAnswer) as caught:
        loop_current((INF, 12.0), 0.0, 12.0)
    assert not isinstance(caught.value, Unlimited)


def _exact_fault(edges: list[tuple[int, int, float, float]], nodes: int) -> Fraction | None:
    """Fault current from node 1 to node 0 in exact fractions; ``None`` when not determined.

    Kirchhoff's equations with node 1 at 0 V, a current for every edge, by Gauss-Jordan.
    """
    free = list(range(2, nodes))
    size = len(free) + len(edges)
    rows: list[list[Fraction]] = []
    for node in free:
        row = [Fraction(0)] * (size + 1)
        for number, (start, end, _, _) in enumerate(edges):
            row[len(free) + number] += (end == node) - (start == node)
        rows.append(row)
    for number, (start, end, resistance, emf) in enumerate(edges):
        row = [Fraction(0)] * (size + 1)
        for node, sign in ((start, 1), (end, -1)):
            if node in free:
                row[free.index(node)] += sign
        row[len(free) + number] -= Fraction(resistance)
        row[-1] = -Fraction(emf)
        rows.append(row)
    pivots: dict[int, int] = {}
    for column in range(size):
        pivot = next((r for r in range(len(pivots), len(rows)) if rows[r][column]), None)
        if pivot is None:
            continue
        top = len(pivots)
        rows[top], rows[pivot] = rows[pivot], rows[top]
        rows[top] = [value / rows[top][column] for value in rows[top]]
        for r, row in enumerate(rows):
            if r != top and row[column]:
                rows[r] = [a - row[column] * b for a, b in zip(row, rows[top], strict=True)]
        pivots[column] = top
    if any(not any(row[:-1]) and row[-1] for row in rows):
        return None
    into = [Fraction((end == 1) - (start == 1)) for start, end, _, _ in edges]
    total = Fraction(0)
    for number, weight in enumerate(into):
        if weight:
            column = len(free) + number
            if column not in pivots:
                return None
            total += weight * rows[pivots[column]][-1]
    for column in set(range(size)) - set(pivots):  # the total may not depend on what is free
        drift = sum((weight * -rows[pivots[len(free) + number]][column]
                     for number, weight in enumerate(into)
                     if weight and len(free) + number in pivots), Fraction(0))
        if drift:
            return None
    return total


@st.composite
def _networks(draw: st.DrawFn) -> tuple[list[tuple[int, int, float, float]], int]:
    nodes = draw(st.integers(3, 6))
    count = draw(st.integers(nodes - 1, 9))
    ends = st.tuples(st.integers(0, nodes - 1), st.integers(0, nodes - 1))
    edges = [(*draw(ends.filter(lambda pair: pair[0] != pair[1])), draw(RESISTANCES), draw(EMFS))
             for _ in range(count)]
    return edges, nodes


@given(_networks())
def test_faults_agree_with_exact_fractions(
        made: tuple[list[tuple[int, int, float, float]], int]) -> None:
    """Resistances from 0 and 1e-30 Ω to 1e12 Ω side by side; every edge a battery, some of 0 V."""
    edges, nodes = made
    expected = _exact_fault(edges, nodes)
    graph = Graph([str(node) for node in range(nodes)],
                  [Edge(f"e{number}", str(start), str(end), "battery")
                   for number, (start, end, _, _) in enumerate(edges)], "0")
    circuit = Circuit(graph, {f"e{n}": edge[2] for n, edge in enumerate(edges)},
                      {f"e{n}": edge[3] for n, edge in enumerate(edges)})
    found = circuit.fault_current("1")
    if isinstance(found, Unknown) or expected is None:
        return
    assert isinstance(found, float)
    pushed = _exact_fault([(start, end, resistance, float((start == 0) - (end == 0)))
                           for start, end, resistance, _ in edges], nodes)
    conductance = math.inf if pushed is None else abs(float(pushed))
    volts = max(edge[3] for edge in edges)
    assert abs(found - abs(float(expected))) <= 1e-11 * (
        abs(float(expected)) + volts * conductance)


@given(st.integers(2, 6), st.lists(st.tuples(st.integers(0, 5), st.integers(0, 5)), max_size=10))
def test_what_matters_lies_on_a_simple_path(
        nodes: int, ends: list[tuple[int, int]]) -> None:
    ends = [(u % nodes, v % nodes) for u, v in ends if u % nodes != v % nodes]
    assert between(ends, 0, 1) == sorted(_on_paths(ends, 0, 1))


def _on_paths(ends: list[tuple[int, int]], start: int, goal: int) -> set[int]:
    """All edges on simple paths, by trying every path."""
    found: set[int] = set()

    def walk(node: int, seen: tuple[int, ...], used: tuple[int, ...]) -> None:
        if node == goal:
            found.update(used)
            return
        for number, pair in enumerate(ends):
            if node in pair:
                other = pair[1] if pair[0] == node else pair[0]
                if other not in seen:
                    walk(other, (*seen, other), (*used, number))

    walk(start, (start,), ())
    return found


@given(st.lists(st.tuples(st.integers(0, 7), st.integers(0, 7)), max_size=14))
def test_elimination_order_names_every_other_node_once(ends: list[tuple[int, int]]) -> None:
    ends = [pair for pair in ends if pair[0] != pair[1]]
    order = elimination_order(ends, (0, 1))
    nodes = {*itertools.chain.from_iterable(ends)} - {0, 1}
    assert sorted(order) == sorted(nodes)
