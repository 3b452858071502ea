"""A small bar that shows a figure with its bounds against its limit, and on which side to be."""

from __future__ import annotations

import math
from typing import Final

from garboard.reports.html.drawing.scale import Scale, around
from garboard.reports.html.drawing.svg import element, line, number, path
from garboard.values import Bounds

WIDTH: Final = 240
HEIGHT: Final = 30
_MIDDLE: Final = 13
_THICK: Final = 4
_SIDE: Final = 6
_AT_LEAST: Final = (">=", ">")

Ends = tuple[float, float, float | None]


def limit_bar(sides: tuple[object, str, object]) -> str:
    """The bar of ``figure relation limit``; empty where the figure has no place on a scale.

    The permitted side is the tinted one. What uncertain ends leave open is hatched.
    """
    left, relation, right = sides
    figure, limit = _ends(left), _ends(right)
    if figure is None or limit is None:
        return ""
    scale = around([each for each in (*figure, *limit) if each is not None], _SIDE, WIDTH - _SIDE)
    drawn = [_permitted(scale, relation, limit),
             line(_SIDE, _MIDDLE, WIDTH - _SIDE, _MIDDLE, "axis"),
             _figure(scale, figure), _limit(scale, limit)]
    return element("svg", *drawn, class_="bar", viewBox=f"0 0 {WIDTH} {HEIGHT}", width=WIDTH,
                   height=HEIGHT, aria_hidden="true")


def _permitted(scale: Scale, relation: str, limit: Ends) -> str:
    """The side the figure may be on, whatever the limit is within its bounds."""
    if relation in _AT_LEAST:
        start, end = scale(limit[1]), float(WIDTH - _SIDE)
    else:
        start, end = float(_SIDE), scale(limit[0])
    return element("rect", x=start, y=2, width=max(end - start, 0), height=HEIGHT - 8,
                   class_="permitted")


def _figure(scale: Scale, figure: Ends) -> str:
    low, high, nominal = figure
    zero = scale(0.0) if scale.low <= 0 <= scale.high else float(_SIDE)
    start, end = scale(low), scale(high)
    drawn = [element("rect", x=min(zero, start), y=_MIDDLE - _THICK, width=abs(start - zero),
                     height=2 * _THICK, class_="found")]
    if end > start:
        drawn.append(element("rect", x=start, y=_MIDDLE - _THICK, width=end - start,
                             height=2 * _THICK, class_="open"))
    if not math.isfinite(high):
        drawn.append(path(f"M{number(end - 5)} {_MIDDLE - 7}l5 7l-5 7", "arrow"))
    at = scale(nominal) if nominal is not None else start if start == end else None
    if at is not None:
        drawn.append(line(at, _MIDDLE - 7, at, _MIDDLE + 7, "nominal"))
    return "".join(drawn)


def _limit(scale: Scale, limit: Ends) -> str:
    low, high, nominal = limit
    start, end = scale(low), scale(high)
    drawn = []
    if end > start:
        drawn.append(element("rect", x=start, y=HEIGHT - 6, width=end - start, height=5,
                             class_="open"))
    at = scale(nominal) if nominal is not None else (start + end) / 2
    drawn += [line(start, 1, start, HEIGHT - 1, "limit")]
    if end > start:
        drawn += [line(end, 1, end, HEIGHT - 1, "limit")]
    drawn.append(path(f"M{number(at)} {HEIGHT - 7}l4 7h-8z", "pointer"))
    return "".join(drawn)


def _ends(value: object) -> Ends | None:
    if isinstance(value, Bounds):
        return value.lo, value.hi, value.nominal
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None
    return float(value), float(value), None
