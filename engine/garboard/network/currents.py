"""The current a question asks for: a number, true bounds, or unknown with its causes."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import Any, Final

from garboard.network.corners import common_emf, one_emf_everywhere, one_emf_seen
from garboard.network.density import TooDense, check_density
from garboard.network.grounds import Grounds, GroundsOf, joined
from garboard.network.narrowing import Box, equalised
from garboard.network.pieces import Ends, Piece, piece, pieces_of
from garboard.network.ranges import Ranges
from garboard.network.rest import Question, Rest
from garboard.network.side_by_side import lies_side_by_side, side_by_side
from garboard.network.skeleton import Signed, Skeleton
from garboard.network.solution import Solution
from garboard.network.starmesh import Amount, NoAnswer, Unlimited, loop_current
from garboard.network.variables import (
    ENUMERATED,
    Values,
    Variable,
    corner_values,
    solved,
    variables_of,
)
from garboard.values import ASSUMPTION, OUTSIDE_METHOD, Bounds, Number, Unknown, rounded

#: A current below this part of what the loop could carry is rounding, and counts as zero.
_ROUNDING: Final = 1e-12
#: Answers to questions of at most this many elements are kept: devices on one bus ask the same.
_SHORT: Final = 4
#: Work for the narrowing of bounds (see ``narrowing``), divided by the elements of a network: the
#: more there are, the more is asked. Where it is used up the bounds are true still, but wider.
_NARROWING: Final = 4_000_000
#: For how many places the solutions at the corners are kept; each is as large as the network.
_KEPT: Final = 32


class Currents:
    """Answers questions about one skeleton with one set of ranges; ``draw`` is a current in A."""

    def __init__(self, skeleton: Skeleton, ranges: Ranges, draw: Number = 0.0) -> None:
        self._skeleton, self._ranges, self._draw_known = skeleton, ranges, draw
        self._draw: Ends = ((draw.lo, draw.hi) if isinstance(draw, Bounds) else
                            (0.0, 0.0) if isinstance(draw, Unknown) else (draw, draw))
        self._exactly = ranges.exact and not isinstance(draw, (Bounds, Unknown))
        self._grounds = GroundsOf(skeleton, ranges, draw)
        self._extremes: dict[tuple[bool, bool], Solution] = {}
        self._corners: dict[int, tuple[Rest, list[Solution] | None]] = {}
        self._chosen: dict[tuple[object, ...], Solution] = {}
        self._known: dict[tuple[int, tuple[Signed, ...]], tuple[Rest | None, Number | None]] = {}

    def current(self, question: Question) -> Number | None:
        """The current asked for in A, signed, rounded to 12 significant digits.

        Unknown where a value of a battery that matters is unknown, or where the equations leave it
        undetermined; ``None`` where no source reaches.
        """
        if len(question.elements) > _SHORT:
            return self._found(question)
        key = (id(question.rest), question.elements)
        known = self._known.get(key)
        if known is None:
            known = self._known[key] = (question.rest, self._found(question))
        return known[1]

    def _found(self, question: Question) -> Number | None:
        try:
            check_density(self._skeleton, question.rest)
        except TooDense as error:
            return _undetermined(error)
        if self._exactly:
            return self._exact(question)
        grounds = self._grounds_of(question)
        if grounds.unknown is not None or not grounds.has_source:
            return grounds.unknown
        try:
            return self._bounded(question, grounds)
        except NoAnswer as error:
            return Unknown(grounds.causes) if grounds.causes else _undetermined(error)

    def has_source(self, question: Question) -> bool:
        """Whether a battery, injector or drawn current takes part."""
        return self._grounds_of(question).has_source

    def _grounds_of(self, question: Question) -> Grounds:
        around = self._grounds.rest(question.rest)
        if not question.elements:
            return around
        return joined([around, self._grounds.elements(question.elements)])

    # one solution --------------------------------------------------------------------------------
    def _exact(self, question: Question) -> Number | None:
        try:
            value = self._solved(question, self._extreme(False, False))
        except NoAnswer as error:
            return _undetermined(error)
        return rounded(value) if value or self.has_source(question) else None

    def _solved(self, question: Question, solution: Solution) -> float:
        resistance, emf = solution.series(question.elements)
        rest = solution.seen_from(question.rest)
        current: float = loop_current(rest, resistance, emf)
        limit = _ROUNDING * _carried(rest, resistance, self._scale)
        return 0.0 if abs(current) < limit < math.inf else current

    @cached_property
    def _scale(self) -> float:
        """The greatest EMF there is."""
        return max(map(abs, (*self._ranges.emf_lo, *self._ranges.emf_hi)), default=0.0)

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
    def _bounded(self, question: Question, grounds: Grounds) -> Number:
        low, high = self._ends(question)
        if low == math.inf or high == -math.inf:
            raise NoAnswer("nothing in the loop has any resistance")
        small = self._rounding(question, (low, high))
        if low > high + small:
            raise ArithmeticError(f"bounds {low!r} to {high!r} contradict each other")
        low, high = (0.0 if abs(end) < small else rounded(end) for end in sorted((low, high)))
        if low == high and ASSUMPTION not in grounds.basis:
            return low
        nominal = self._nominal(question, (low, high)) if grounds.nominal else None
        return Bounds(low, high, nominal, basis=tuple(grounds.basis), causes=grounds.causes)

    def _rounding(self, question: Question, ends: Ends) -> float:
        """What counts as zero: see ``_ROUNDING``."""
        solution = self._extreme(False, False)
        resistance, _ = solution.series(question.elements)
        carried = _carried(solution.seen_from(question.rest), resistance, self._scale)
        return _ROUNDING * max(abs(each) for each in (*ends, *self._draw, carried, 0.0)
                               if math.isfinite(each))

    def _ends(self, question: Question) -> Ends:
        rest = question.rest
        asked = piece(0, 0, question.elements, self._ranges)
        if rest is None:
            return _range((self._extreme(False, False),), None, asked)
        if self._one_emf and one_emf_seen(self._skeleton, self._ranges, rest):
            return _range(self._all_ends, rest, asked)
        if lies_side_by_side(rest):
            beside = side_by_side(rest, pieces_of(rest, self._skeleton, self._ranges), asked,
                                  self._draw)
            if beside is not None:
                return beside
        corners = self._corners_of(rest)
        if corners is not None:
            return _range(corners, rest, asked)
        asked = asked._replace(u=rest.u, v=rest.v)
        pieces = pieces_of(rest, self._skeleton, self._ranges)
        low_end, high_end = equalised(rest, pieces, asked, self._skeleton, self._ranges)
        return (max(low_end, self._one_end(rest, pieces, asked, -1)),
                min(high_end, self._one_end(rest, pieces, asked, 1)))

    def _corners_of(self, rest: Rest) -> list[Solution] | None:
        """Solutions among which the extremes are; ``None`` when there are too many corners."""
        known = self._corners.get(id(rest))
        if known is None:
            known = (rest, self._find_corners(rest))
            if len(self._corners) >= _KEPT:
                self._corners.clear()
            self._corners[id(rest)] = known
        return known[1]

    def _find_corners(self, rest: Rest) -> list[Solution] | None:
        pieces = pieces_of(rest, self._skeleton, self._ranges)
        variables = variables_of(rest, pieces, self._ranges, self._draw)
        if not variables:
            return [self._extreme(False, False)]
        signs = {sign for each in variables if each.together for _, sign in each.emfs}
        if len(signs) < 2 and common_emf(rest, pieces):
            return self._all_ends
        if len(variables) > ENUMERATED:
            return None
        return [self._corner(values)
                for values in corner_values(variables, self._ranges, self._draw)]

    def _corner(self, values: Values) -> Solution:
        """The solution of one choice of values, the same for all places it is a corner of."""
        known = self._chosen.get(values.key)
        if known is None:
            if len(self._chosen) >= _KEPT:
                self._chosen.clear()
            known = self._chosen[values.key] = solved(values, self._skeleton)
        return known

    @cached_property
    def _one_emf(self) -> bool:
        return one_emf_everywhere(self._skeleton, self._ranges)

    @cached_property
    def _all_ends(self) -> list[Solution]:
        """All resistances at either end, with all EMFs at either end."""
        varies = self._ranges.emf_lo != self._ranges.emf_hi
        return [self._extreme(resistance, emf) for resistance in (False, True)
                for emf in ((False, True) if varies else (False,))]

    def _one_end(self, rest: Rest, pieces: tuple[Piece, ...], asked: Piece,
                 towards: int) -> float:
        variables: list[Variable] = variables_of(rest, pieces, self._ranges, self._draw)
        work = _NARROWING // max(1, len(self._skeleton.elements))
        narrowed = Box(rest, pieces, asked, self._draw, work).narrowed(variables, towards)
        if len(narrowed.free) > ENUMERATED:
            return narrowed.enclosure[towards > 0]
        corners = [self._corner(values) for values in corner_values(
            narrowed.free, self._ranges, self._draw, narrowed.fixed)]
        return _range(corners, rest, asked)[towards > 0]

    def _nominal(self, question: Question, ends: Ends) -> float | None:
        """The current at the nominal values."""
        try:
            value = rounded(self._solved(question, self._at_nominal))
        except NoAnswer:
            return None
        return min(max(value, ends[0]), ends[1])

    @cached_property
    def _at_nominal(self) -> Solution:
        draw = self._draw_known
        drawn = draw.nominal if isinstance(draw, Bounds) else self._draw[0]
        return Solution(self._skeleton, *self._ranges.nominal(), 0.0 if drawn is None else drawn)


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
    resistances, emfs = set(asked.resistance), set(asked.emf)
    for solution in solutions:
        seen = solution.seen_from(rest)
        for resistance in resistances:
            for emf in emfs:
                try:
                    yield loop_current(seen, resistance, emf)
                except Unlimited:
                    yield math.copysign(math.inf, emf - seen[1])


def _carried(rest: tuple[Amount, Amount], resistance: float, emf: float) -> float:
    """The current a loop would carry if all of an EMF drove it."""
    g = rest[0]
    total = resistance + (0.0 if g == math.inf else math.inf if g == 0 else 1.0 / g)
    return emf / total if total > 0 else 0.0


def _undetermined(error: NoAnswer) -> Unknown:
    return Unknown.because(OUTSIDE_METHOD, detail=str(error))
