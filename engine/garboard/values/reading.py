"""A text a person wrote as a figure in the canonical unit: strict, exact, rounded once.

``1,5 V``, ``1_000 A``, ``12`` and ``12 24 V`` are refused, each with its own code and a hint. The
factor of the unit is an exact fraction, so ``7 in`` is exactly 0.1778 m and ``2.1 mΩ`` 0.0021 Ω.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal

from garboard.errors import ReadingError
from garboard.values.dimensions import DIMENSIONS
from garboard.values.number_slips import number_slip
from garboard.values.number_text import cleaned, out_of_range, split_number
from garboard.values.unit_slips import unit_slip
from garboard.values.unit_table import UNITS

_CACHED: Final = 8192
_LARGEST: Final = Fraction(10) ** 100
_SMALLEST: Final = 1 / _LARGEST

VoltageKind = Literal["DC", "AC"]


def read_number(text: object, dimension: str) -> float:
    """``text`` as a figure of ``dimension`` in its canonical unit.

    Anything but a text is refused too: a bare number has no unit. Raises ``ReadingError``.
    """
    return _number(as_text(text, dimension), dimension)


@lru_cache(maxsize=_CACHED)
def _number(text: str, dimension: str) -> float:
    return float(exact_number(text, dimension))


@lru_cache(maxsize=_CACHED)
def exact_number(text: str, dimension: str) -> Fraction:
    """As ``read_number``, before the rounding to a float."""
    clean = cleaned(text)
    parts = split_number(clean)
    unit = UNITS[dimension].get(parts.unit) if parts else None
    if parts is None or unit is None:
        raise _refusal(text, clean, dimension)
    value = unit.canonical(parts.number)
    if value and not _SMALLEST <= abs(value) <= _LARGEST:
        raise out_of_range(repr(text))
    least = DIMENSIONS[dimension].least
    if least is not None and value < least:
        raise ReadingError(
            "number-below-least", found=repr(text), offset=len(text) - len(text.lstrip()),
            expected=f"{DIMENSIONS[dimension].title} of at least "
                     f"{float(least):g} {DIMENSIONS[dimension].unit}",
            hint="check the sign")
    return value


def as_text(thing: object, dimension: str) -> str:
    """``thing`` if it is a text; else the refusal of a bare number or of something else."""
    if isinstance(thing, str):
        return thing
    if isinstance(thing, (int, float)) and not isinstance(thing, bool):
        raise _refusal(str(thing), str(thing), dimension)
    raise ReadingError("number-missing", found=type(thing).__name__,
                       expected=_expected(dimension), hint="write one number and its unit")


def _expected(dimension: str) -> str:
    wanted = DIMENSIONS[dimension]
    return f"{wanted.title}: one number and its unit, such as {wanted.example}"


def _refusal(text: str, clean: str, dimension: str) -> ReadingError:
    slip = number_slip(clean)
    if slip is not None:
        return ReadingError(slip.code, found=repr(text), expected=_expected(dimension),
                            hint=slip.hint, offset=slip.offset)
    parts = split_number(clean)
    if parts is None:
        return ReadingError("number-malformed", found=repr(text), expected=_expected(dimension),
                            hint="a number has digits, one point between them, then its unit")
    number = clean[:parts.unit_offset].strip()
    return unit_slip(text, number, parts.unit, parts.unit_offset, dimension)


def read_voltage_kind(text: object) -> tuple[float, VoltageKind]:
    """A voltage that says its kind, ``160 V DC`` or ``160 VDC``, as volts and kind."""
    return _voltage_kind(as_text(text, "voltage"))


@lru_cache(maxsize=_CACHED)
def _voltage_kind(text: str) -> tuple[float, VoltageKind]:
    clean = cleaned(text).rstrip()
    kinds: tuple[VoltageKind, ...] = ("DC", "AC")
    for kind in kinds:
        if clean.endswith(("V " + kind, "V" + kind)):
            return _number(clean[:-len(kind)].rstrip(), "voltage"), kind
    _number(text, "voltage")
    raise ReadingError(
        "voltage-kind-missing", found=repr(text), expected="a voltage and its kind, DC or AC",
        hint=f"write {clean.strip()} DC or {clean.strip()} AC: a device rated for one kind "
             "proves nothing for the other", offset=len(clean))
