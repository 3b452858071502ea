"""The wiring as trees of bars: buses and shared terminals, with lanes that lead away from them.

A *bar* is a bus, or a terminal where several runs meet. A *lane* leads from a bar through
conductors, devices and switches to something at its end: a battery, source or load, another bar of
the same tree, or a name where the drawing leaves off. Batteries in series stand in one lane.
"""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass, field

from garboard.reports.html.drawing.wiring import (
    BATTERY,
    LOAD,
    NEGATIVE,
    POSITIVE,
    SOURCE,
    Part,
    Run,
    Wiring,
)


@dataclass(frozen=True, slots=True)
class End:
    """What stands at the end of a lane: a thing, a bar by its node, or only a name."""

    node: str
    thing: Part | None = None
    named: bool = False

    @property
    def on_the_left(self) -> bool:
        """Whether it gives current rather than takes it."""
        return self.thing is not None and self.thing.subject in (BATTERY, SOURCE)


@dataclass(frozen=True, slots=True)
class Lane:
    """The parts on the way from a bar to an end, in that order."""

    parts: tuple[Part, ...]
    end: End


@dataclass(slots=True)
class Bar:
    """A bar, its lanes to what is no bar, and its lanes to bars further from the root.

    ``shown`` is false for a point on a lane between two things where no bar is.
    """

    node: str
    thing: Part | None
    shown: bool = True
    lanes: list[Lane] = field(default_factory=list)
    branches: list[tuple[list[Lane], Bar]] = field(default_factory=list)


def trees_of(wiring: Wiring) -> list[Bar]:
    """The roots of the trees that together hold every run, the one with most batteries first."""
    return _Growing(wiring).roots()


class _Growing:
    def __init__(self, wiring: Wiring) -> None:
        self._wiring = wiring
        self._at: dict[str, list[Run]] = {}
        for run in wiring.runs:
            for node in dict.fromkeys((run.start, run.end)):
                self._at.setdefault(node, []).append(run)
        self._used: set[str] = set()
        self._drawn: set[str] = set()
        self._bars: dict[str, Bar] = {}

    def roots(self) -> list[Bar]:
        order = {node: number for number, node in enumerate(self._at)}
        bars = sorted(filter(self._is_bar, self._at), key=lambda node: (
            self._is_negative(node), -self._batteries(node), not self._wiring.is_bus(node),
            order[node]))
        roots = [self._grow(node) for node in bars if node not in self._bars]
        return [*roots, *(self._lone(run) for run in self._wiring.runs if run.id not in self._used)]

    def _is_bar(self, node: str) -> bool:
        return self._wiring.is_bus(node) or len(self._at[node]) > 1

    def _is_negative(self, node: str) -> bool:
        return node.endswith(f".{NEGATIVE}") or all(
            run.away_from(node)[0].endswith(f".{NEGATIVE}") for run in self._at[node])

    def _batteries(self, node: str) -> int:
        others = [run.away_from(node)[0] for run in self._at[node]]
        return sum(other.endswith(f".{POSITIVE}") and self._subject(other) == BATTERY
                   for other in [node, *others])

    def _subject(self, node: str) -> str:
        thing = self._wiring.thing_at(node)
        return "" if thing is None else thing.subject

    def _grow(self, root: str) -> Bar:
        """The tree from one bar on, nearest bars first."""
        self._bars[root] = first = self._bar(root)
        waiting = deque([first])
        while waiting:
            bar = waiting.popleft()
            branches: dict[str, tuple[list[Lane], Bar]] = {}
            for run in self._at.get(bar.node, ()):
                if run.id in self._used:
                    continue
                self._used.add(run.id)
                other, parts = run.away_from(bar.node)
                if not self._is_bar(other):
                    bar.lanes.append(self._to_the_end(other, parts))
                elif other in branches:
                    branches[other][0].append(Lane(parts, End(other)))
                elif other in self._bars:
                    self._tie(bar, parts, self._bars[other])
                else:
                    self._bars[other] = child = self._bar(other)
                    branches[other] = ([Lane(parts, End(other))], child)
                    waiting.append(child)
            bar.branches = list(branches.values())
        return first

    def _bar(self, node: str) -> Bar:
        bar = Bar(node, self._wiring.thing_at(node))
        if not self._wiring.is_bus(node):
            bar.lanes.append(Lane((), self._end(node)))
        return bar

    def _tie(self, bar: Bar, parts: tuple[Part, ...], other: Bar) -> None:
        """A way between two bars that are drawn already: named at both ends."""
        bar.lanes.append(Lane(parts, End(other.node, other.thing, named=True)))
        if other is not bar:
            other.lanes.append(Lane((), End(bar.node, bar.thing, named=True)))

    def _to_the_end(self, node: str, parts: tuple[Part, ...]) -> Lane:
        """The lane to an end, on through batteries in series."""
        end = self._end(node)
        while not end.named and end.thing is not None and end.thing.subject == BATTERY:
            beyond = self._in_series(end)
            if beyond is None:
                break
            run, following = beyond
            self._used.add(run.id)
            parts = (*parts, end.thing, *run.away_from(self._other_pole(end))[1])
            end = self._end(following)
        return Lane(parts, end)

    def _in_series(self, end: End) -> tuple[Run, str] | None:
        """The one run from the other pole of a battery, if it leads to another battery."""
        pole = self._other_pole(end)
        runs = self._at.get(pole, [])
        if len(runs) != 1 or runs[0].id in self._used:
            return None
        following = runs[0].away_from(pole)[0]
        if self._subject(following) != BATTERY or self._is_bar(following) or (
                following.partition(".")[0] in self._drawn):
            return None
        return runs[0], following

    def _other_pole(self, end: End) -> str:
        identity, _, pole = end.node.partition(".")
        return f"{identity}.{NEGATIVE if pole == POSITIVE else POSITIVE}"

    def _end(self, node: str) -> End:
        """The thing at an end the first time, its name the next: its other pole is elsewhere."""
        thing = self._wiring.thing_at(node)
        identity = node.partition(".")[0]
        if thing is None or identity in self._drawn or self._minus_of_more(node):
            return End(node, thing, named=True)
        self._drawn.add(identity)
        return End(node, thing)

    def _minus_of_more(self, node: str) -> bool:
        """Whether an end is the negative pole of something whose positive pole is drawn too."""
        identity, _, pole = node.partition(".")
        return pole == NEGATIVE and f"{identity}.{POSITIVE}" in self._at

    def _lone(self, run: Run) -> Bar:
        """A run between two things, without any bar."""
        self._used.add(run.id)
        bar = Bar(run.start, None, shown=False)
        ends = [self._to_the_end(run.start, ()), self._to_the_end(run.end, run.parts)]
        if ends[0].end.thing is not None and ends[0].end.thing.subject == LOAD:
            ends.reverse()
        bar.lanes = ends
        return bar
