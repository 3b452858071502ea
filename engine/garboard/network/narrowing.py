"""Bounds where too many quantities vary to try all corners.

The sign of each sensitivity (see ``corners``) is looked for over the whole box with verified
intervals; where it is constant the quantity goes to that end, which makes the box smaller and the
next signs easier to see. Once few enough remain the corners are enumerated and the bound is exact.
Otherwise the bound is the interval enclosure of what remains, cut by a second one: the current
grows with each EMF (rule 1 of ``corners``), so all EMFs at their greatest, made equal, bound it
from above, and all at their least from below; and for equal EMFs the two ends of all resistances
are exact.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from garboard.network.blocks import elimination
from garboard.network.corners import emf_direction
from garboard.network.enclosure import Wire, driving_voltage, loop_range, seen_between
from garboard.network.pieces import Ends, Piece
from garboard.network.ranges import Ranges
from garboard.network.rest import Rest
from garboard.network.skeleton import Skeleton
from garboard.network.solution import Solution
from garboard.network.starmesh import INF, NoAnswer
from garboard.network.variables import ENUMERATED, Variable

_ZERO: Ends = (0.0, 0.0)
#: Interval ends are rounded outwards by this part, far more than the rounding of their arithmetic.
_OUTWARD = 1e-12


class Narrowed(NamedTuple):
    """Variables put to an end, those still free, and the interval the result lies in."""

    fixed: list[tuple[Variable, bool]]
    free: list[Variable]
    enclosure: Ends


class Box:
    """The pieces of a rest, and the element asked about, as intervals that get smaller.

    ``work`` is how many connections may be put between neighbours of a node on the way; where it
    is used up the rest stays free. It depends on the network alone, not on what is asked before.
    """

    def __init__(self, rest: Rest, pieces: tuple[Piece, ...], asked: Piece, draw: Ends,
                 work: int) -> None:
        self._work = work
        self._rest = rest
        self._pieces = list(pieces)
        self._asked = asked
        self._draw = draw

    def narrowed(self, variables: list[Variable], towards: int) -> Narrowed:
        """Put variables to the end that makes the current greatest (or least, ``towards`` -1)."""
        free = list(variables)
        fixed: list[tuple[Variable, bool]] = []
        progress = True
        while progress and len(free) > ENUMERATED:
            progress = False
            for variable in list(free):
                if self._work <= 0:
                    break
                sign = self._sensitivity(variable)
                if sign:
                    high = sign * towards > 0
                    self._fix(variable, high)
                    free.remove(variable)
                    fixed.append((variable, high))
                    progress = True
        return Narrowed(fixed, free, self._enclosure())

    def _fix(self, variable: Variable, high: bool) -> None:
        for number in self._touched(variable):
            each = self._pieces[number]
            if variable.resistances:
                end = each.resistance[high]
                self._pieces[number] = each._replace(resistance=(end, end))
            else:
                upper = high == (emf_direction(self._rest, each) >= 0)
                end = each.emf[upper]
                self._pieces[number] = each._replace(emf=(end, end))

    def _touched(self, variable: Variable) -> list[int]:
        moved = {*variable.resistances, *(element for element, _ in variable.emfs)}
        return [number for number, each in enumerate(self._pieces)
                if any(element in moved for element, _ in each.elements)]

    def _seen(self, wires: list[Wire], u: int, v: int) -> Wire:
        """The wires as one from u to v; what that takes is taken off the work left."""
        steps = elimination([(wire.u, wire.v) for wire in wires], (u, v))
        self._work -= sum(len(around) ** 2 for _, around in steps) + len(wires)
        return seen_between(wires, u, v, [node for node, _ in steps])

    def _direction(self, moved: Piece, wires: list[Wire], emf: Ends) -> int:
        """The sign of the current in a piece, the wires being the rest; 0 when not constant."""
        rest = self._seen(wires, moved.u, moved.v)
        if rest.j == _ZERO:
            low, high = driving_voltage(rest, emf)
        else:
            low, high = loop_range(rest, moved.resistance, emf)
        return 1 if low >= 0 else -1 if high <= 0 else 0

    def _sensitivity(self, variable: Variable) -> int:
        """The sign of df/dE or df/dR over the whole box, 0 when not known to be constant."""
        if variable.draw:
            return 0
        if variable.together:
            return 1
        number = self._touched(variable)[0]
        moved = self._pieces[number]
        others = self._pieces[:number] + self._pieces[number + 1:]
        adjoint = self._direction(moved, [*(_wire(each, dead=True) for each in others),
                                          _wire(self._asked._replace(emf=(1.0, 1.0)))], (0.0, 0.0))
        if variable.emfs:
            return adjoint
        actual = self._direction(moved, [*map(_wire, others), _wire(self._asked), *self._drawn()],
                                 moved.emf)
        return -actual * adjoint

    def _enclosure(self) -> Ends:
        wires = [*map(_wire, self._pieces), *self._drawn()]
        rest = self._seen(wires, self._rest.u, self._rest.v)
        try:
            low, high = loop_range(rest, self._asked.resistance, self._asked.emf)
        except NoAnswer:
            return (-math.inf, math.inf)
        return low - abs(low) * _OUTWARD, high + abs(high) * _OUTWARD

    def _drawn(self) -> list[Wire]:
        if self._rest.draw is None:
            return []
        u, v = self._rest.draw
        return [Wire(u, v, _ZERO, _ZERO, self._draw)]


def equalised(rest: Rest, pieces: tuple[Piece, ...], asked: Piece, skeleton: Skeleton,
              ranges: Ranges) -> Ends:
    """Bounds with all EMFs made equal, at the greatest and the least; infinite if that fails."""
    unlimited = (-math.inf, math.inf)
    if asked.emf != _ZERO or rest.draw is not None or any(each.injected for each in pieces):
        return unlimited
    for node, sign in ((rest.v, 1.0), (rest.u, -1.0)):
        away = [each.emf if each.u == node else (-each.emf[1], -each.emf[0])
                for each in pieces if node in (each.u, each.v)]
        passive = all(each.emf == _ZERO or node in (each.u, each.v) for each in pieces)
        least, greatest = min(low for low, _ in away), max(high for _, high in away)
        if passive and least >= 0:
            none = [0.0] * len(ranges.emf_lo)
            ends = []
            for emf, resistance, own in ((least, ranges.resistance_hi, asked.resistance[1]),
                                         (greatest, ranges.resistance_lo, asked.resistance[0])):
                g, _ = Solution(skeleton, resistance, none).seen_from(rest)
                total = own + (0.0 if g is INF else math.inf if g == 0 else 1.0 / g)
                ends.append(sign * emf / total if total > 0 else sign * math.inf)
            return min(ends), max(ends)
    return unlimited


def _wire(each: Piece, dead: bool = False) -> Wire:
    emf = _ZERO if dead else each.emf
    if each.injected:
        return Wire(each.u, each.v, _ZERO, _ZERO, emf)
    least, most = each.resistance
    g = (1.0 / most if most > 0 else math.inf, 1.0 / least if least > 0 else math.inf)
    return Wire(each.u, each.v, g, emf)
