"""A network with intervals for values: true, not always tight, bounds in a single elimination.

A connection from u to v is (g, e, j), an interval each: its current is ``g * (Vu - Vv + e) + j``.
Each step takes the exact range of a single transformed connection (its conductance grows with the
two it is made of and falls with the others of the star) and forgets only how the new connections
depend on one another; so the result contains every network inside the box.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import NamedTuple

from garboard.network.starmesh import NoAnswer

Interval = tuple[float, float]
_ZERO: Interval = (0.0, 0.0)


class Wire(NamedTuple):
    """A connection from u to v: conductance in S, EMF in V towards v, injected current in A."""

    u: int
    v: int
    g: Interval
    e: Interval
    j: Interval = _ZERO


def seen_between(wires: Iterable[Wire], u: int, v: int, order: Iterable[int]) -> Wire:
    """The wires as one connection from u to v; ``order`` lists all other nodes."""
    net: dict[int, dict[int, Wire]] = {u: {}, v: {}}
    for wire in wires:
        _join(net, wire)
    for node in order:
        star = list(net.pop(node, {}).values())
        for wire in star:
            del net[wire.v][node]
        low, high = [wire.g[0] for wire in star], [wire.g[1] for wire in star]
        low_after, high_after = _sums_after(low), _sums_after(high)
        low_before = high_before = 0.0
        for position, one in enumerate(star):
            rest = [low_before, high_before]
            for other in range(position + 1, len(star)):
                _join(net, _mesh(one, star[other], rest[0] + low_after[other + 1],
                                 rest[1] + high_after[other + 1]))
                rest = [rest[0] + low[other], rest[1] + high[other]]
            low_before, high_before = low_before + low[position], high_before + high[position]
    return net[u].get(v, Wire(u, v, _ZERO, _ZERO))


def loop_range(rest: Wire, resistance: Interval, emf: Interval) -> Interval:
    """Range of the current through an element from u to v that closes the loop with ``rest``.

    Raises NoAnswer when the loop may have no resistance at all.
    """
    least = resistance[0] + (1.0 / rest.g[1] if rest.g[1] > 0 else math.inf)
    most = resistance[1] + (1.0 / rest.g[0] if rest.g[0] > 0 else math.inf)
    if least == 0:
        raise NoAnswer("the loop may have no resistance")
    drive = driving_voltage(rest, emf)
    low = min(drive[0] / least, drive[0] / most)
    high = max(drive[1] / least, drive[1] / most)
    shares = [1.0 / (1.0 + _times(g, r)) for g, r in ((rest.g[1], resistance[1]),
                                                     (rest.g[0], resistance[0]))]
    pushed = [-rest.j[end] * share for end in (0, 1) for share in shares]
    return low + min(pushed), high + max(pushed)


def driving_voltage(rest: Wire, emf: Interval) -> Interval:
    """Range of the voltage that drives an element from u to v."""
    return emf[0] - rest.e[1], emf[1] - rest.e[0]


def _join(net: dict[int, dict[int, Wire]], wire: Wire) -> None:
    if wire.u == wire.v:
        return
    old = net.setdefault(wire.u, {}).get(wire.v)
    if old is not None:
        wire = Wire(wire.u, wire.v, (old.g[0] + wire.g[0], old.g[1] + wire.g[1]),
                    _average(old, wire), (old.j[0] + wire.j[0], old.j[1] + wire.j[1]))
    net[wire.u][wire.v] = wire
    net.setdefault(wire.v, {})[wire.u] = Wire(
        wire.v, wire.u, wire.g, (-wire.e[1], -wire.e[0]), (-wire.j[1], -wire.j[0]))


def _average(one: Wire, other: Wire) -> Interval:
    """Range of the mean of two EMFs weighted by conductance."""
    if one.g[1] == 0:
        return other.e
    if other.g[1] == 0:
        return one.e
    low_first = one.e[0] <= other.e[0]
    high_first = one.e[1] >= other.e[1]
    return (_weighted(one.e[0], one.g[1 if low_first else 0],
                      other.e[0], other.g[0 if low_first else 1], min),
            _weighted(one.e[1], one.g[1 if high_first else 0],
                      other.e[1], other.g[0 if high_first else 1], max))


def _weighted(e1: float, g1: float, e2: float, g2: float, extreme: type | object) -> float:
    if e1 == e2:
        return e1
    if math.isinf(g1) != math.isinf(g2):
        return e1 if math.isinf(g1) else e2
    if math.isinf(g1) or g1 + g2 == 0:
        return extreme(e1, e2)  # type: ignore[operator,no-any-return]
    share = g1 / (g1 + g2)
    return e1 * share + e2 * (1.0 - share)


def _sums_after(values: list[float]) -> list[float]:
    """The sums of all from the first, the second, ... on, and of none."""
    sums = [0.0]
    for value in reversed(values):
        sums.append(sums[-1] + value)
    return sums[::-1]


def _mesh(one: Wire, other: Wire, rest_lo: float, rest_hi: float) -> Wire:
    """What the star of a node puts between two of its neighbours, the sum of the rest given."""
    g = (_through(one.g[0], other.g[0], rest_hi), _through(one.g[1], other.g[1], rest_lo))
    e = (other.e[0] - one.e[1], other.e[1] - one.e[0])
    j = _ZERO
    if one.j != _ZERO or other.j != _ZERO:
        first = _product(_share(one, other, rest_lo, rest_hi), other.j)
        second = _product(_share(other, one, rest_lo, rest_hi), one.j)
        j = (first[0] - second[1], first[1] - second[0])
    return Wire(one.v, other.v, g, e, j)


def _through(g1: float, g2: float, rest: float) -> float:
    if g1 == 0 or g2 == 0 or math.isinf(rest):
        return 0.0
    if math.isinf(g1):
        return g2
    if math.isinf(g2):
        return g1
    return g1 * (g2 / (g1 + g2 + rest))


def _share(one: Wire, other: Wire, rest_lo: float, rest_hi: float) -> Interval:
    """Range of one conductance over the sum of the star."""
    return (_part(one.g[0], other.g[1] + rest_hi, 0.0), _part(one.g[1], other.g[0] + rest_lo, 1.0))


def _part(g: float, others: float, undecided: float) -> float:
    if math.isinf(g):
        return undecided if math.isinf(others) else 1.0
    return undecided if g + others == 0 else g / (g + others)


def _product(one: Interval, other: Interval) -> Interval:
    corners = [_times(a, b) for a in one for b in other]
    return min(corners), max(corners)


def _times(a: float, b: float) -> float:
    return 0.0 if a == 0 or b == 0 else a * b
