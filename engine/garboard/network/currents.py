"""The current a question asks for: a number, true bounds, or unknown with its causes."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import Any, Final

from garboard.network.corners import (
    ENUMERATED,
    Ends,
    Piece,
    Variable,
    common_emf,
    corner_values,
    piece,
    pieces_of,
    solved,
    variables_of,
)
from garboard.network.graph import BATTERY, INJECTOR
from garboard.network.narrowing import Box, equalised
from garboard.network.ranges import Ranges
from garboard.network.rest import Question, Rest
from garboard.network.skeleton import Skeleton
from garboard.network.solution import Solution
from garboard.network.starmesh import Amount, NoAnswer, Unlimited, loop_current
from garboard.values import (
    ASSUMPTION,
    OUTSIDE_METHOD,
    Bounds,
    Number,
    Unknown,
    merged,
    rounded,
)

#: A current below this part of what the loop could carry is rounding, and counts as zero.
_ROUNDING: Final = 1e-13


class Known:
    """What is known about a rest: its pieces, what its bounds rest on, what is unknown in it."""

    __slots__ = ("basis", "causes", "elements", "has_source", "pieces", "rest", "unknown")

    def __init__(self, rest: Rest | None, skeleton: Skeleton, ranges: Ranges,
                 draw: Number) -> None:
        self.rest = rest
        self.pieces = () if rest is None else pieces_of(rest, skeleton, ranges)
        self.elements = [element for each in self.pieces for element, _ in each.elements]
        self.unknown = ranges.unknown_among(self.elements)
        self.basis, self.causes = ranges.grounds(self.elements)
        drawn = rest is not None and rest.draw is not None
        self.has_source = drawn or any(
            skeleton.elements[each].kind in (BATTERY, INJECTOR) for each in self.elements)
        if drawn and isinstance(draw, Unknown):
            self.unknown = draw.joined(self.unknown)
        if drawn and isinstance(draw, Bounds):
            self.basis = tuple(sorted({*self.basis, *draw.basis}))
            self.causes = merged(self.causes, draw.causes)


class Currents:
    """Answers questions about one skeleton with one set of ranges; ``draw`` is a current in A."""

    def __init__(self, skeleton: Skeleton, ranges: Ranges, draw: Number = 0.0) -> None:
        self._skeleton, self._ranges, self._draw_known = skeleton, ranges, draw
        self._draw: Ends = ((draw.lo, draw.hi) if isinstance(draw, Bounds) else
                            (0.0, 0.0) if isinstance(draw, Unknown) else (draw, draw))
        self._exactly = ranges.exact and not isinstance(draw, (Bounds, Unknown))
        self._scale = max(map(abs, (*ranges.emf_lo, *ranges.emf_hi)), default=0.0)
        self._extremes: dict[tuple[bool, bool], Solution] = {}
        self._corners: dict[int, list[Solution] | None] = {}
        self._known: dict[int, Known] = {}
        self._at_nominal: Solution | None = None

    def current(self, question: Question) -> Number:
        """The current asked for in A, signed, rounded to 12 significant digits.

        Unknown where a value of a battery that matters is unknown, where no source reaches, or
        where the equations leave it undetermined.
        """
        known = self._about(question.rest)
        own = [element for element, _ in question.elements]
        if not (known.has_source or self._any_source(own)):
            return Unknown.because(OUTSIDE_METHOD, detail="no source reaches this point")
        unknown = known.unknown
        for element in own:
            if element in self._ranges.unknown:
                unknown = self._ranges.unknown[element].joined(unknown)
        if unknown is not None:
            return unknown
        try:
            if self._exactly:
                return rounded(self._solved(question, self._extreme(False, False)))
            return self._bounded(question, known, own)
        except NoAnswer as error:
            causes = merged(known.causes, self._ranges.grounds(own)[1])
            return Unknown(causes) if causes else Unknown.because(
                OUTSIDE_METHOD, detail=str(error))

    def has_source(self, question: Question) -> bool:
        """Whether a battery, injector or drawn current takes part."""
        return self._about(question.rest).has_source or self._any_source(
            [element for element, _ in question.elements])

    def _any_source(self, elements: Iterable[int]) -> bool:
        return any(self._skeleton.elements[each].kind in (BATTERY, INJECTOR) for each in elements)

    def _about(self, rest: Rest | None) -> Known:
        known = self._known.get(id(rest))
        if known is None:
            known = self._known[id(rest)] = Known(
                rest, self._skeleton, self._ranges, self._draw_known)
        return known

    def _solved(self, question: Question, solution: Solution) -> float:
        resistance, emf = solution.series(question.elements)
        rest = solution.seen_from(question.rest)
        current: float = loop_current(rest, resistance, emf)
        limit = _ROUNDING * _carried(rest, resistance, self._scale)
        return 0.0 if abs(current) < limit else current

    def _extreme(self, resistance_high: bool, emf_high: bool) -> Solution:
        """The solution with all resistances at one end and all EMFs at one end."""
        key = (resistance_high, emf_high)
        if key not in self._extremes:
            ranges = self._ranges
            self._extremes[key] = Solution(
                self._skeleton, ranges.resistance_hi if resistance_high else ranges.resistance_lo,
                ranges.emf_hi if emf_high else ranges.emf_lo, self._draw[0])
        return self._extremes[key]

    # bounds --------------------------------------------------------------------------------------
    def _bounded(self, question: Question, known: Known, own: list[int]) -> Number:
        low, high = self._ends(question)
        basis, causes = self._ranges.grounds(own)
        basis, causes = tuple(sorted({*basis, *known.basis})), merged(causes, known.causes)
        if low == math.inf or high == -math.inf:
            raise NoAnswer("nothing in the loop has any resistance")
        small = _ROUNDING * max((abs(end) for end in (low, high) if math.isfinite(end)), default=0)
        low, high = (0.0 if abs(end) < small else rounded(end) for end in (low, high))
        if low == high and ASSUMPTION not in basis:
            return low
        return Bounds(low, high, self._nominal(question, known, own, (low, high)),
                      basis=basis, causes=causes)

    def _ends(self, question: Question) -> Ends:
        rest = question.rest
        asked = piece(0, 0, question.elements, self._ranges)
        if rest is None:
            return _range((self._extreme(False, False),), None, asked)
        if id(rest) not in self._corners:
            self._corners[id(rest)] = self._find_corners(rest)
        corners = self._corners[id(rest)]
        if corners is not None:
            return _range(corners, rest, asked)
        asked = asked._replace(u=rest.u, v=rest.v)
        pieces = self._about(rest).pieces
        low_end, high_end = equalised(rest, pieces, asked, self._skeleton, self._ranges)
        variables = variables_of(rest, pieces, self._ranges, self._draw)
        return (max(low_end, self._one_end(rest, asked, variables, -1)),
                min(high_end, self._one_end(rest, asked, variables, 1)))

    def _find_corners(self, rest: Rest) -> list[Solution] | None:
        """Solutions among which the extremes are; ``None`` when there are too many corners."""
        pieces = self._about(rest).pieces
        variables = variables_of(rest, pieces, self._ranges, self._draw)
        if not variables:
            return [self._extreme(False, False)]
        together = [each for each in variables if each.together]
        signs = {sign for each in together for _, sign in each.emfs}
        if len(signs) < 2 and common_emf(rest, pieces):
            ends = (False, True)
            return [self._extreme(r, e) for r in ends for e in (ends if together else (False,))]
        if len(variables) > ENUMERATED:
            return None
        return [solved(values, self._skeleton)
                for values in corner_values(variables, self._ranges, self._draw)]

    def _one_end(self, rest: Rest, asked: Piece, variables: list[Variable],
                 towards: int) -> float:
        box = Box(rest, self._about(rest).pieces, asked, self._draw)
        narrowed = box.narrowed(variables, towards)
        if len(narrowed.free) > ENUMERATED:
            return narrowed.enclosure[towards > 0]
        corners = [solved(values, self._skeleton) for values in corner_values(
            narrowed.free, self._ranges, self._draw, narrowed.fixed)]
        return _range(corners, rest, asked)[towards > 0]

    def _nominal(self, question: Question, known: Known, own: list[int],
                 ends: Ends) -> float | None:
        """The current at the nominal values, when every one that matters has a nominal."""
        drawn = (self._draw_known.nominal if isinstance(self._draw_known, Bounds)
                 else self._draw[0])
        if not self._ranges.all_nominal(known.elements) or not self._ranges.all_nominal(own):
            return None
        if drawn is None and question.rest is not None and question.rest.draw is not None:
            return None
        if self._at_nominal is None:
            self._at_nominal = Solution(
                self._skeleton, *self._ranges.nominal(), 0.0 if drawn is None else drawn)
        try:
            value = rounded(self._solved(question, self._at_nominal))
        except NoAnswer:
            return None
        return min(max(value, ends[0]), ends[1])


def _range(solutions: Iterable[Solution], rest: Rest | None, asked: Piece) -> Ends:
    """Least and greatest current over some solutions and the ends of the element asked about."""
    low, high = math.inf, -math.inf
    for value in _at_ends(solutions, rest, asked):
        if isinstance(value, float):
            low, high = min(low, value), max(high, value)
        else:
            low, high = min(low, float(value.min())), max(high, float(value.max()))
    return low, high


def _at_ends(solutions: Iterable[Solution], rest: Rest | None, asked: Piece) -> Iterator[Any]:
    for solution in solutions:
        seen = solution.seen_from(rest)
        for resistance in dict.fromkeys(asked.resistance):
            for emf in dict.fromkeys(asked.emf):
                try:
                    yield loop_current(seen, resistance, emf)
                except Unlimited:
                    yield math.copysign(math.inf, emf - seen[1])


def _carried(rest: tuple[Amount, Amount], resistance: float, emf: float) -> float:
    """The current a loop would carry if all of an EMF drove it."""
    g = rest[0]
    total = resistance + (0.0 if g == math.inf else math.inf if g == 0 else 1.0 / g)
    return emf / total if total > 0 else 0.0
