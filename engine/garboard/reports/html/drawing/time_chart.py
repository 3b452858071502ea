"""How long a protective device takes against how long a conductor withstands it, over the current.

Both axes are logarithmic and the same for every conductor, so that charts can be compared.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from garboard.reports.html.drawing.svg import element, line, path, words

_CURRENTS: Final = (10.0, 1e5)
_TIMES: Final = (1e-4, 1e4)
_LEFT, _TOP, _WIDTH, _HEIGHT = 56.0, 8.0, 236.0, 170.0
_MARGIN: Final = 24.0
_TICKS_A: Final = ((10.0, "10 A"), (100.0, "100 A"), (1e3, "1 kA"), (1e4, "10 kA"), (1e5, "100 kA"))
_TICKS_S: Final = ((1e-4, "0.1 ms"), (1e-2, "10 ms"), (1.0, "1 s"), (100.0, "100 s"),
                   (1e4, "10 000 s"))
_HALF: Final = 4.0


@dataclass(frozen=True, slots=True)
class OpeningPoint:
    """A device carries a current (A) for a time (s), or has opened it within that time."""

    current: float
    time: float
    opened: bool


@dataclass(frozen=True, slots=True)
class TimeChart:
    """What is drawn for a conductor: energies in A²s, currents in A, times in s, each low to high.

    ``longest`` is the time up to which the withstand holds; ``let_through`` may be missing.
    """

    withstand: tuple[float, float]
    longest: float
    fault: tuple[float, float]
    clearing: tuple[float, float] | None
    let_through: float | None
    points: Sequence[OpeningPoint]


def time_chart(chart: TimeChart, label: str) -> str:
    """The drawing; ``label`` says in words what it shows, for those who cannot see it."""
    return element(
        "svg", *_frame(), *_withstand(chart), *_let_through(chart), *_fault(chart),
        *map(_point, chart.points), class_="times", role="img", aria_label=label,
        viewBox=f"0 0 {_LEFT + _WIDTH + _MARGIN:.0f} {_TOP + _HEIGHT + _MARGIN:.0f}",
        width=f"{_LEFT + _WIDTH + _MARGIN:.0f}", height=f"{_TOP + _HEIGHT + _MARGIN:.0f}")


def _frame() -> Iterator[str]:
    bottom, right = _TOP + _HEIGHT, _LEFT + _WIDTH
    for current, text in _TICKS_A:
        yield line(_x(current), _TOP, _x(current), bottom, "grid")
        yield words(text, _x(current), bottom + 14, "detail", "middle")
    for time, text in _TICKS_S:
        yield line(_LEFT, _y(time), right, _y(time), "grid")
        yield words(text, _LEFT - 4, _y(time) + 3.5, "detail", "end")
    yield line(_LEFT, bottom, right, bottom, "axis")
    yield line(_LEFT, _TOP, _LEFT, bottom, "axis")


def _withstand(chart: TimeChart) -> Iterator[str]:
    """The least the conductor withstands as a full line, the most as a dashed one."""
    low, high = chart.withstand
    yield from _energy(low, chart.longest, "withstands")
    if math.isfinite(high) and high != low:
        yield from _energy(high, chart.longest, "withstands most")


def _let_through(chart: TimeChart) -> Iterator[str]:
    if chart.let_through is not None:
        yield from _energy(chart.let_through, chart.longest, "passes")


def _energy(energy: float, longest: float, class_: str) -> Iterator[str]:
    """The line I² t = energy within the frame, up to a longest time."""
    if energy <= 0:
        return
    start = max(_CURRENTS[0], math.sqrt(energy / min(longest, _TIMES[1])))
    end = min(_CURRENTS[1], math.sqrt(energy / _TIMES[0]))
    if start < end:
        yield line(_x(start), _y(energy / start ** 2), _x(end), _y(energy / end ** 2), class_)


def _fault(chart: TimeChart) -> Iterator[str]:
    """The largest fault current as a band, and how long it flows as a bar at its upper end."""
    low, high = chart.fault
    left, right = _x(low), _x(high)
    yield element("rect", x=left, y=_TOP, width=max(right - left, 0.8), height=_HEIGHT,
                  class_="open")
    if chart.clearing is not None:
        least, most = (_y(each) for each in chart.clearing)
        yield line(right, least, right, most, "flows")
        yield line(right - _HALF, most, right + _HALF, most, "flows")


def _point(point: OpeningPoint) -> str:
    """A triangle that points down where the device has opened, up where it still carries."""
    x, y = _x(point.current), _y(point.time)
    way = _HALF if point.opened else -_HALF
    return path(f"M{x - _HALF:.1f} {y - way:.1f}h{2 * _HALF:.1f}L{x:.1f} {y + way:.1f}z",
                "opened" if point.opened else "carries")


def _x(current: float) -> float:
    return _LEFT + _WIDTH * _share(current, *_CURRENTS)


def _y(time: float) -> float:
    return _TOP + _HEIGHT * (1 - _share(time, *_TIMES))


def _share(value: float, low: float, high: float) -> float:
    """Where a value lies between the ends of a logarithmic axis, 0 to 1."""
    if value <= low:
        return 0.0
    return 1.0 if value >= high else math.log(value / low) / math.log(high / low)
