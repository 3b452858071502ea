"""An expected figure with its tolerance, held against the figure that came out."""

from __future__ import annotations

from dataclasses import dataclass

from garboard.errors import ReadingError
from garboard.expressions import NameInfo
from garboard.values import Bounds, Unknown
from garboard.values.units import format_value, read_number, read_quantity

NOT_KNOWN = "not known"
_WITHIN = " within "


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a figure must be: from ``low`` to ``high`` (ends that are bounds apart), or a word."""

    low: tuple[float, float] | None
    high: tuple[float, float] | None
    word: str | None
    dimension: str | None

    def met_by(self, value: object) -> bool:
        """Whether a value is what is wanted."""
        if self.low is None or self.high is None:
            return said(value, self.dimension) == self.word
        ends = (value.lo, value.hi) if isinstance(value, Bounds) else (value, value)
        return all(isinstance(end, (int, float)) and not isinstance(end, bool)
                   and least <= end <= most
                   for end, (least, most) in zip(ends, (self.low, self.high), strict=True))


def said(value: object, dimension: str | None) -> str:
    """A value as a person writes it."""
    if isinstance(value, Unknown):
        return NOT_KNOWN
    if isinstance(value, bool):
        return "yes" if value else "no"
    return format_value(value, dimension) if dimension else str(value)


def read_wanted(text: str, info: NameInfo) -> Wanted:
    """What a text such as ``28.67 kA within 0.1 %`` asks of a figure; ReadingError."""
    if text.strip() == NOT_KNOWN:
        return Wanted(None, None, NOT_KNOWN, info.dimension)
    if info.kind == "number" and info.dimension is not None:
        return _number(text, info.dimension)
    if info.kind in ("truth", "text", "count", "date"):
        return Wanted(None, None, text.strip(), None)
    raise ReadingError("case-figure-unreadable", text, "a figure that is a number, a count, a "
                       "text, or yes and no")


def _number(text: str, dimension: str) -> Wanted:
    figure, within, tolerance = text.partition(_WITHIN)
    if not within:
        raise ReadingError("case-figure-unreadable", text, "a figure and its tolerance, such as "
                           "28.67 kA within 0.1 %", offset=len(text.rstrip()))
    value = read_quantity(figure.strip(), dimension)
    ends = (value.lo, value.hi) if isinstance(value, Bounds) else (value, value)
    if tolerance.strip().endswith("%"):
        share = read_number(tolerance.strip(), "ratio")
        reach = [abs(end) * share for end in ends]
    else:
        of = "temperature_difference" if dimension == "temperature" else dimension
        reach = [read_number(tolerance.strip(), of)] * 2
    low, high = ((end - apart, end + apart) if abs(end) != float("inf") else (end, end)
                 for end, apart in zip(ends, reach, strict=True))
    return Wanted(low, high, None, dimension)
