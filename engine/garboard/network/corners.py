"""Which choices of values, out of all within the bounds, can give the least or greatest current.

**Why corners.** Let f be the current asked for, in an element that closes a loop with the rest. As
a function of any *one* resistance R (all else held) f = (a + b R) / (c + d R), where the
denominator, a determinant of the network's equations, keeps its sign as long as all resistances are
positive: f is monotone in R. As a function of one EMF or injected current f is linear. So f takes
its extremes over a box of values at corners of the box. Elements in series count as one: only their
sum matters.

**Which corners.** Writing i_k for the current in piece k, and a_k for the current it would carry if
a single EMF of 1 V stood in the element asked about and all other sources were dead, ``df/dE_k =
a_k`` and ``df/dR_k = -i_k a_k``. Two rules follow that hold anywhere in the box:

1. In that dead network all potentials lie between those of the two ends u and v of the element
   asked about, v being the highest: in a piece that touches v current flows away from v, in one
   that touches u it flows towards u. There the sign of ``df/dE_k`` is known.
2. If all EMFs sit in the pieces that touch v (or u) and all those pieces have the same EMF E,
   shifting the potential of that node turns the network into a single E in one loop: f = E /
   R_total, and by Rayleigh's principle R_total grows with every resistance. This is the fault
   current of batteries of equal EMF, whatever lies between them: the two ends of all resistances
   give the exact bounds.

Otherwise the corners are enumerated (see ``variables``), up to a number of quantities that vary on
their own; beyond that see ``narrowing``.
"""

from __future__ import annotations

from garboard.network.graph import INJECTOR
from garboard.network.pieces import Ends, Piece, piece
from garboard.network.ranges import Ranges
from garboard.network.rest import Rest
from garboard.network.skeleton import Signed, Skeleton
from garboard.network.starmesh import SAME_VOLTAGE

_NOTHING: Ends = (0.0, 0.0)


def emf_direction(rest: Rest, each: Piece) -> int:
    """Rule 1: the sign of df/dE for the EMF of a piece from its u to its v; 0 when not known."""
    if each.u == rest.v or each.v == rest.u:
        return 1
    return -1 if each.u == rest.u or each.v == rest.v else 0


def common_emf(rest: Rest, pieces: tuple[Piece, ...]) -> bool:
    """Rule 2: whether all EMFs are equal and sit in pieces that all touch the same end."""
    if rest.draw is not None or any(each.injected and each.emf != _NOTHING for each in pieces):
        return False
    driven = tuple(each for each in pieces if not each.injected)
    return any(_all_equal(node, driven) for node in (rest.v, rest.u))


def one_emf_everywhere(skeleton: Skeleton, ranges: Ranges) -> bool:
    """Rule 2 for a whole skeleton: every EMF sits in a chain that touches the return, all of these
    chains have the same EMF away from it, every EMF that varies points away from it, and nothing
    injects current: an injector of 0 A is as good as none."""
    injectors = {number for number, edge in enumerate(skeleton.elements) if edge.kind == INJECTOR}
    if any((ranges.emf_lo[each], ranges.emf_hi[each]) != _NOTHING for each in injectors):
        return False
    pieces = tuple(piece(each.nodes[0], each.nodes[-1], each.elements, ranges)
                   for each in skeleton.chains if each.elements[0][0] not in injectors)
    along = all(sign > 0 or not ranges.emf_varies(element)
                for each in pieces for element, sign in _away(skeleton.reference, each))
    return along and _all_equal(skeleton.reference, pieces)


def one_emf_seen(skeleton: Skeleton, ranges: Ranges, rest: Rest) -> bool:
    """Rule 2 for a rest of a skeleton where it holds for the whole, without a look at the pieces.

    The rest is of the quick kind, seen from a point, or from a device in a chain that touches the
    return whose batteries all lie between the device and the return: then a fault at the device
    leaves on the far side either those batteries alone, or everything else.
    """
    if rest.local is None:
        return False
    if rest.local.chain < 0:
        return True
    elements, nodes = skeleton.chains[rest.local.chain]
    first, last = rest.local.position, rest.local.position + (rest.local.fault >= 0)
    if nodes[0] == nodes[-1]:
        return False
    if nodes[0] == skeleton.reference:
        beyond = elements[last:]
    elif nodes[-1] == skeleton.reference:
        beyond = elements[:first]
    else:
        return rest.local.fault < 0
    return all(ranges.emf_lo[e] == ranges.emf_hi[e] == 0.0 for e, _ in beyond)


def _all_equal(node: int, pieces: tuple[Piece, ...]) -> bool:
    common: Ends | None = None
    for each in pieces:
        if node in (each.u, each.v):
            low, high = each.emf
            away = (low, high) if each.u == node else (-high, -low)
            if common is None:
                common = away
            elif not (_near(common[0], away[0]) and _near(common[1], away[1])):
                return False
        elif each.emf != _NOTHING:
            return False
    return True


def _away(node: int, each: Piece) -> tuple[Signed, ...]:
    """The elements of a piece as passed on the way from a node."""
    if each.u == node:
        return each.elements
    return tuple((element, -sign) for element, sign in each.elements)


def _near(one: float, other: float) -> bool:
    return abs(one - other) <= SAME_VOLTAGE * max(abs(one), abs(other))
