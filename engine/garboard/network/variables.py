"""What varies on its own in a network, and all choices of ends of what varies."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import product
from typing import Final, NamedTuple

from garboard.network.corners import emf_direction
from garboard.network.pieces import Ends, Piece
from garboard.network.ranges import Ranges
from garboard.network.rest import Rest
from garboard.network.skeleton import Signed, Skeleton
from garboard.network.solution import Solution
from garboard.network.starmesh import Amount

#: Corners are enumerated up to this many quantities that vary on their own.
ENUMERATED: Final = 12
#: Up to this many corners are solved one by one, more of them side by side in arrays.
_ONE_BY_ONE: Final = 32


class Variable(NamedTuple):
    """What moves together between two ends: resistances, or EMFs with a sign each, or the draw."""

    resistances: tuple[int, ...] = ()
    emfs: tuple[Signed, ...] = ()
    draw: bool = False
    #: Whether these are all the EMFs whose direction rule 1 gives.
    together: bool = False
    #: Whether one end is a tie or an open connection.
    structural: bool = False


class Values:
    """One choice of values, or one per lane; ``key`` says which, whatever place it is for."""

    __slots__ = ("_raised", "draw", "emf", "lanes", "resistance")

    def __init__(self, ranges: Ranges, draw: Amount) -> None:
        self.resistance: list[Amount] = list(ranges.resistance_lo)
        self.emf: list[Amount] = list(ranges.emf_lo)
        self.draw: Amount = draw
        self.lanes: tuple[Variable, ...] = ()
        self._raised: set[tuple[str, int]] = set()

    @property
    def key(self) -> tuple[object, ...]:
        """What is at its high end, and what is at either, lane by lane."""
        return frozenset(self._raised), self.lanes

    def set(self, variable: Variable, high: bool, ranges: Ranges, draw: Ends) -> None:
        """Put a variable at its high or low end."""
        source = ranges.resistance_hi if high else ranges.resistance_lo
        for element in variable.resistances:
            self.resistance[element] = source[element]
        if high:
            self._raised.update(("resistance", element) for element in variable.resistances)
        for element, sign in variable.emfs:
            upper = high == (sign > 0)
            self.emf[element] = (ranges.emf_hi if upper else ranges.emf_lo)[element]
            if upper:
                self._raised.add(("emf", element))
        if variable.draw:
            self.draw = draw[high]
            if high:
                self._raised.add(("draw", 0))


def variables_of(rest: Rest, pieces: tuple[Piece, ...], ranges: Ranges,
                 draw: Ends) -> list[Variable]:
    """What varies on its own; the EMFs whose direction rule 1 gives move together, as one."""
    found: list[Variable] = []
    together: list[Signed] = []
    for each in pieces:
        resistances = tuple(e for e, _ in each.elements if ranges.resistance_varies(e))
        if resistances:
            least, most = each.resistance
            found.append(Variable(resistances, structural=least == 0 or most == math.inf))
        direction = emf_direction(rest, each)
        emfs = tuple((e, sign * (direction or 1)) for e, sign in each.elements
                     if ranges.emf_varies(e))
        if direction:
            together += emfs
        elif emfs:
            found.append(Variable(emfs=emfs))
    if together:
        found.append(Variable(emfs=tuple(together), together=True))
    if rest.draw is not None and draw[0] < draw[1]:
        found.append(Variable(draw=True))
    return found


def corner_values(variables: list[Variable], ranges: Ranges, draw: Ends,
                  fixed: list[tuple[Variable, bool]] | None = None) -> Iterator[Values]:
    """Every choice of ends of some variables; the smooth ones side by side where there are many."""
    smooth = [] if 2 ** len(variables) <= _ONE_BY_ONE else [
        each for each in variables if not each.structural]
    single = [each for each in variables if each not in smooth]
    for ends in product((False, True), repeat=len(single)):
        values = Values(ranges, draw[0])
        for variable, high in [*(fixed or ()), *zip(single, ends, strict=True)]:
            values.set(variable, high, ranges, draw)
        if smooth:
            _spread(values, smooth, ranges, draw)
        yield values


def _spread(values: Values, smooth: list[Variable], ranges: Ranges, draw: Ends) -> None:
    """Put smooth variables at all their ends at once, one lane per choice."""
    import numpy as np

    lanes = np.arange(2 ** len(smooth))
    low, high = Values(ranges, draw[0]), Values(ranges, draw[0])
    values.lanes = tuple(smooth)
    for position, variable in enumerate(smooth):
        up = (lanes >> position) & 1 == 1
        low.set(variable, False, ranges, draw)
        high.set(variable, True, ranges, draw)
        for element in variable.resistances:
            values.resistance[element] = np.where(
                up, high.resistance[element], low.resistance[element])
        for element, _ in variable.emfs:
            values.emf[element] = np.where(up, high.emf[element], low.emf[element])
        if variable.draw:
            values.draw = np.where(up, draw[1], draw[0])


def solved(values: Values, skeleton: Skeleton) -> Solution:
    """The solution of one choice of values."""
    return Solution(skeleton, values.resistance, values.emf, values.draw)
