"""Fault current at a device against what it can break, as a bar on one scale for all devices."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Final

from garboard.reports.html.drawing.scale import Scale
from garboard.reports.html.drawing.svg import element, line, number, path, words
from garboard.values import Bounds
from garboard.values.units import System, format_number

WIDTH: Final = 380
_HEIGHT: Final = 26
_LEFT: Final = 8
_STEPS: Final = 5
#: Beyond this many times the largest fault current a rating is drawn at the edge.
_MOST: Final = 2.0


def shared_scale(faults: Iterable[object], ratings: Iterable[object]) -> Scale:
    """From zero to the largest current, ratings far beyond all fault currents left outside."""
    largest = max(filter(math.isfinite, map(_high, faults)), default=0.0)
    rated = [each for each in map(_high, ratings) if math.isfinite(each)]
    high = max([largest, *(each for each in rated if not largest or each <= _MOST * largest)],
               default=0.0)
    return Scale(0.0, high * 1.06 or 1.0, _LEFT, WIDTH - _LEFT)


def axis(scale: Scale, system: System) -> str:
    """The scale with its figures, for the head of the chart."""
    steps = scale.steps(_STEPS)
    drawn = [line(_LEFT, 20, WIDTH - _LEFT, 20, "axis")]
    for step in steps:
        x = scale(step)
        anchor = "start" if step == 0 else "middle"
        drawn += [line(x, 16, x, 24, "axis"),
                  words(format_number(step, "current", system, 3), x, 12, "detail", anchor)]
    return _svg(drawn)


def fault_bar(scale: Scale, fault: object, rating: object) -> str:
    """One device: the fault current as a bar to its bounds, the rating as an upright post."""
    drawn = [line(scale(step), 0, scale(step), _HEIGHT, "grid") for step in scale.steps(_STEPS)]
    drawn.append(line(_LEFT, 13, WIDTH - _LEFT, 13, "axis"))
    if math.isfinite(_low(fault)):
        drawn += _fault(scale, fault)
    if math.isfinite(_high(rating)):
        drawn += _rating(scale, _low(rating), _high(rating))
    return _svg(drawn)


def _fault(scale: Scale, fault: object) -> list[str]:
    low, high = scale(_low(fault)), scale(_high(fault))
    drawn = [element("rect", x=_LEFT, y=8, width=low - _LEFT, height=10, class_="found"),
             element("rect", x=low, y=8, width=high - low, height=10, class_="open")]
    if not math.isfinite(_high(fault)):
        drawn.append(path(f"M{number(high - 5)} 5l6 8l-6 8", "arrow"))
    nominal = fault.nominal if isinstance(fault, Bounds) else _low(fault)
    if nominal is not None:
        drawn.append(line(scale(nominal), 5, scale(nominal), 21, "nominal"))
    return drawn


def _rating(scale: Scale, low: float, high: float) -> list[str]:
    x = scale(low)
    if low > scale.high:
        return [path(f"M{number(x - 7)} 3l7 10l-7 10", "rating")]
    drawn = [line(x, 1, x, _HEIGHT - 1, "rating"), path(f"M{number(x)} 1h-6M{number(x)} 25h-6",
                                                       "rating")]
    return drawn if high == low else [*drawn, line(scale(high), 1, scale(high), 25, "rating")]


def _svg(drawn: list[str]) -> str:
    return element("svg", *drawn, class_="bar", viewBox=f"0 0 {WIDTH} {_HEIGHT}", width=WIDTH,
                   height=_HEIGHT, aria_hidden="true")


def _low(value: object) -> float:
    if isinstance(value, Bounds):
        return value.lo
    return value if isinstance(value, float) else math.nan


def _high(value: object) -> float:
    if isinstance(value, Bounds):
        return value.hi
    return value if isinstance(value, float) else math.nan
