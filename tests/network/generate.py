"""Networks made up at random, the same every time: batteries, leads, buses, meshes, loads."""

from __future__ import annotations

import random
from dataclasses import dataclass
from itertools import pairwise

from garboard.network.graph import Edge, Graph


@dataclass
class Made:
    """A network with its values, and the points and devices worth asking about."""

    graph: Graph
    resistance: dict[str, float]
    emf: dict[str, float]

    @property
    def points(self) -> tuple[str, ...]:
        return tuple(node for node in self.graph.nodes if node != "return")

    @property
    def devices(self) -> tuple[str, ...]:
        return tuple(edge.id for edge in self.graph.of_kind("device"))


class _Maker:
    def __init__(self, seed: int) -> None:
        self.draw = random.Random(seed)
        self.edges: list[Edge] = []
        self.resistance: dict[str, float] = {}
        self.emf: dict[str, float] = {}
        self.count = 0

    def node(self) -> str:
        self.count += 1
        return f"n{self.count}"

    def battery(self, start: str, end: str, volts: float) -> None:
        name = f"b{len(self.edges)}"
        self.edges.append(Edge(name, start, end, "battery"))
        self.resistance[name] = self.draw.uniform(1e-3, 9e-3)
        self.emf[name] = volts

    def lead(self, start: str, end: str, steps: int) -> None:
        here = start
        for step in range(steps):
            there = end if step == steps - 1 else self.node()
            kind = self.draw.choice(("conductor", "device", "switch", "conductor"))
            name = f"{kind[0]}{len(self.edges)}"
            ends = (here, there) if self.draw.random() < 0.8 else (there, here)
            self.edges.append(Edge(name, *ends, kind))  # type: ignore[arg-type]
            self.resistance[name] = 10 ** self.draw.uniform(-5, -2.3)
            here = there


def network(seed: int, *, sources: int | None = None, spread: float | None = None,
            meshed: bool | None = None, series: bool = True, loads: int | None = None) -> Made:
    """A network of ``sources`` strings (2 to 8 batteries) on one to four buses.

    ``spread``: how far apart the EMFs lie in V; ``meshed``: extra leads between buses and
    batteries; ``loads``: dead branches.
    """
    maker = _Maker(seed)
    draw = maker.draw
    count = sources or draw.randint(2, 8)
    apart = draw.choice((0.0, 0.4, 3.0)) if spread is None else spread
    buses = [f"bus{number}" for number in range(draw.randint(1, 4))]
    for one, other in pairwise(buses):
        maker.lead(one, other, draw.randint(1, 3))
    tops: list[str] = []
    left = count
    while left > 0:
        length = draw.randint(1, min(2, left)) if series else 1
        below = "return"
        for position in range(length):
            top = maker.node()
            volts = 26.8 / length + draw.uniform(-apart, apart) / length
            maker.battery(below, top, volts)
            if position < length - 1:
                below = maker.node()
                maker.lead(top, below, draw.randint(1, 2))
        tops.append(top)
        maker.lead(top, draw.choice(buses), draw.randint(1, 4))
        left -= length
    if draw.random() < 0.5 if meshed is None else meshed:
        for _ in range(draw.randint(1, 3)):
            one, other = draw.sample([*tops, *buses], 2)
            maker.lead(one, other, draw.randint(1, 3))
    for _ in range(draw.randint(1, 4) if loads is None else loads):
        maker.lead(draw.choice(buses), maker.node(), draw.randint(1, 4))
    nodes = dict.fromkeys(node for edge in maker.edges for node in (edge.start, edge.end))
    return Made(Graph(nodes, maker.edges, "return"), maker.resistance, maker.emf)
