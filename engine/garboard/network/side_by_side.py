"""Exact bounds where all the rest lies side by side between the two ends of what is asked about.

With conductances g_k, EMFs E_k and an injected current J from u to v, an element of resistance R
and EMF E that closes the loop carries ``f = (sum g_k (E - E_k) - J) / (1 + R sum g_k)``. It falls
with each E_k and with J. With those at an end, f is a quotient of two linear functions of the
conductances, and at its greatest each g_k is at its upper end exactly where ``E - E_k > R f``, at
its lower end elsewhere: in the order of E_k a single cut parts the two. All cuts are tried, so any
number of batteries in parallel takes the time of sorting them. The least f is minus the greatest of
the network with all sources turned round.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Final

from garboard.network.pieces import Ends, Piece
from garboard.network.rest import Rest

#: In Ω: below this sums of conductances may overflow.
_LEAST: Final = 1e-150

#: A piece as seen from u to v: ends of its conductance and of its EMF.
_Seen = tuple[Ends, Ends]


def lies_side_by_side(rest: Rest) -> bool:
    """Whether all that matters of a rest, a drawn current included, lies between its two ends."""
    pair = (rest.u, rest.v)
    return (all(link.u in pair and link.v in pair for link in rest.links)
            and (rest.draw is None or (rest.draw[0] in pair and rest.draw[1] in pair)))


def side_by_side(rest: Rest, pieces: Sequence[Piece], asked: Piece, draw: Ends) -> Ends | None:
    """Least and greatest current in ``asked``, from ``rest.u`` to ``rest.v``, where the rest
    lies side by side; ``None`` where a piece may have no resistance to speak of.
    """
    if any(each.resistance[0] < _LEAST and not each.injected for each in pieces):
        return None
    seen: list[_Seen] = []
    pushed = [0.0, 0.0]
    for each in pieces:
        emf = each.emf if each.u == rest.u else _turned(each.emf)
        if each.injected:
            pushed = [pushed[0] + emf[0], pushed[1] + emf[1]]
        else:
            least, most = each.resistance
            seen.append(((1.0 / most, 1.0 / least), emf))
    if rest.draw is not None:
        drawn = draw if rest.draw[0] == rest.u else _turned(draw)
        pushed = [pushed[0] + drawn[0], pushed[1] + drawn[1]]
    high = max(_greatest(seen, resistance, asked.emf[1], pushed[0])
               for resistance in set(asked.resistance))
    turned = [(g, _turned(emf)) for g, emf in seen]
    low = -max(_greatest(turned, resistance, -asked.emf[0], -pushed[1])
               for resistance in set(asked.resistance))
    return low, high


def _greatest(seen: Iterable[_Seen], resistance: float, emf: float, pushed: float) -> float:
    """The greatest current for one resistance and EMF of the element asked about."""
    if resistance == math.inf:
        return 0.0
    drives = sorted(((emf - low, g) for g, (low, _) in seen), key=_drive, reverse=True)
    above = math.fsum(g[0] * drive for drive, g in drives) - pushed
    below = 1.0 + resistance * math.fsum(g[0] for _, g in drives)
    best = above / below
    for drive, (least, most) in drives:
        above += (most - least) * drive
        below += (most - least) * resistance
        best = max(best, above / below)
    return best


def _drive(each: tuple[float, Ends]) -> float:
    return each[0]


def _turned(ends: Ends) -> Ends:
    return -ends[1], -ends[0]
