"""How a leaf is written: an example that reads, and the words that lead up to it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from garboard.record.leaves import (
    Choice,
    Count,
    Day,
    Flag,
    Identity,
    LeafKind,
    Measure,
    RatedVoltage,
    Reference,
    References,
    Size,
    Terminal,
    Window,
    Words,
)
from garboard.values.units import DIMENSIONS

#: Examples of a measure by its dimension; the first that a survey may meet there is shown.
_MEASURES: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType({
    "voltage": ("14.4 V", "300 mV"), "current": ("250 A", "20 kA", "2 A"),
    "resistance": ("2.1 mΩ",), "length": ("0.35 m", "10.5 m"), "temperature": ("45 °C", "105 °C"),
    "time": ("10 s", "5 ms", "2 h"), "ratio": ("80 %", "3 %"),
})
_WINDOWS: Final[Mapping[str, str]] = MappingProxyType({"voltage": "10.5 .. 15 V"})
_WORDS: Final = "as read aboard"


def first_id(subject: str) -> str:
    """The id that the sheet gives the first thing of a subject."""
    return f"{subject.rpartition('.')[2].replace('_', '-')}-1"


def example_of(leaf: LeafKind, subject: str, *, begins: bool = True) -> str:
    """What could stand there, as written; ``begins``: a run begins at this terminal."""
    if isinstance(leaf, Measure):
        tried = (*_MEASURES.get(leaf.of, ()), DIMENSIONS[leaf.of].example, *(leaf.likely or ()))
        fit = (each for each in tried if leaf.unlikely(each, leaf.read(each)) is None)
        return str(next(fit))
    if isinstance(leaf, Window):
        return _WINDOWS.get(leaf.of, f"0 .. 45 {DIMENSIONS[leaf.of].unit}")
    if isinstance(leaf, Identity):
        return first_id(subject)
    if isinstance(leaf, Terminal):
        return f"{first_id('battery')}.positive" if begins else first_id("bus")
    if isinstance(leaf, Reference):
        return first_id(leaf.to[0])
    if isinstance(leaf, References):
        return f"[{first_id(leaf.to[0])}]"
    if isinstance(leaf, Choice):
        return leaf.among[0]
    if isinstance(leaf, Count):
        return str(leaf.least if leaf.among is None else leaf.among[0])
    return _by_kind(leaf)


def how_to_write(leaf: LeafKind, example: str) -> str:
    """What is to be written, in words that end with the example or the choices."""
    if isinstance(leaf, Choice):
        return f"one of {', '.join(leaf.among)}"
    if isinstance(leaf, Count) and leaf.among is not None:
        return f"one of {', '.join(map(str, leaf.among))}"
    if isinstance(leaf, Flag):
        return "yes or no"
    if isinstance(leaf, Words) and not leaf.pattern:
        return "in words"
    if isinstance(leaf, Count):
        return "a whole number" + (f", {example} or more" if leaf.least > 1 else "")
    return f"such as {example}"


def _by_kind(leaf: LeafKind) -> str:
    if isinstance(leaf, Words):
        return leaf.example or _WORDS
    if isinstance(leaf, Flag):
        return "yes"
    if isinstance(leaf, Day):
        return "2026-04-18"
    if isinstance(leaf, Size):
        return "50 mm2"
    if isinstance(leaf, RatedVoltage):
        return "160 V DC"
    raise TypeError(f"no example for {type(leaf).__name__}")
