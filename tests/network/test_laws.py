"""Laws that hold for every network, and monotony where it is true."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.network import Circuit, Edge, Graph
from garboard.values import Bounds

from .generate import Made, network

SEEDS = st.integers(0, 10_000)


def _fault(made: Made, resistance: dict[str, float], emf: dict[str, float], point: str) -> float:
    value = Circuit(made.graph, resistance, emf).fault_current(point)
    assert isinstance(value, float)
    return value


@given(SEEDS, st.data())
def test_with_equal_voltages_every_resistance_lowers_the_fault_current(
        seed: int, data: st.DataObject) -> None:
    made = network(seed, spread=0.0, series=False)
    point = data.draw(st.sampled_from(made.points))
    edge = data.draw(st.sampled_from(sorted(made.resistance)))
    factor = data.draw(st.floats(1.0, 1000.0))
    raised = {**made.resistance, edge: made.resistance[edge] * factor}
    assert _fault(made, raised, made.emf, point) <= _fault(
        made, made.resistance, made.emf, point) * (1 + 1e-11)


@given(SEEDS, st.data())
def test_a_higher_voltage_never_lowers_the_fault_current(seed: int, data: st.DataObject) -> None:
    """With every battery between the return and a bus."""
    made = network(seed, series=False)
    point = data.draw(st.sampled_from(made.points))
    battery = data.draw(st.sampled_from(sorted(made.emf)))
    raised = {**made.emf, battery: made.emf[battery] + data.draw(st.floats(0.0, 20.0))}
    assert _fault(made, made.resistance, raised, point) >= _fault(
        made, made.resistance, made.emf, point) * (1 - 1e-11)


@given(SEEDS, st.floats(0.01, 100.0))
def test_currents_scale_with_voltage_and_against_resistance(seed: int, factor: float) -> None:
    made = network(seed)
    point = made.points[-1]
    plain = _fault(made, made.resistance, made.emf, point)
    volts = {battery: value * factor for battery, value in made.emf.items()}
    ohms = {edge: value * factor for edge, value in made.resistance.items()}
    assert _fault(made, made.resistance, volts, point) == pytest.approx(plain * factor, rel=1e-9)
    assert _fault(made, ohms, made.emf, point) == pytest.approx(plain / factor, rel=1e-9)


@given(SEEDS, st.randoms(use_true_random=False))
def test_order_and_direction_of_edges_do_not_matter(seed: int, shuffle: st.DataObject) -> None:
    made = network(seed)
    edges = list(made.graph.edges.values())
    shuffle.shuffle(edges)  # type: ignore[attr-defined]
    turned = [edge if edge.kind == "battery" else Edge(edge.id, edge.end, edge.start, edge.kind)
              for edge in edges]
    other = Circuit(Graph(reversed(made.graph.nodes), turned, "return"), made.resistance, made.emf)
    same = Circuit(made.graph, made.resistance, made.emf)
    for point in made.points[::4]:
        assert other.fault_current(point) == pytest.approx(same.fault_current(point), rel=1e-9)
    for device in made.devices[:3]:
        one = same.device_current(device, own_resistance=True)
        two = other.device_current(device, own_resistance=True)
        assert (two.at_from, two.at_to) == (
            pytest.approx(one.at_to, rel=1e-9, abs=1e-6),
            pytest.approx(one.at_from, rel=1e-9, abs=1e-6))


@given(SEEDS)
def test_superposition(seed: int) -> None:
    """The current in a branch is the sum of what each battery drives alone."""
    made = network(seed)
    point, branch = made.points[-1], sorted(made.resistance)[0]
    together = Circuit(made.graph, made.resistance, made.emf).branch_current(branch, fault=point)
    alone = 0.0
    for battery in made.emf:
        only = {each: value if each == battery else 0.0 for each, value in made.emf.items()}
        value = Circuit(made.graph, made.resistance, only).branch_current(branch, fault=point)
        assert isinstance(value, float)
        alone += value
    assert alone == pytest.approx(together, rel=1e-8, abs=1e-6)


@given(SEEDS)
def test_shares_of_equal_voltages_sum_to_one(seed: int) -> None:
    made = network(seed, spread=0.0, series=False)
    circuit = Circuit(made.graph, made.resistance, made.emf)
    currents = circuit.currents_at(1.0, "bus0", tuple(made.emf))
    assert sum(currents.values()) == pytest.approx(1.0)


@given(SEEDS, st.data())
def test_bounds_grow_with_the_bounds_put_in(seed: int, data: st.DataObject) -> None:
    made = network(seed, sources=3)
    edges = data.draw(st.lists(st.sampled_from(sorted(made.resistance)), min_size=1, max_size=6,
                               unique=True))
    point = data.draw(st.sampled_from(made.points))
    ends = []
    for part in (0.05, 0.3):
        resistance = dict(made.resistance)
        wide = {edge: Bounds(resistance[edge] * (1 - part), resistance[edge] * (1 + part))
                for edge in edges}
        value = Circuit(made.graph, {**resistance, **wide}, made.emf).fault_current(point)
        ends.append((value.lo, value.hi) if isinstance(value, Bounds) else (value, value))
    (inner_lo, inner_hi), (outer_lo, outer_hi) = ends
    assert outer_lo <= inner_lo * (1 + 1e-11) and inner_hi <= outer_hi * (1 + 1e-11)
