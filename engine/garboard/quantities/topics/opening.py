"""How long a device takes to open: what its standard says for certain, and what follows from it.

Standards give a few points only: a current that a device must carry for a time, a current at which
it must have opened within a time. Between them nothing is known of a device whose curve is not on
record, and nothing is interpolated. Only points that were read or reprinted are used; those that
rest on memory (gG, gPV, the strip and blade fuses of road vehicles) are not, for a wrong one
would say that a fault is cleared. Arcs are not covered.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from garboard.quantities.declaration import Figure, cite, quantity
from garboard.quantities.spans import low_end, unrecorded
from garboard.quantities.table import table
from garboard.values import OUTSIDE_METHOD, Number, Unknown, quotient

_POINTS = cite("UL 248-14, UL 248-2 and the UL 248 series (as reprinted)", "reprinted")
#: Tables of gates by the standard they are of; of carrying, for every UL 248 part but 14.
_GATES: Final = {"14": "opening-gates-ul248-14", "2": "opening-gates-ul248-2"}
_CARRYING: Final = "carrying-ul248"
_PART: Final = re.compile(r"\bUL\s*248-(\d+)(?!\d)")
_WRITTEN: Final = re.compile(r"(\S+) A (carried for|opened within) (\S+) s")


class Point(NamedTuple):
    """At ``current`` A the device has opened within ``time`` s, or has carried it for so long."""

    current: float
    time: float
    opens: bool
    row: str

    def __str__(self) -> str:
        word = "opened within" if self.opens else "carried for"
        return f"{self.current:.12g} A {word} {self.time:.12g} s"


@quantity("device.opening_points", kind="text", needs={"rating": "rating", "standard": "standard"},
          method="The points of its standard: currents it carries for at least a time, and "
                 "currents at which it has opened within a time; each the multiple of its rating",
          citation=_POINTS,
          valid="supplementary fuses to UL 248-14 of 0 A to 30 A and 35 A to 60 A; fuses to "
                "UL 248-2 of 61 A to 1200 A; of other parts of UL 248 up to 600 A only what they "
                "carry; the points of other standards were not confirmed")
def opening_points(rating: Number, standard: str) -> Figure:
    points = points_of(rating, standard)
    if isinstance(points, Unknown):
        return Figure(points)
    return Figure("; ".join(map(str, points)), tuple(point.row for point in points))


def points_of(rating: Number, standard: str) -> tuple[Point, ...] | Unknown:
    """All confirmed points of a device, in order of current; unknown where there are none."""
    part = _PART.search(standard)
    if part is None:
        return Unknown.because(OUTSIDE_METHOD, detail=f"no confirmed gates of {standard}")
    if not isinstance(rating, float):
        return Unknown.because(OUTSIDE_METHOD, detail="its rating is not one figure")
    names = [] if part[1] == "14" else [(_CARRYING, False)]
    names += [(_GATES[part[1]], True)] if part[1] in _GATES else []
    points = [point for name, opens in names for point in _read(name, rating, opens)]
    if not points:
        return Unknown.because(OUTSIDE_METHOD, detail="the standard has no gates for this rating")
    return tuple(sorted(points))


def _read(name: str, rating: float, opens: bool) -> list[Point]:
    gates = table(name)
    return [Point(float(row) * rating, time, opens, gates.reference(row, column))
            for row, times in gates.rows.items() for column, time in times.items()
            if _covers(column, rating)]


def _covers(column: str, rating: float) -> bool:
    """Whether a rating belongs to a column such as ``35 to 60``; between columns there is none."""
    low, high = map(float, column.split(" to "))
    return low <= rating <= high and rating > 0


def opens_within(points: str, current: Number) -> float | Unknown:
    """The longest time in s in which a device of written points opens at no less than a current."""
    reached = [float(time) for at, word, time in _WRITTEN.findall(points)
               if word == "opened within" and float(at) <= low_end(current)]
    if reached:
        return min(reached)
    why = Unknown.because(OUTSIDE_METHOD, detail="no gate of its standard lies at or below the "
                                                 "current")
    return why.joined(current)


@quantity("device.opening_time", dimension="time",
          needs={"current": "smallest_fault_current", "points": "opening_points"},
          method="The longest time in which it has opened, by the gates of its standard that the "
                 "smallest fault current reaches",
          citation=_POINTS, version="2",
          valid="at 1.35 times the rating and more (UL 248-14) or 1.6 times (UL 248-2); the gates "
                "of other standards were not confirmed; arcs are not covered")
def opening_time(current: Number, points: str) -> Number:
    return _at_most(opens_within(points, current))


def _at_most(longest: float | Unknown) -> Number:
    if isinstance(longest, Unknown):
        return longest
    return unrecorded(0.0, longest, Unknown.because(
        OUTSIDE_METHOD, detail="the standard gives the longest time only"))


@quantity("conductor.clearing_time", dimension="time", unknowns="passed",
          needs={"passed": "let_through", "current": "largest_fault_current",
                 "points": "protecting_devices.opening_points"},
          method="How long its protection takes at the largest fault current through it: the "
                 "let-through over the square of that current (the virtual time of a fuse), where "
                 "one is declared; else, of a conductor that one device protects, the longest time "
                 "in which that has opened by its standard",
          citation=_POINTS,
          valid="let-through figures declared at no less than that current, or a standard with "
                "confirmed gates that it reaches; a dead short beyond the devices")
def clearing_time(passed: Number, current: Number,
                  points: tuple[str | Unknown, ...] | Unknown) -> Number:
    if isinstance(current, Unknown) or not isinstance(passed, Unknown):
        return quotient(quotient(passed, current), current)
    if isinstance(points, Unknown) or len(points) != 1:
        return passed
    [written] = points
    return passed.joined(written) if isinstance(written, Unknown) else _at_most(
        opens_within(written, current))


QUANTITIES = (opening_points, opening_time, clearing_time)
