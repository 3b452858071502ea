"""Elimination of nodes by the star-mesh transformation, with sources.

A net maps node -> neighbour -> (g, s): the current from node to neighbour is
``g * (V_node - V_neighbour) + s``. Everything is held in both directions, with opposite ``s``.
A connection of no resistance is a tie, (INF, e): ``V_neighbour = V_node + e``.

Eliminating a node only adds, multiplies and divides conductances, which are positive: no digits are
lost however far the resistances lie apart, and the same input gives the same bits on every
processor. Numbers may be numpy arrays of one shape, one lane per choice of values; ties are the
same in all lanes.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Any, Final

#: Conductance of a tie. Tested by identity: a large number is not a tie.
INF: Final[float] = math.inf

#: Voltages (or currents) that differ by less than this part of themselves are equal.
SAME_VOLTAGE: Final = 1e-12

#: A float, or an array of floats with one lane per choice of values.
Amount = Any
Net = dict[int, dict[int, tuple[Amount, Amount]]]

NOTHING: Final[tuple[float, float]] = (0.0, 0.0)


class NoAnswer(ArithmeticError):
    """The equations do not determine the figure; says why."""


class Unlimited(NoAnswer):
    """Sources without any resistance in their loop: the current has no limit."""


def join(net: Net, u: int, v: int, g: Amount, s: Amount) -> None:
    """Put a connection between two nodes, in parallel with what is there."""
    if u == v:
        return
    row = net.setdefault(u, {})
    old = row.get(v)
    if old is None:
        net.setdefault(v, {})[u] = (g, -s)
        row[v] = (g, s)
        return
    old_g, old_s = old
    if old_g is INF or g is INF:
        if old_g is g and _beyond_rounding(old_s - s, (old_s, s)):
            raise Unlimited("sources of different voltage are joined without any resistance")
        g, s = old if old_g is INF else (g, s)
    else:
        g, s = old_g + g, old_s + s
    row[v] = (g, s)
    net[v][u] = (g, -s)


def eliminate(net: Net, node: int) -> None:
    """Replace a node by equivalent connections between its neighbours."""
    star = net.pop(node, None)
    if not star:
        return
    for neighbour in star:
        del net[neighbour][node]
    for neighbour, (g, e) in star.items():
        if g is INF:
            _contract(net, star, neighbour, e)
            return
    total = sum(g for g, _ in star.values())
    if isinstance(total, float) and total == 0.0:
        pushed = [s for _, s in star.values()]
        if _beyond_rounding(sum(pushed), pushed):
            raise NoAnswer("a current from outside has no way to flow")
        return
    ends = [(neighbour, g / total, g, s) for neighbour, (g, s) in star.items()]
    for position, (i, share_i, g_i, s_i) in enumerate(ends):
        for j, share_j, _, s_j in ends[position + 1:]:
            join(net, i, j, g_i * share_j, share_i * s_j - share_j * s_i)


def _contract(net: Net, star: dict[int, tuple[Amount, Amount]], kept: int, e: Amount) -> None:
    """Move all connections of a node over to the one it is tied to (``V_kept = V_node + e``)."""
    for other, (g, s) in star.items():
        if other == kept:
            continue
        if g is INF:
            join(net, kept, other, INF, s - e)
        else:
            join(net, kept, other, g, s - g * e)


def loop_current(rest: tuple[Amount, Amount], resistance: float, emf: float) -> Amount:
    """Current through an element from u to v, the rest of the network being ``rest`` from u to v.

    ``resistance`` in Ω (0 and infinity allowed), ``emf`` in V raising the potential towards v;
    result in A. Raises NoAnswer when neither side of the loop has any resistance.
    """
    g, s = rest
    if g is INF:
        if resistance == 0:
            if _beyond_rounding(emf - s, (emf, s)):
                raise Unlimited("nothing in the loop has any resistance")
            raise NoAnswer("two connections of no resistance lie side by side")
        return (emf - s) / resistance
    if resistance == math.inf:
        return s * 0.0
    return (g * emf - s) / (1.0 + g * resistance)


def _beyond_rounding(difference: Amount, parts: Iterable[Amount]) -> bool:
    """Whether a sum that should vanish does not, in any lane."""
    verdict = abs(difference) > SAME_VOLTAGE * sum(map(abs, parts))
    return bool(verdict if isinstance(verdict, bool) else verdict.any())
