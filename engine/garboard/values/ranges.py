"""Texts with two ends: ``low .. high UNIT``, with either end left out, and figures with plus_minus.

One text form has two meanings, and the field decides which: a figure known only between two ends
(``read_quantity``), or a range in which something is permitted (``read_window``).
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal, NamedTuple

from garboard.errors import ReadingError
from garboard.values.bounds import TOLERANCE, Bounds
from garboard.values.dimensions import DIMENSIONS
from garboard.values.number_text import cleaned, split_number
from garboard.values.reading import as_text, exact_number, read_number
from garboard.values.reasons import WITHIN_UNCERTAINTY, Cause

_MARK: Final = ".."
_CACHED: Final = 4096
_FORM: Final = "low .. high UNIT, such as 0 .. 45 °C; one end may be left out"


class _Ends(NamedTuple):
    low: Fraction | None
    high: Fraction | None


def read_quantity(text: object, dimension: str, path: str = "") -> float | Bounds:
    """One figure, or a figure between two ends; an end left out is open.

    An open lower end stands at the least value nature allows, where there is one (a resistance is
    at least zero). ``path`` is the data path of the fact, named where the bounds leave a limit
    undecided. Raises ``ReadingError``.
    """
    written = as_text(text, dimension)
    if _MARK not in written:
        return read_number(written, dimension)
    ends = _ends(written, dimension)
    least = DIMENSIONS[dimension].least
    low = least if ends.low is None else ends.low
    lo = -math.inf if low is None else float(low)
    hi = math.inf if ends.high is None else float(ends.high)
    return lo if lo == hi else Bounds(lo, hi, basis=(TOLERANCE,), causes=_causes(path))


def read_window(text: object, dimension: str) -> tuple[float | None, float | None]:
    """A permitted range as its two ends; ``None`` is an end that is not limited."""
    written = as_text(text, dimension)
    if _MARK not in written:
        read_number(written, dimension)
        raise ReadingError("range-expected", found=repr(written), expected=_FORM,
                           hint=f"write .. {written.strip()} for an upper limit alone, "
                                f"{written.strip()} .. for a lower limit alone")
    ends = _ends(written, dimension)
    return (None if ends.low is None else float(ends.low),
            None if ends.high is None else float(ends.high))


@lru_cache(maxsize=_CACHED)
def _ends(text: str, dimension: str) -> _Ends:
    clean = cleaned(text)
    if "..." in clean or clean.count(_MARK) > 1:
        raise ReadingError("range-malformed", found=repr(text), expected=_FORM,
                           hint="two points stand between the two numbers",
                           offset=clean.index(_MARK))
    low_text, _, high_text = clean.partition(_MARK)
    if not low_text.strip() and not high_text.strip():
        raise ReadingError("range-malformed", found=repr(text), expected=_FORM,
                           hint="at least one end is written", offset=clean.index(_MARK))
    high_offset = len(low_text) + len(_MARK)
    high = _end(text, high_text, high_offset, dimension)
    low = _end(text, _with_unit_of(low_text, high_text), 0, dimension)
    if low is not None and high is not None and low > high:
        raise ReadingError("range-reversed", found=repr(text), expected=_FORM,
                           hint=f"write the lower end first: {high_text.strip()} .. "
                                f"{low_text.strip()}", offset=high_offset)
    return _Ends(low, high)


def _end(text: str, part: str, offset: int, dimension: str) -> Fraction | None:
    if not part.strip():
        return None
    try:
        return exact_number(part, dimension)
    except ReadingError as error:
        raise ReadingError(error.code, found=repr(text), expected=error.expected,
                           hint=error.hint, offset=error.offset + offset) from None


def _with_unit_of(low_text: str, high_text: str) -> str:
    """The lower end with the unit of the upper end, where it has none of its own."""
    low, high = split_number(low_text), split_number(high_text)
    if low is None or high is None or low.unit:
        return low_text
    return f"{low_text.rstrip()} {high.unit}"


def with_tolerance(text: object, plus_minus: object, dimension: str,
                   kind: Literal["tolerance", "uncertainty"], path: str) -> float | Bounds:
    """A figure with what it may be off, absolute or in per cent of the figure.

    For a ratio, per cent is absolute (``50 %`` with ``5 %`` is 45 % to 55 %); for a temperature it
    makes no sense. The ends are computed exactly, rounded once, and never lie below what nature
    allows. Errors in ``text`` are raised as by ``read_number``, before those in ``plus_minus``.
    """
    written = as_text(text, dimension)
    if _MARK in cleaned(written):
        raise ReadingError("tolerance-on-range", found=repr(written),
                           hint="give either the two ends or a figure with its plus_minus",
                           offset=written.index(_MARK))
    nominal = exact_number(written, dimension)
    reach = _reach(as_text(plus_minus, dimension), nominal, dimension)
    if reach < 0:
        raise ReadingError("tolerance-negative", found=repr(plus_minus),
                           hint="it applies both ways; write it without a sign")
    if reach == 0:
        return float(nominal)
    least = DIMENSIONS[dimension].least
    low = nominal - reach if least is None else max(nominal - reach, least)
    return Bounds(float(low), float(nominal + reach), float(nominal), basis=(kind,),
                  causes=_causes(path))


def _reach(plus_minus: str, nominal: Fraction, dimension: str) -> Fraction:
    clean = cleaned(plus_minus).strip()
    if clean.endswith("%") and dimension != "ratio":
        share = exact_number(plus_minus, "ratio")
        if dimension == "temperature":
            raise ReadingError("tolerance-percent", found=repr(plus_minus),
                               expected="a number of degrees, such as 2 °C",
                               hint="a share of a temperature depends on where its scale starts")
        return share * abs(nominal)
    signed = "temperature_difference" if dimension == "temperature" else dimension
    if clean.startswith("-") and DIMENSIONS[signed].least is not None:
        return -abs(exact_number(clean.removeprefix("-").lstrip(), signed))
    return exact_number(plus_minus, signed)


def _causes(path: str) -> tuple[Cause, ...]:
    return (Cause(WITHIN_UNCERTAINTY, path),)
