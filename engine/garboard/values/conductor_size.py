"""A conductor's size as written: AWG, SAE or metric, three systems that are kept apart.

A size that does not name its system is refused ("12 gauge" may be either of two), and so is one
that is not on its list: a metric size is a name tied to a greatest resistance, not a measured area.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from garboard.errors import ReadingError
from garboard.values.number_text import cleaned
from garboard.values.rounding import rounded
from garboard.values.size_lists import (
    AWG_NUMBERS,
    CIRCULAR_MIL_MM2,
    METRIC_SIZES,
    SAE_CIRCULAR_MILS,
    THINNEST_AWG,
    awg_area_mm2,
)

__all__ = [
    "AWG_NUMBERS", "CIRCULAR_MIL_MM2", "METRIC_SIZES", "SAE_CIRCULAR_MILS", "ConductorSize",
    "SizeSystem", "awg_area_mm2", "awg_names", "awg_size", "read_size",
    "sizes_above",
]

SizeSystem = Literal["AWG", "SAE", "mm2"]


@dataclass(frozen=True, slots=True)
class ConductorSize:
    """A size as written, its system, its name there (``2/0``, ``50``) and its area in mm²."""

    written: str
    system: SizeSystem
    name: str
    area_mm2: float

    def __str__(self) -> str:
        return self.written


def awg_names() -> tuple[str, ...]:
    """All AWG sizes that are read, thinnest first."""
    return tuple(AWG_NUMBERS)


def awg_size(name: str) -> ConductorSize:
    """The AWG size of a name such as ``2/0``; ``KeyError`` for a name that is none."""
    return ConductorSize(f"{name} AWG", "AWG", name, awg_area_mm2(AWG_NUMBERS[name]))


def sizes_above(size: ConductorSize) -> tuple[ConductorSize, ...]:
    """The larger sizes on the list that a size is of, the next one first."""
    names = {"AWG": tuple(AWG_NUMBERS), "SAE": tuple(SAE_CIRCULAR_MILS), "mm2": METRIC_SIZES}
    listed = names[size.system]
    return tuple(read_size(f"{name} {size.system}")
                 for name in listed[listed.index(size.name) + 1:])


_FORM: Final = "a size and its system: 2/0 AWG, 4 SAE or 50 mm2"
_SIZE: Final = re.compile(r"([0-9]+(?:\.[0-9]+|/0)?) ?(AWG|SAE|mm2|mm²)", re.ASCII)
_GAUGE: Final = re.compile(r"#? ?[0-9/]+ ?(?:ga|gauge|g|B&S)?\.?", re.IGNORECASE | re.ASCII)
_TURNED: Final = re.compile(r"(AWG|SAE) ?#? ?([0-9/]+)", re.ASCII | re.IGNORECASE)


def read_size(text: object) -> ConductorSize:
    """``2/0 AWG``, ``4 SAE``, ``50 mm2`` or ``50 mm²`` as a size; ``00 AWG`` is ``2/0 AWG``.

    Raises ``ReadingError``, for a size that is not on its list with the nearest ones.
    """
    if isinstance(text, str):
        return _size(text)
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        return _size(str(text))
    raise ReadingError("size-unreadable", found=type(text).__name__, expected=_FORM)


@lru_cache(maxsize=1024)
def _size(text: str) -> ConductorSize:
    clean = cleaned(text).strip()
    match = _SIZE.fullmatch(clean)
    if match is None:
        raise _unreadable(text, clean)
    number, word = match.groups()
    if word.startswith("mm") and "/" not in number:
        return _metric(text, number)
    if word.startswith("mm"):
        raise _unreadable(text, clean)
    name = _gauge_name(number)
    if word == "SAE":
        if name not in SAE_CIRCULAR_MILS:
            raise _not_listed(text, "SAE sizes", tuple(SAE_CIRCULAR_MILS), name, "SAE")
        return ConductorSize(text.strip(), "SAE", name,
                             rounded(SAE_CIRCULAR_MILS[name] * CIRCULAR_MIL_MM2))
    if name not in AWG_NUMBERS:
        raise _not_listed(text, f"AWG sizes from {THINNEST_AWG} to 4/0", awg_names(), name, "AWG")
    return ConductorSize(text.strip(), "AWG", name, awg_area_mm2(AWG_NUMBERS[name]))


def _gauge_name(number: str) -> str:
    """``0`` and ``00`` as ``1/0`` and ``2/0``; anything else as it is."""
    return f"{len(number)}/0" if set(number) == {"0"} else number


def _metric(text: str, number: str) -> ConductorSize:
    area = float(number)
    for name in METRIC_SIZES:
        if float(name) == area:
            return ConductorSize(text.strip(), "mm2", name, area)
    smaller = [name for name in METRIC_SIZES if float(name) < area]
    larger = [name for name in METRIC_SIZES if float(name) > area]
    near = " and ".join(f"{name} mm2" for name in (*smaller[-1:], *larger[:1]))
    raise ReadingError("size-unknown", found=repr(text), expected="a nominal size of IEC 60228",
                       hint=f"the nearest nominal sizes are {near}; where the area was measured, "
                            "find the size printed on the jacket")


def _not_listed(text: str, what: str, names: tuple[str, ...], name: str,
                system: str) -> ReadingError:
    place = _gauge_number(name)
    ranked = sorted(names, key=lambda each: (abs(_gauge_number(each) - place),
                                             _gauge_number(each)))
    near = " and ".join(f"{each} {system}" for each in ranked[:2])
    return ReadingError("size-unknown", found=repr(text), expected=f"one of the {what}",
                        hint=f"the nearest sizes are {near}")


def _gauge_number(name: str) -> float:
    """Where a gauge stands among gauges: 2/0 at -1, 4/0 at -3."""
    return 1.0 - float(name[:-2]) if name.endswith("/0") else float(name)


def _unreadable(text: str, clean: str) -> ReadingError:
    turned = _TURNED.fullmatch(clean)
    if turned is not None:
        return ReadingError("size-unreadable", found=repr(text), expected=_FORM,
                            hint=f"write {turned[2]} {turned[1].upper()}")
    if "," in clean:
        return ReadingError("unit-comma", found=repr(text), expected=_FORM,
                            hint=f"the decimal sign is a point: write {clean.replace(',', '.')}",
                            offset=text.index(","))
    if _GAUGE.fullmatch(clean):
        return ReadingError("size-system-missing", found=repr(text), expected=_FORM,
                            hint="AWG and SAE sizes of one number differ in area by up to 11 %, "
                                 "and a bare number may be mm2; the jacket names the system")
    hint = ""
    if clean.casefold().endswith(("kcmil", "mcm", "cmil")):
        hint = "sizes in circular mils are not read; give the resistance of the conductor instead"
    elif re.fullmatch(r"[0-9.]+ ?(mm|sq ?mm|mm\^2|MM2|qmm)", clean):
        hint = "write the area as mm2"
    elif clean.casefold().endswith(("awg", "sae")) and clean[-3:] not in ("AWG", "SAE"):
        hint = f"write {clean[:-3]}{clean[-3:].upper()}"
    return ReadingError("size-unreadable", found=repr(text), expected=_FORM, hint=hint)
