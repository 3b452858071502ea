"""A count: a whole number without a unit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind


@dataclass(frozen=True, slots=True, eq=False)
class Count(LeafKind):
    """A whole number, at least ``least``; only one of ``among`` where that is given."""

    least: int = 1
    among: tuple[int, ...] | None = None

    kind: ClassVar[FieldKind] = "count"

    @property
    def floor(self) -> tuple[float, bool] | None:
        return float(self.least), False

    def read(self, written: object) -> int:
        if not isinstance(written, int) or isinstance(written, bool):
            digits = isinstance(written, str) and written.strip().isdecimal()
            raise ReadingError("count-unreadable", f"{written!r}", self._expected(),
                               "write it without quotes" if digits else
                               "a count has no unit and no decimals")
        if self.among is not None and written not in self.among:
            raise ReadingError("choice-unknown", f"{written}", self._expected())
        if written < self.least:
            raise ReadingError("count-too-small", f"{written}", self._expected())
        return written

    def _expected(self) -> str:
        if self.among is not None:
            return f"one of {', '.join(map(str, self.among))}"
        return f"a whole number, {self.least} or more"

    def scalar_schema(self) -> dict[str, Any]:
        if self.among is not None:
            return {"type": "integer", "enum": list(self.among)}
        return {"type": "integer", "minimum": self.least}
