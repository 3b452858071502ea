"""The circuit simulator ngspice as a referee of states: a string out, one string alone and worn,
shorts between batteries in series, contributions from outside. 80 of its 200 networks.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from functools import cache

import pytest

from garboard.network import Circuit, Edge, Graph
from garboard.network.graph import INJECTOR
from garboard.values import Unknown

from .generate import Made, network
from .spice import State, run

NETWORKS = 80
LOAD = 100.0
#: 0.1 % of the figure, or a millionth of the largest current in that state.
RELATIVE, ABSOLUTE = 1e-3, 1e-6


@dataclass(frozen=True)
class Asked:
    """A network as it is and worn: greater resistances, lower voltages; and what is asked."""

    fresh: Made
    worn: Made
    strings: tuple[tuple[str, ...], ...]
    links: tuple[str, ...]
    #: Where a charger or motor stands, and what it gives in A.
    outside: tuple[str, float]
    faults: tuple[str, ...]


def _asked(seed: int) -> Asked:
    made, draw = network(seed, loads=1), random.Random(seed)
    strings: list[list[str]] = []
    links: list[str] = []
    for edge in made.graph.of_kind("battery"):
        if edge.start == made.graph.reference:
            strings.append([])
        else:
            links += [made.graph.edges[strings[-1][-1]].end, edge.start]
        strings[-1].append(edge.id)
    worn = Made(made.graph,
                {each: ohms * draw.uniform(1.0, 2.0) for each, ohms in made.resistance.items()},
                {each: volts * 0.8 for each, volts in made.emf.items()})
    points = made.points
    return Asked(made, worn, tuple(map(tuple, strings)), tuple(links),
                 (draw.choice(points), draw.uniform(50, 2000)),
                 tuple(draw.sample(points, min(3, len(points)))))


@cache
def networks() -> tuple[Asked, ...]:
    return tuple(map(_asked, range(NETWORKS)))


def _others(asked: Asked, string: int) -> tuple[str, ...]:
    return tuple(battery for number, each in enumerate(asked.strings) if number != string
                 for battery in each)


def _fresh(asked: Asked) -> list[State]:
    states = [State(f"out{number}", _others(asked, number), draw=("bus0", LOAD), opened=string)
              for number, string in enumerate(asked.strings) if len(asked.strings) > 1]
    states += [State(f"link{number}", ("fault",), fault=node)
               for number, node in enumerate(asked.links)]
    return states + [State(f"pushed{number}", ("fault", *asked.fresh.devices), fault=node,
                           pushed=asked.outside) for number, node in enumerate(asked.faults)]


def _worn(asked: Asked) -> list[State]:
    return [State(f"alone{number}at{place}", ("fault",), fault=node,
                  opened=_others(asked, number))
            for number in range(len(asked.strings)) for place, node in enumerate(asked.faults)]


@pytest.fixture(scope="module")
def simulated(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, float]]:
    """All networks, fresh and worn by turns, in one ngspice process."""
    made = [each for asked in networks() for each in (asked.fresh, asked.worn)]
    states = [each for asked in networks() for each in (_fresh(asked), _worn(asked))]
    return run(made, states, tmp_path_factory.mktemp("ngspice"))


def _agree(found: object, expected: float, largest: float, what: str) -> None:
    assert isinstance(found, float), what
    assert abs(found - expected) <= RELATIVE * abs(expected) + ABSOLUTE * largest, what


@pytest.mark.ngspice
def test_shares_with_one_string_out(simulated: list[dict[str, float]]) -> None:
    compared = 0
    for seed, (asked, results) in enumerate(zip(networks(), simulated[::2], strict=True)):
        circuit = Circuit(asked.fresh.graph, asked.fresh.resistance, asked.fresh.emf)
        for number, string in enumerate(asked.strings):
            left = _others(asked, number)
            found = circuit.without(*string).currents_at(LOAD, "bus0", left) if left else {}
            for battery, current in found.items():
                _agree(current, results[f"out{number} {battery}"], LOAD, f"{seed} {battery}")
                compared += 1
    assert compared > 700


@pytest.mark.ngspice
def test_shorts_between_batteries_in_series(simulated: list[dict[str, float]]) -> None:
    compared = 0
    for seed, (asked, results) in enumerate(zip(networks(), simulated[::2], strict=True)):
        circuit = Circuit(asked.fresh.graph, asked.fresh.resistance, asked.fresh.emf)
        for number, node in enumerate(asked.links):
            _agree(circuit.fault_current(node), abs(results[f"link{number} fault"]), 1.0,
                   f"{seed} {node}")
            compared += 1
    assert compared > 150


@pytest.mark.ngspice
def test_contributions(simulated: list[dict[str, float]]) -> None:
    """What a charger or motor declares flows into its terminal, whatever the voltage there."""
    compared = 0
    for seed, (asked, results) in enumerate(zip(networks(), simulated[::2], strict=True)):
        graph, (node, amperes) = asked.fresh.graph, asked.outside
        pushing = Edge("charger", graph.reference, node, INJECTOR)
        circuit = Circuit(Graph(graph.nodes, (*graph.edges.values(), pushing), graph.reference),
                          asked.fresh.resistance, asked.fresh.emf, {"charger": amperes})
        for number, place in enumerate(asked.faults):
            expected = results[f"pushed{number} fault"]
            _agree(circuit.fault_current(place), abs(expected), amperes, f"{seed} {place}")
            for device in asked.fresh.devices:
                _agree(circuit.branch_current(device, fault=place),
                       results[f"pushed{number} {device}"], max(amperes, abs(expected)),
                       f"{seed} {place} {device}")
                compared += 1
    assert compared > 700


@pytest.mark.ngspice
def test_one_string_alone_and_worn(simulated: list[dict[str, float]]) -> None:
    """The smallest fault currents: greater resistances, lower voltages, one string at a time."""
    compared = 0
    for seed, (asked, results) in enumerate(zip(networks(), simulated[1::2], strict=True)):
        circuit = Circuit(asked.worn.graph, asked.worn.resistance, asked.worn.emf)
        for number in range(len(asked.strings)):
            alone = circuit.without(*_others(asked, number))
            for place, node in enumerate(asked.faults):
                expected = abs(results[f"alone{number}at{place} fault"])
                found = alone.fault_current(node)
                if isinstance(found, Unknown):  # between batteries of a string that is out
                    assert expected < ABSOLUTE, (seed, number, node, found)
                    continue
                _agree(found, expected, 1.0, f"{seed} {number} {node}")
                compared += 1
    assert compared > 500
