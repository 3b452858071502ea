"""A text as one number and what stands after it: the strict form, and look-alike characters.

The form is: digits with at most one point that stands between digits, an optional sign, an optional
power of ten (``1.5e-3``), then at most one space, then the unit.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final, NamedTuple

from garboard.errors import ReadingError

#: A figure with its unit is short; a longer text is refused before anything looks at it.
MAX_TEXT: Final = 80
_MAX_POWER_DIGITS: Final = 3

#: Characters that look like the ones of a unit or number and are read as them, one for one.
LOOK_ALIKES: Final = str.maketrans({
    "\u03bc": "µ",   # Greek mu -> micro sign
    "\u2126": "Ω",   # ohm sign -> Greek omega
    "\u212a": "K",   # kelvin sign
    "\u2212": "-",   # minus sign
    "\u00a0": " ", "\u202f": " ", "\u2007": " ", "\u2009": " ",  # spaces that do not break
    "\u00ba": "°", "\u02da": "°",   # ordinal indicator, ring above
    "\u22c5": "·", "\u2219": "·", "\u2022": "·",   # dot operator, bullets
})

_NUMBER = r"[+-]?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?"
_STRICT: Final = re.compile(rf"({_NUMBER})(?: ?([^\s0-9.,_/+-].*))?", re.ASCII)


class NumberText(NamedTuple):
    """The exact number, the text of the unit (may be empty), and where the unit starts."""

    number: Fraction
    unit: str
    unit_offset: int


def cleaned(text: str) -> str:
    """``text`` with look-alikes replaced, its length unchanged; too long a text is refused."""
    if len(text) > MAX_TEXT:
        raise ReadingError(
            "text-too-long", found=f"{len(text)} characters, starting {text[:20]!r}",
            expected=f"at most {MAX_TEXT} characters",
            hint="a figure is one number and one unit; remarks belong in a note", offset=MAX_TEXT)
    return text.translate(LOOK_ALIKES)


def split_number(text: str) -> NumberText | None:
    """A cleaned text in the strict form, taken apart; ``None`` if it does not have that form."""
    start = len(text) - len(text.lstrip())
    match = _STRICT.fullmatch(text.strip())
    if match is None:
        return None
    number, unit = match[1], match[2] or ""
    power = re.split("[eE]", number)[1:]
    if power and len(power[0].lstrip("+-")) > _MAX_POWER_DIGITS:
        raise out_of_range(number, start)
    return NumberText(Fraction(number), unit, start + (match.start(2) if unit else match.end()))


def out_of_range(found: str, offset: int = 0) -> ReadingError:
    """The refusal of a number too large or too small to calculate with."""
    return ReadingError("number-out-of-range", found=found, offset=offset,
                        expected="zero, or a size between 1e-100 and 1e100",
                        hint="check the power of ten and the prefix of the unit")
