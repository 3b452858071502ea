"""Pieces: elements in series between two nodes, with the ends of their sums."""

from __future__ import annotations

from typing import NamedTuple

from garboard.network.graph import INJECTOR
from garboard.network.ranges import Ranges
from garboard.network.rest import Rest
from garboard.network.skeleton import Signed, Skeleton

Ends = tuple[float, float]


class Piece(NamedTuple):
    """Elements in series from u to v with the ends of their resistance and of their EMF.

    ``injected``: a single injector; ``emf`` then holds its current.
    """

    u: int
    v: int
    elements: tuple[Signed, ...]
    resistance: Ends
    emf: Ends
    injected: bool = False


def pieces_of(rest: Rest, skeleton: Skeleton, ranges: Ranges) -> tuple[Piece, ...]:
    """All series of elements that matter, bundles taken apart."""
    found: list[Piece] = []
    for link in rest.links:
        if link.bundle < 0:
            found.append(piece(link.u, link.v, link.elements, ranges))
            continue
        chains = skeleton.bundles[link.bundle].chains
        found += [piece(link.u, link.v, skeleton.chains[number].elements, ranges)
                  for number in chains if number not in link.skipped]
    return tuple(each._replace(injected=True)
                 if skeleton.elements[each.elements[0][0]].kind == INJECTOR else each
                 for each in found)


def piece(u: int, v: int, elements: tuple[Signed, ...], ranges: Ranges) -> Piece:
    """A series of elements with the ends of its sums."""
    least = most = low = high = 0.0
    for element, sign in elements:
        least += ranges.resistance_lo[element]
        most += ranges.resistance_hi[element]
        one, other = ranges.emf_lo[element], ranges.emf_hi[element]
        if sign > 0:
            low, high = low + one, high + other
        else:
            low, high = low - other, high - one
    return Piece(u, v, elements, (least, most), (low, high))
