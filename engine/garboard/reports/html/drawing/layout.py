"""Where everything of a sheet stands: bars in columns, lanes in rows, parts packed towards a bar.

Lengths are in the units of the drawing. Only sums and maxima of text lengths are taken, so that the
same sheet always has the same coordinates.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from garboard.reports.html.drawing.sheets import Block, Sheet
from garboard.reports.html.drawing.symbols import HALF
from garboard.reports.html.drawing.tree import Bar, End, Lane
from garboard.reports.html.drawing.wiring import Part
from garboard.reports.sheet import cells

ROW: Final = 76
_TOP: Final = 70
_GAP: Final = 20
_CELL: Final = 5.9
_LEAST_PART: Final = 66
_LEAST_LABEL: Final = 74
#: Room over a bar for its name, and between blocks, in rows.
_OVER_A_BAR: Final = 0.35


class Label(NamedTuple):
    """What stands beside a part: what it is called, and a line about it."""

    title: str
    detail: str


class Spot(NamedTuple):
    """A part drawn at a point; ``beside`` tells where its label goes: below, left or right."""

    part: Part
    x: float
    y: float
    beside: str


class Name(NamedTuple):
    """A name where the drawing leaves off, at the left or right end of a lane."""

    end: End
    x: float
    y: float
    beside: str


class Upright(NamedTuple):
    """A bar from its highest to its lowest lane."""

    bar: Bar
    x: float
    top: float
    bottom: float


@dataclass(slots=True)
class Placed:
    """Everything of a sheet with its coordinates, and the size of the drawing."""

    width: float = 0
    height: float = 0
    lines: list[tuple[float, float, float]] = field(default_factory=list)
    uprights: list[Upright] = field(default_factory=list)
    spots: list[Spot] = field(default_factory=list)
    names: list[Name] = field(default_factory=list)


class _Column(NamedTuple):
    """Where the bars of a depth stand, and where what gives them current begins."""

    bar: float
    outer: float


def place(sheet: Sheet, label_of: Callable[[Part], Label],
          name_of: Callable[[End], str]) -> Placed:
    """The coordinates of a sheet."""
    return _Placing(label_of, name_of).sheet(sheet)


class _Placing:
    def __init__(self, label_of: Callable[[Part], Label], name_of: Callable[[End], str]) -> None:
        self._label_of, self._name_of = label_of, name_of
        self._placed = Placed()
        self._columns: list[_Column] = []
        self._far = 0.0

    def sheet(self, sheet: Sheet) -> Placed:
        levels: list[list[Block]] = [list(sheet.blocks)]
        while levels[-1]:
            levels.append([child for block in levels[-1] for child in block.branches])
        self._set_columns(levels[:-1])
        row = 0.0
        for number, block in enumerate(sheet.blocks):
            row += _OVER_A_BAR if number else 0
            self._block(block, 0, row)
            row += _height(block)
        lanes = [lane for level in levels for block in level for lane in block.right]
        self._placed.width = self._far + max(map(self._end_width, lanes), default=_LEAST_LABEL)
        self._placed.height = _TOP + ROW * (row - 0.3)
        return self._placed

    # columns -------------------------------------------------------------------------------------
    def _set_columns(self, levels: Sequence[Sequence[Block]]) -> None:
        x = 0.0
        for depth, blocks in enumerate(levels):
            left = [lane for block in blocks for lane in _given(block, depth)]
            feeds = [lane for block in blocks for lane in block.feeds if depth]
            parts = max((self._width(lane.parts) for lane in left), default=0.0)
            ends = max(map(self._end_width, left), default=0.0)
            through = max((self._width(lane.parts) for lane in feeds), default=0.0)
            named = max((self._bar_width(block.bar) for block in blocks), default=0.0)
            x += max(parts + ends, through, 0.0 if depth else named / 2)
            self._columns.append(_Column(x, x - parts))
            self._far = max([self._far, *(x + self._width(lane.parts)
                                          for block in blocks for lane in block.right)])

    def _width(self, parts: Sequence[Part]) -> float:
        return sum(map(self._part_width, parts)) + _GAP

    def _part_width(self, part: Part) -> float:
        return max(_LEAST_PART, _CELL * max(map(cells, self._label_of(part))) + 16)

    def _bar_width(self, bar: Bar) -> float:
        """The room that the name over a bar takes."""
        return _GAP if bar.thing is None else (
            _GAP + _CELL * sum(map(cells, self._label_of(bar.thing))))

    def _end_width(self, lane: Lane) -> float:
        if lane.end.named or lane.end.thing is None:
            return max(_LEAST_LABEL, _CELL * cells(self._name_of(lane.end)) + 24)
        label = self._label_of(lane.end.thing)
        return 2 * HALF + max(_LEAST_LABEL, _CELL * max(map(cells, label)) + 14)

    # rows ----------------------------------------------------------------------------------------
    def _block(self, block: Block, depth: int, first: float) -> list[float]:
        """Place a block whose room begins at row ``first``; gives the rows of its feeds."""
        column = self._columns[depth]
        rows, fed = list[float](), list[float]()
        at = first + _centred(block, len(block.left) + len(block.feeds))
        if depth:
            fed = [at + number for number in range(len(block.feeds))]
            at += len(fed)
        for lane in _given(block, depth):
            self._to_left(lane, column, self._y(at))
            rows.append(at)
            at += 1
        at = first + _centred(block, len(block.right) + sum(map(_room, block.branches)))
        for child in block.branches:
            feeding = self._block(child, depth + 1, at + _OVER_A_BAR)
            for lane, row in zip(child.feeds, feeding, strict=True):
                self._feed(lane, depth, self._y(row))
            rows += feeding
            at += _room(child)
        for lane in block.right:
            self._to_right(lane, column.bar, self._y(at))
            rows.append(at)
            at += 1
        if block.bar.shown:
            ends = [self._y(each) for each in (*rows, *fed)] or [self._y(first)]
            self._placed.uprights.append(Upright(block.bar, column.bar, min(ends), max(ends)))
        return fed

    def _y(self, row: float) -> float:
        return _TOP + ROW * row

    # lanes ---------------------------------------------------------------------------------------
    def _to_left(self, lane: Lane, column: _Column, y: float) -> None:
        at = column.bar - _GAP / 2
        for part in lane.parts:
            width = self._part_width(part)
            self._placed.spots.append(Spot(part, at - width / 2, y, "below"))
            at -= width
        self._placed.lines.append((column.outer, column.bar, y))
        self._ending(lane.end, column.outer, y, "left")

    def _to_right(self, lane: Lane, x: float, y: float) -> None:
        self._packed(lane.parts, x, y)
        self._placed.lines.append((x, self._far, y))
        self._ending(lane.end, self._far, y, "right")

    def _feed(self, lane: Lane, depth: int, y: float) -> None:
        self._packed(lane.parts, self._columns[depth].bar, y)
        self._placed.lines.append((self._columns[depth].bar, self._columns[depth + 1].bar, y))

    def _packed(self, parts: Sequence[Part], x: float, y: float) -> None:
        at = x + _GAP / 2
        for part in parts:
            width = self._part_width(part)
            self._placed.spots.append(Spot(part, at + width / 2, y, "below"))
            at += width

    def _ending(self, end: End, x: float, y: float, beside: str) -> None:
        if end.named or end.thing is None:
            self._placed.names.append(Name(end, x, y, beside))
        else:
            middle = x + (HALF if beside == "right" else -HALF)
            self._placed.spots.append(Spot(end.thing, middle, y, beside))


def _given(block: Block, depth: int) -> list[Lane]:
    """The lanes that end to the left of a block; feeds from a bar of the sheet do not end."""
    return block.left if depth else [*block.feeds, *block.left]


def _height(block: Block) -> float:
    """The rows a block takes, with room over the bars in it."""
    return max(len(block.feeds) + len(block.left),
               len(block.right) + sum(map(_room, block.branches)), 1)


def _room(block: Block) -> float:
    return _OVER_A_BAR + _height(block)


def _centred(block: Block, taken: float) -> float:
    return (_height(block) - taken) / 2
