"""The trees of the wiring cut into sheets that fit a page, with names where they go on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from garboard.reports.html.drawing.tree import Bar, End, Lane, trees_of
from garboard.reports.html.drawing.wiring import Wiring

#: Lanes one above the other, and bars one behind the other, on a sheet.
MOST_ROWS: Final = 14
MOST_BARS: Final = 4


@dataclass(slots=True)
class Block:
    """A bar on a sheet with the lanes to its left and right; a branch to the right is a block."""

    bar: Bar
    feeds: list[Lane] = field(default_factory=list)
    left: list[Lane] = field(default_factory=list)
    right: list[Lane] = field(default_factory=list)
    branches: list[Block] = field(default_factory=list)

    @property
    def rows(self) -> int:
        """How many lanes it takes one above the other."""
        return max(len(self.feeds) + len(self.left),
                   len(self.right) + sum(each.rows for each in self.branches), 1)

    @property
    def depth(self) -> int:
        """How many bars stand one behind the other."""
        return 1 + max((each.depth for each in self.branches), default=0)


@dataclass(slots=True)
class Sheet:
    """Blocks that are drawn one above the other."""

    blocks: list[Block]

    @property
    def rows(self) -> int:
        return sum(block.rows for block in self.blocks)


def sheets_of(wiring: Wiring) -> list[Sheet]:
    """The sheets: small trees share one, large ones are cut where a bar feeds another."""
    sheets: list[Sheet] = []
    for root in trees_of(wiring):
        for block in _cut(root):
            if sheets and sheets[-1].rows + block.rows <= MOST_ROWS:
                sheets[-1].blocks.append(block)
            else:
                sheets.append(Sheet([block]))
    return sheets


def _cut(root: Bar) -> Iterator[Block]:
    """Blocks of one tree, that of the root first, none larger than a sheet."""
    order: list[tuple[Bar, Bar | None, list[Lane]]] = [(root, None, [])]
    for bar, _, _ in order:
        order += [(child, bar, feeds) for feeds, child in bar.branches]
    blocks: dict[int, Block] = {}
    apart: set[int] = set()
    for bar, _, feeds in reversed(order):
        blocks[id(bar)] = block = Block(bar, feeds)
        for lane in bar.lanes:
            (block.left if lane.end.on_the_left else block.right).append(lane)
        block.branches = [blocks[id(child)] for _, child in bar.branches]
        for child in sorted(block.branches, key=lambda each: -each.rows):
            if child.depth >= MOST_BARS or block.rows > MOST_ROWS or child.rows > MOST_ROWS:
                _take_off(block, child)
                apart.add(id(child.bar))
    for bar, parent, _ in order:
        if parent is None or id(bar) in apart:
            block = blocks[id(bar)]
            if parent is not None:
                block.feeds = [Lane((), End(parent.node, parent.thing, named=True))]
            yield from _pieces(block)


def _take_off(block: Block, child: Block) -> None:
    """Draw a branch elsewhere: here its feeds end in its name."""
    block.branches.remove(child)
    named = End(child.bar.node, child.bar.thing, named=True)
    block.right += [Lane(feed.parts, named) for feed in child.feeds]


def _pieces(block: Block) -> Iterator[Block]:
    """A block in pieces of a sheet each, where it has more lanes than that."""
    if block.rows <= MOST_ROWS:
        yield block
        return
    left, right = [*block.feeds, *block.left], block.right
    before = Lane((), End(block.bar.node, block.bar.thing, named=True))
    yield Block(block.bar, [], left[:MOST_ROWS], right[:MOST_ROWS])
    step = MOST_ROWS - 1
    for start in range(MOST_ROWS, max(len(left), len(right)), step):
        rows = slice(start, start + step)
        yield Block(block.bar, [before], left[rows], right[rows])
