"""The circuit simulator ngspice as an independent referee, on 200 networks."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest

from garboard.network import Circuit

from .generate import Made, network
from .spice import State, run

NETWORKS = 200
LOAD = 100.0
#: 0.1 % of the figure, or a millionth of the largest current in that state.
RELATIVE, ABSOLUTE = 1e-3, 1e-6


@cache
def _networks() -> tuple[Made, ...]:
    return tuple(network(seed, loads=1) for seed in range(NETWORKS))


def _states(made: Made) -> Iterator[State]:
    for number, point in enumerate(made.points):
        yield State(f"fault{number}", ("fault", *made.graph.edges), fault=point)
    for device in made.devices:
        edge = made.graph.edges[device]
        yield State(f"from-{device}", (device,), fault=edge.start, link=device)
        yield State(f"to-{device}", (device,), fault=edge.end, link=device)
    yield State("load", tuple(made.emf), draw=("bus0", LOAD))


@pytest.fixture(scope="module")
def simulated(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, float]]:
    """All networks in one ngspice process."""
    return run(list(_networks()), [list(_states(made)) for made in _networks()],
               tmp_path_factory.mktemp("ngspice"))


def _agree(found: object, expected: float, largest: float, what: str) -> None:
    assert isinstance(found, float), what
    assert abs(found - expected) <= RELATIVE * abs(expected) + ABSOLUTE * largest, what


@pytest.mark.ngspice
def test_networks_are_as_varied_as_they_should_be() -> None:
    batteries = [len(made.emf) for made in _networks()]
    assert {*batteries} == {2, 3, 4, 5, 6, 7, 8}
    unequal = sum(len({*made.emf.values()}) > 1 for made in _networks())
    assert 80 < unequal < NETWORKS


@pytest.mark.ngspice
def test_fault_and_branch_currents(simulated: list[dict[str, float]]) -> None:
    compared = 0
    for seed, (made, results) in enumerate(zip(_networks(), simulated, strict=True)):
        circuit = Circuit(made.graph, made.resistance, made.emf)
        for number, point in enumerate(made.points):
            largest = max(abs(results[f"fault{number} {edge}"]) for edge in made.graph.edges)
            expected = results[f"fault{number} fault"]
            _agree(circuit.fault_current(point), abs(expected), largest, f"{seed} {point}")
            for edge in made.graph.edges:
                _agree(circuit.branch_current(edge, fault=point),
                       results[f"fault{number} {edge}"], largest, f"{seed} {point} {edge}")
                compared += 1
    assert compared > 60_000


@pytest.mark.ngspice
def test_prospective_currents(simulated: list[dict[str, float]]) -> None:
    compared = 0
    for seed, (made, results) in enumerate(zip(_networks(), simulated, strict=True)):
        circuit = Circuit(made.graph, made.resistance, made.emf)
        for device in made.devices:
            found = circuit.device_current(device, own_resistance=False)
            for side, current in (("from", found.at_from), ("to", found.at_to)):
                expected = abs(results[f"{side}-{device} {device}"])
                _agree(current, expected, 1.0, f"{seed} {device} {side}")
                compared += 1
    assert compared > 1500


@pytest.mark.ngspice
def test_shares_of_a_load(simulated: list[dict[str, float]]) -> None:
    for seed, (made, results) in enumerate(zip(_networks(), simulated, strict=True)):
        circuit = Circuit(made.graph, made.resistance, made.emf)
        found = circuit.currents_at(LOAD, "bus0", tuple(made.emf))
        for battery, current in found.items():
            _agree(current, results[f"load {battery}"], LOAD, f"{seed} {battery}")
