"""A measure: one number with a unit, or ``low .. high``."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, ClassVar, Literal

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.likely import LIKELY, likely_ends, likely_slip
from garboard.values import Bounds
from garboard.values.units import DIMENSIONS, read_quantity

Lowest = Literal["above zero", "zero", "any"]


@dataclass(frozen=True, slots=True, eq=False)
class Measure(LeafKind):
    """A quantity of the dimension ``of``; the value is a float in the canonical unit, or bounds.

    ``likely`` are the ends of what a survey ever meets there: outside is a warning with the likely
    slip, not an error.
    """

    of: str = ""
    lowest: Lowest = "above zero"
    likely: tuple[str, str] | None = None

    kind: ClassVar[FieldKind] = "number"
    spreads: ClassVar[bool] = True

    @property
    def dimension(self) -> str | None:
        return self.of

    @property
    def floor(self) -> tuple[float, bool] | None:
        return None if self.lowest == "any" else (0.0, self.lowest == "above zero")

    def read(self, written: object) -> float | Bounds:
        value = read_quantity(written, self.of)
        least = value.lo if isinstance(value, Bounds) else value
        if self.lowest == "any" or least > 0:
            return value
        if isinstance(value, Bounds) and least in (0, -math.inf):
            return self.cut_at_zero(value)
        if least == 0 and self.lowest == "zero":
            return value
        text = str(written)
        code, words = (("value-negative", "zero or more") if self.lowest == "zero"
                       else ("value-not-positive", "more than zero"))
        raise ReadingError(code, repr(text), words, offset=len(text) - len(text.lstrip()))

    def cut_at_zero(self, value: Bounds) -> Bounds:
        """The bounds without what lies below zero, where nothing below zero makes sense."""
        if self.lowest == "any" or value.lo >= 0:
            return value
        return Bounds(0.0, value.hi, value.nominal, basis=value.basis, causes=value.causes)

    def unlikely(self, written: object, value: object) -> str | None:
        ends = self.likely_range()
        if ends is None or not isinstance(value, float) or value == 0:
            return None
        low, high = likely_ends(ends, self.of)
        return None if low <= value <= high else likely_slip(str(written), self.of, (low, high))

    def likely_range(self) -> tuple[str, str] | None:
        return self.likely or LIKELY.get(self.of)

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": "[0-9]", "examples": [DIMENSIONS[self.of].example]}
