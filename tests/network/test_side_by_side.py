"""Bounds of what lies side by side: against all corners, one by one, and against draws."""

from __future__ import annotations

import math
import random
from itertools import product

import pytest

from garboard.network import Circuit, Edge, Graph
from garboard.network.pieces import Ends, Piece
from garboard.network.rest import Link, Rest
from garboard.network.side_by_side import lies_side_by_side, side_by_side
from garboard.values import Bounds

#: Part of the greatest current by which two ways of working it out may differ.
ROUNDING = 1e-12


def _case(seed: int) -> tuple[Rest, list[Piece], Piece, Ends]:
    draw = random.Random(seed)

    def ends(low: float, high: float) -> Ends:
        one, other = draw.uniform(low, high), draw.uniform(low, high)
        kind = draw.random()
        return (one, one) if kind < 0.3 else (min(one, other), max(one, other))

    pieces = []
    for number in range(draw.randint(1, 4)):
        nodes = draw.choice(((0, 1), (1, 0)))
        injected = draw.random() < 0.15
        resistance = (0.0, 0.0) if injected else ends(1e-3, 0.05)
        pieces.append(Piece(*nodes, ((number, 1),), resistance,
                            draw.choice(((0.0, 0.0), ends(11.0, 14.0), ends(-3.0, 3.0))), injected))
    asked = Piece(0, 0, ((9, 1),), draw.choice(((0.0, 0.0), ends(1e-3, 0.05))),
                  draw.choice(((0.0, 0.0), ends(11.0, 14.0))))
    drawn = draw.choice((None, (0, 1), (1, 0)))
    links = [Link(each.u, each.v, each.elements) for each in pieces]
    return (Rest(0, 1, lambda: links, drawn), pieces, asked,
            (0.0, 0.0) if drawn is None else ends(-200.0, 200.0))


def _by_corners(rest: Rest, pieces: list[Piece], asked: Piece, draw: Ends) -> Ends:
    """Ohm's and Kirchhoff's laws at every corner: the voltage between two points, one unknown."""
    found = []
    choices = [*(each.resistance for each in pieces), *(each.emf for each in pieces),
               asked.resistance, asked.emf, draw]
    for values in product(*choices):
        resistances, emfs = values[:len(pieces)], values[len(pieces):2 * len(pieces)]
        own, emf, drawn = values[2 * len(pieces):]
        # all currents away from node 0 sum to zero: g (V0 - V1 + E) for each, and what is injected
        conductance = current = 0.0
        for each, resistance, push in zip(pieces, resistances, emfs, strict=True):
            sign = 1.0 if each.u == 0 else -1.0
            if each.injected:
                current += sign * push
            else:
                conductance += 1.0 / resistance
                current += sign * push / resistance
        if rest.draw is not None:
            current += drawn if rest.draw == (0, 1) else -drawn
        if own == 0.0:
            found.append(conductance * emf - current)
        else:
            voltage = -(current + emf / own) / (conductance + 1.0 / own)
            found.append((voltage + emf) / own)
    return min(found), max(found)


@pytest.mark.parametrize("seed", range(150))
def test_the_ends_are_those_of_all_corners(seed: int) -> None:
    rest, pieces, asked, draw = _case(seed)
    assert lies_side_by_side(rest)
    found = side_by_side(rest, pieces, asked, draw)
    assert found is not None
    expected = _by_corners(rest, pieces, asked, draw)
    scale = max(map(abs, (*expected, 1.0, *(each.emf[1] / max(each.resistance[0], 1e-3)
                                            for each in pieces))))
    assert found == pytest.approx(expected, rel=0, abs=ROUNDING * scale)


def test_no_resistance_to_speak_of_is_left_to_others() -> None:
    rest = Rest(0, 1, lambda: [Link(0, 1, ((0, 1),))])
    tie = Piece(0, 1, ((0, 1),), (0.0, 1.0), (12.0, 12.0))
    assert side_by_side(rest, [tie], Piece(0, 0, (), (1.0, 1.0), (0.0, 0.0)), (0.0, 0.0)) is None


def test_what_goes_by_another_point_does_not_lie_side_by_side() -> None:
    links = [Link(0, 2, ((0, 1),)), Link(2, 1, ((1, 1),)), Link(0, 1, ((2, 1),))]
    assert not lies_side_by_side(Rest(0, 1, lambda: links))
    assert not lies_side_by_side(Rest(0, 1, lambda: links[2:] + links[:2], (0, 2)))


def test_draws_in_a_bank_of_thirty_unequal_batteries_stay_inside() -> None:
    """Far too many for corners; the network itself, solved at drawn values, is the referee."""
    draw, count = random.Random(4), 30
    graph = Graph(["bus"], [Edge(f"b{each}", "return", "bus", "battery") for each in range(count)],
                  "return")
    resistance = {f"b{each}": Bounds(value * 0.9, value * 1.1, value) for each in range(count)
                  for value in (draw.uniform(0.002, 0.02),)}
    emf = {f"b{each}": Bounds(value - 0.2, value + 0.2, value) for each in range(count)
           for value in (draw.uniform(25.0, 27.0),)}
    bounds = Circuit(graph, resistance, emf).currents_at(80.0, "bus", ["b0", "b7"])
    for _ in range(300):
        ends = [{key: draw.choice((each.lo, each.hi, draw.uniform(each.lo, each.hi)))
                 for key, each in values.items()} for values in (resistance, emf)]
        found = Circuit(graph, *ends).currents_at(80.0, "bus", ["b0", "b7"])
        for battery, value in found.items():
            within = bounds[battery]
            assert isinstance(within, Bounds)
            assert isinstance(value, float)
            assert within.lo <= value <= within.hi
    assert all(isinstance(each, Bounds) and math.isfinite(each.lo) for each in bounds.values())
