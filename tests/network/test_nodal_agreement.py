"""Random networks against Kirchhoff's equations solved another way, and his laws themselves."""

from __future__ import annotations

import random

import pytest

from garboard.network import Circuit, Edge, Graph
from garboard.values import Unknown

from .generate import Made, network
from .nodal import solve

SEEDS = range(40)
#: Part of the largest current in a network that a difference may make.
TOLERANCE = 1e-9


def _with_zeros(made: Made, seed: int) -> Made:
    """Every third network has parts of no resistance."""
    if seed % 3 == 0:
        draw = random.Random(seed)
        for edge in made.resistance:
            if not edge.startswith("b") and draw.random() < 0.3:
                made.resistance[edge] = 0.0
    return made


def _made(seed: int) -> tuple[Made, Circuit]:
    made = _with_zeros(network(seed), seed)
    return made, Circuit(made.graph, made.resistance, made.emf)


def _agree(found: object, expected: float, scale: float) -> None:
    assert isinstance(found, float)
    assert found == pytest.approx(expected, abs=TOLERANCE * scale)


def _largest(currents: dict[str, float]) -> float:
    return max(abs(current) for current in currents.values()) + 1.0


@pytest.mark.parametrize("seed", SEEDS)
def test_fault_currents(seed: int) -> None:
    made, circuit = _made(seed)
    for point in made.points:
        expected = solve(made.graph, made.resistance, made.emf, (point, "return")).currents
        _agree(circuit.fault_current(point), abs(expected["fault"]), _largest(expected))


@pytest.mark.parametrize("seed", SEEDS)
def test_fault_between_two_points(seed: int) -> None:
    made, circuit = _made(seed)
    points = random.Random(seed).sample(made.points, 2)
    expected = solve(made.graph, made.resistance, made.emf, (points[0], points[1])).currents
    found = circuit.fault_current(points[0], back_to=points[1])
    if isinstance(found, Unknown):  # nothing drives it, or no resistance lies in between
        assert abs(expected["fault"]) < 1e-6 * _largest(expected)
    else:
        _agree(found, abs(expected["fault"]), _largest(expected))


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("own_resistance", [False, True])
def test_device_currents_at_both_sides(seed: int, own_resistance: bool) -> None:
    made, circuit = _made(seed)
    for device in made.devices:
        found = circuit.device_current(device, own_resistance=own_resistance)
        resistance = dict(made.resistance)
        if not own_resistance:
            resistance[device] = 0.0
        edge = made.graph.edges[device]
        sides = []
        for point, current in ((edge.start, found.at_from), (edge.end, found.at_to)):
            expected = solve(made.graph, resistance, made.emf, (point, "return")).currents
            if not _split_undetermined(current):
                _agree(current, abs(expected[device]), _largest(expected))
                sides.append(abs(expected[device]))
        if len(sides) == 2:
            _agree(found.value, max(sides), max(sides) + 1e-6)
            assert found.side == ("from" if found.at_from >= found.at_to else "to")


def _split_undetermined(current: object) -> bool:
    """Side by side with a way of no resistance a link has no current of its own."""
    return isinstance(current, Unknown) and current.reason == "outside method"


@pytest.mark.parametrize("seed", SEEDS)
def test_branch_currents_obey_kirchhoff(seed: int) -> None:
    """At every node the currents sum to zero, and what the sources give the resistances take."""
    made = network(seed)
    circuit = Circuit(made.graph, made.resistance, made.emf)
    point = random.Random(seed).choice(made.points)
    currents = {edge: circuit.branch_current(edge, fault=point) for edge in made.graph.edges}
    sums = dict.fromkeys(made.graph.nodes, 0.0)
    given = taken = 0.0
    for edge in made.graph.edges.values():
        current = currents[edge.id]
        assert isinstance(current, float)
        sums[edge.start] -= current
        sums[edge.end] += current
        given += made.emf.get(edge.id, 0.0) * current
        taken += made.resistance[edge.id] * current ** 2
    fault = circuit.fault_current(point)
    sums[point] = abs(sums[point]) - fault
    sums["return"] = abs(sums["return"]) - fault
    scale = max(abs(current) for current in currents.values())
    assert max(map(abs, sums.values())) < TOLERANCE * scale
    assert given == pytest.approx(taken, rel=1e-8)


@pytest.mark.parametrize("seed", SEEDS)
def test_currents_without_a_fault_and_with_a_load(seed: int) -> None:
    made, circuit = _made(seed)
    for drawn in (0.0, 150.0, -80.0):
        expected = solve(made.graph, made.resistance, made.emf,
                         draw=("bus0", "return", drawn)).currents
        found = circuit.currents_at(drawn, "bus0", tuple(made.emf))
        for battery in made.emf:
            _agree(found[battery], expected[battery], _largest(expected) + 1.0)
        if drawn == 0.0:
            for battery in made.emf:
                _agree(circuit.branch_current(battery), expected[battery],
                       _largest(expected) + 1.0)


@pytest.mark.parametrize("seed", SEEDS)
def test_elements_left_out(seed: int) -> None:
    made = network(seed)
    draw = random.Random(seed)
    gone = draw.choice(list(made.resistance))
    circuit = Circuit(made.graph, made.resistance, made.emf).without(gone)
    for point in made.points:
        expected = solve(made.graph, made.resistance, made.emf, (point, "return"),
                         omitted=(gone,)).currents
        found = circuit.fault_current(point)
        if isinstance(found, Unknown):
            assert abs(expected["fault"]) < 1e-9
        else:
            _agree(found, abs(expected["fault"]), _largest(expected))


@pytest.mark.parametrize("seed", SEEDS)
def test_injected_currents(seed: int) -> None:
    """Declared contributions add to the batteries' currents as ideal current sources."""
    made = network(seed)
    injectors = [Edge("charger", "return", "bus0", "injector"),
                 Edge("alternator", "return", made.points[-1], "injector"),
                 Edge("silent", "return", made.points[0], "injector")]
    graph = Graph(made.graph.nodes, (*made.graph.edges.values(), *injectors), "return")
    injected = {"charger": 60.0, "alternator": 250.0}
    circuit = Circuit(graph, made.resistance, made.emf, injected)
    for point in made.points:
        expected = solve(graph, made.resistance, made.emf, (point, "return"),
                         injected=injected).currents
        _agree(circuit.fault_current(point), abs(expected["fault"]), _largest(expected))
    for device in made.devices:
        edge = graph.edges[device]
        expected = solve(graph, made.resistance, made.emf, (edge.end, "return"),
                         injected=injected).currents
        found = circuit.device_current(device, own_resistance=True)
        _agree(found.at_to, abs(expected[device]), _largest(expected))


def test_values_that_lie_thirty_orders_of_magnitude_apart() -> None:
    """No digits are lost where one resistance is 1e-30 of another."""
    for seed in range(20):
        made = network(seed)
        exact = Circuit(made.graph, {**made.resistance, made.devices[0]: 0.0}, made.emf)
        tiny = Circuit(made.graph, {**made.resistance, made.devices[0]: 1e-33}, made.emf)
        for point in made.points:
            assert tiny.fault_current(point) == pytest.approx(exact.fault_current(point), rel=1e-12)
