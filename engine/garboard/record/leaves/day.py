"""A day: a calendar date."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import Any, ClassVar, Final

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind

_DATE: Final = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


@dataclass(frozen=True, slots=True, eq=False)
class Day(LeafKind):
    """A date written year-month-day, such as 2026-04-18."""

    kind: ClassVar[FieldKind] = "date"

    def read(self, written: object) -> date:
        if isinstance(written, str) and _DATE.fullmatch(written):
            try:
                return date.fromisoformat(written)
            except ValueError:
                raise ReadingError("day-unreadable", written, "a day that exists") from None
        raise ReadingError("day-unreadable", f"{written!r}",
                           "a date as year-month-day, such as 2026-04-18")

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": f"^{_DATE.pattern}$"}
