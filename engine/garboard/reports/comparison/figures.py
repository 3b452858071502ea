"""Which figures moved, and how far: from what to what, the largest step of each kind first."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from garboard.reports.comparison.aboard import Aboard, Known
from garboard.values import Bounds, same_value
from garboard.values.units import System, format_value

#: The figures the whole question turns on; they are given first, whether they moved or not.
FIRST: Final = ("fault_current",)
_FIRST_THING: Final = "bus"
#: What the name of a figure begins with whose lower end counts.
_LEAST: Final = ("smallest_", "lowest_", "least_")


@dataclass(frozen=True, slots=True)
class Step:
    """A figure of one item before and after. ``share`` is after over before, where both are known.

    ``quantity`` is its full name (``bus.fault_current``); ``ends`` says which ends of bounds the
    share is of, where not both have a nominal figure.
    """

    item: str
    quantity: str
    before: Known
    after: Known
    share: float | None
    ends: str

    @property
    def size(self) -> float:
        """How far it moved: twice as much counts as much as half."""
        return 0.0 if self.share is None else abs(math.log(self.share))

    def words(self, system: System) -> str:
        """``from 5.14 kA to 28.67 kA (5.6 times)``."""
        text = f"from {_apart(self.before, system)} to {_apart(self.after, system)}"
        if self.share is None or math.isclose(self.share, 1, rel_tol=5e-4):
            return text
        times = (f"{self.share:.3g} times" if self.share >= 2 else
                 f"{(self.share - 1) * 100:+.3g} %")
        return f"{text} ({self.ends}{': ' if self.ends else ''}{times})"


def steps(before: Aboard, after: Aboard) -> tuple[Step, ...]:
    """The figures that are of both records and not the same, the bus's fault current first.

    Of a quantity the items stand together, the largest step first; those whose nominal figures are
    known come before those of which only the ends of bounds can be compared.
    """
    found = list(_steps(before, after))
    largest: dict[str, float] = {}
    for each in found:
        largest[each.quantity] = max(largest.get(each.quantity, 0.0), each.size)
    return tuple(sorted(found, key=lambda each: (
        not _comes_first(each), -largest[each.quantity], each.quantity, each.ends != "",
        -each.size, each.item)))


def _steps(before: Aboard, after: Aboard) -> Iterator[Step]:
    for key, one in before.figures.items():
        other = after.figures.get(key)
        if other is None or isinstance(one.value, bool) or one.quantity != other.quantity:
            continue
        step = Step(key.rpartition(".")[0], one.quantity, one, other,
                    *_share(one.value, other.value, _guards_a_least(one.quantity)))
        if not same_value(one.value, other.value) or _comes_first(step):
            yield step


def _comes_first(step: Step) -> bool:
    subject, _, name = step.quantity.partition(".")
    return subject == _FIRST_THING and name in FIRST


def _guards_a_least(quantity: str) -> bool:
    """Whether the lower end of a figure is the one that counts."""
    return quantity.partition(".")[2].startswith(_LEAST)


def _share(before: object, after: object, least: bool) -> tuple[float | None, str]:
    """After over before of the nominal figures, else of like ends; and which ends."""
    one, other = _nominal(before), _nominal(after)
    ends = ""
    if one is None or other is None:
        one, other = _end(before, least), _end(after, least)
        ends = "lower ends" if least else "upper ends"
    if one is None or other is None or not (0 < one < math.inf and 0 < other < math.inf):
        return None, ""
    return other / one, ends


def _nominal(value: object) -> float | None:
    """The nominal figure of bounds, or the exact figure."""
    return value.nominal if isinstance(value, Bounds) else (
        value if isinstance(value, float) else None)


def _end(value: object, least: bool) -> float | None:
    if isinstance(value, Bounds):
        return value.lo if least else value.hi
    return value if isinstance(value, float) else None


def _apart(known: Known, system: System) -> str:
    """A figure in a sentence; bounds in brackets, for they have a ``to`` of their own."""
    text = value_words(known, system)
    return f"({text})" if isinstance(known.value, Bounds) else text


def value_words(known: Known | None, system: System) -> str:
    """A figure for people."""
    if known is None:
        return "not there"
    if isinstance(known.value, bool):
        return "yes" if known.value else "no"
    if isinstance(known.value, (float, Bounds)):
        return format_value(known.value, known.dimension, system)
    return "not known"
