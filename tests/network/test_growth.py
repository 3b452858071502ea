"""How work grows with the network: counted in calls of functions, which no busy machine changes."""

from __future__ import annotations

import math
import random
import sys
from collections.abc import Callable
from typing import Any

import pytest

from garboard.network import Circuit, Edge, Graph
from garboard.network.density import WIDEST
from garboard.values import OUTSIDE_METHOD, Bounds, Number, Unknown


def _work(do: Callable[[], object]) -> int:
    """How many functions are called, those written in C among them."""
    calls = 0

    def count(_frame: Any, event: str, _argument: Any) -> None:
        nonlocal calls
        calls += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        do()
    finally:
        sys.setprofile(before)
    return calls


def _circuit(edges: list[Edge], part: float, kinds: tuple[str, ...]) -> Circuit:
    """Every edge of those kinds known to a part of itself; batteries of almost the same voltage."""
    draw = random.Random(3)
    resistance: dict[str, Number] = {}
    for edge in edges:
        value = draw.uniform(0.001, 0.01)
        resistance[edge.id] = (Bounds(value * (1 - part), value * (1 + part), value)
                               if edge.kind in kinds else value)
    emf: dict[str, Number] = {edge.id: draw.uniform(26.0, 27.0) for edge in edges
                              if edge.kind == "battery"}
    nodes = dict.fromkeys(node for edge in edges for node in (edge.start, edge.end))
    return Circuit(Graph(nodes, edges, "return"), resistance, emf)


def _bank(count: int) -> list[Edge]:
    return [Edge(f"b{each}", "return", "bus", "battery") for each in range(count)]


def _ladder(steps: int) -> list[Edge]:
    edges = [Edge(f"b{each}", "return", f"{side}0", "battery") for each, side in enumerate("ps")]
    for step in range(steps):
        edges += [Edge(f"{side}f{step}", f"{side}{step}", f"{side}{step + 1}", "device")
                  for side in "ps"]
        edges.append(Edge(f"r{step}", f"p{step + 1}", f"s{step + 1}", "conductor"))
    return edges


def _mesh(buses: int, conductors: int) -> list[Edge]:
    """Two batteries on a bus of their own, a device to the mesh, conductors in all directions."""
    draw = random.Random(8)
    edges = [Edge("b0", "return", "main", "battery"), Edge("b1", "return", "main", "battery"),
             Edge("f0", "main", "n0", "device"), Edge("back", "n1", "return", "conductor")]
    for number in range(conductors):
        start, end = ((number, (number + 1) % buses) if number < buses
                      else draw.sample(range(buses), 2))
        edges.append(Edge(f"c{number}", f"n{start}", f"n{end}", "conductor"))
    return edges


def _each_one_out(count: int) -> int:
    """The currents of every battery of a bank, as connected and with each of them taken out."""
    circuit = _circuit(_bank(count), 0.1, ("battery",))

    def do() -> None:
        for out in range(count):
            rest = [f"b{each}" for each in range(count) if each != out]
            circuit.without(f"b{out}").currents_at(100.0, "bus", rest)

    return _work(do)


def _all_devices(steps: int) -> int:
    circuit = _circuit(_ladder(steps), 0.1, ("battery",))

    def do() -> None:
        for step in range(steps):
            circuit.device_current(f"pf{step}", own_resistance=False)

    return _work(do)


def _one_fault(steps: int) -> int:
    """A fault at the end of a ladder in which everything varies: too much for corners."""
    circuit = _circuit(_ladder(steps), 0.1, ("battery", "device", "conductor"))
    return _work(lambda: circuit.fault_current(f"p{steps}"))


def _dense(buses: int) -> int:
    edges = _mesh(buses, buses * 10)

    def do() -> None:
        circuit = _circuit(edges, 0.1, ("battery",))
        for node in range(0, buses, 10):
            circuit.fault_current(f"n{node}")

    return _work(do)


@pytest.mark.parametrize(("work", "size", "power"), [
    # what is asked for grows with the square, each answer looks at every battery
    (_each_one_out, 12, 3),
    # every fault passes the ladder from end to end
    (_all_devices, 16, 2),
    # each of the quantities that vary, with all the others: until the work for it is used up
    (_one_fault, 24, 1.5),
    # found to be dense once, and said so at every point
    (_dense, 60, 2),
])
def test_twice_the_network_is_no_more_work_than(work: Callable[[int], int], size: int,
                                                power: float) -> None:
    once, twice = work(size), work(2 * size)
    assert twice <= once * 2 ** power


def test_a_dense_mesh_is_unknown_by_name() -> None:
    circuit = _circuit(_mesh(60, 900), 0.1, ("battery",))
    device = circuit.device_current("f0", own_resistance=True)
    assert isinstance(device.value, Bounds)
    assert isinstance(device.at_to, Bounds)
    assert (device.value.lo, device.value.hi) == (device.at_to.lo, math.inf)
    for current in (circuit.fault_current("n5"), circuit.branch_current("c7", fault="n5"),
                    device.at_from):
        assert isinstance(current, Unknown)
        assert {cause.reason for cause in current.causes} == {OUTSIDE_METHOD}
        assert f"more than {WIDEST}" in current.causes[0].detail


def test_what_the_dense_mesh_does_not_reach_is_known() -> None:
    """Without its way back, the mesh hangs dead on the batteries' bus."""
    circuit = _circuit(_mesh(60, 900), 0.1, ("battery",)).without("back")
    current, alone = circuit.fault_current("main"), circuit.without("f0").fault_current("main")
    assert isinstance(current, Bounds)
    assert isinstance(alone, Bounds)
    assert (current.lo, current.hi) == (alone.lo, alone.hi)


def test_a_mesh_as_wide_as_allowed_is_worked_out() -> None:
    edges = [Edge("b0", "return", "n0", "battery"), Edge("back", "n1", "return", "conductor")]
    edges += [Edge(f"c{start}-{end}", f"n{start}", f"n{end}", "conductor")
              for end in range(WIDEST + 1) for start in range(end)]
    assert isinstance(_circuit(edges, 0.0, ()).fault_current("n5"), float)
    wider = [*edges, *(Edge(f"c{start}-x", f"n{start}", "x", "conductor")
                       for start in range(WIDEST + 1))]
    assert isinstance(_circuit(wider, 0.0, ()).fault_current("n5"), Unknown)
