"""A permitted range: from the lowest to the highest."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from garboard.record.field import Field, FieldKind
from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.likely import LIKELY, likely_ends
from garboard.values import Unknown
from garboard.values.units import DIMENSIONS, read_window


@dataclass(frozen=True, slots=True, eq=False)
class Window(LeafKind):
    """``low .. high``; a side left open (``.. 45 °C``) is not recorded, never "without limit".

    Besides the whole it gives the facts ``<name>.low`` and ``<name>.high``.
    """

    of: str = ""

    kind: ClassVar[FieldKind] = "window"

    @property
    def dimension(self) -> str | None:
        return self.of

    def read(self, written: object) -> tuple[float | None, float | None]:
        return read_window(written, self.of)

    def likely_range(self) -> tuple[str, str] | None:
        return LIKELY.get(self.of)

    def unlikely(self, written: object, value: object) -> str | None:
        ends = self.likely_range()
        if ends is None or not isinstance(value, tuple):
            return None
        low, high = likely_ends(ends, self.of)
        if all(side is None or low <= side <= high for side in value):
            return None
        return "check the numbers and their unit"

    def parts(self, name: str, value: object) -> tuple[tuple[str, object], ...]:
        whole = (name, value)
        if isinstance(value, Unknown):
            return (whole, (f"{name}.low", value), (f"{name}.high", value))
        assert isinstance(value, tuple)
        ends = zip(("low", "high"), value, strict=True)
        return (whole, *((f"{name}.{end}", side) for end, side in ends if side is not None))

    def fields(self, name: str) -> tuple[Field, ...]:
        ends = tuple(Field(f"{name}.{end}", "number", self.of, None, f"{self.meaning}: {words}")
                     for end, words in (("low", "the lowest"), ("high", "the highest")))
        return (Field(name, "window", self.of, None, self.meaning), *ends, *self.extra_fields(name))

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": r"\.\.",
                "examples": [f"0 .. 45 {DIMENSIONS[self.of].unit}"]}
