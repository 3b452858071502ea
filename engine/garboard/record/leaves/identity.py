"""The id of a thing: lower-case letters, digits and hyphens."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, ClassVar, Final

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind

ID_PATTERN: Final = "[a-z0-9]+(-[a-z0-9]+)*"
#: Words that mean something of their own where an id could stand.
RESERVED: Final = ("record", "vessel", "survey", "wiring", "network", "none")


@dataclass(frozen=True, slots=True, eq=False)
class Identity(LeafKind):
    """Unique in the record; no dots, so that ``id.field`` is never ambiguous."""

    kind: ClassVar[FieldKind] = "text"
    has_mapping: ClassVar[bool] = False

    def read(self, written: object) -> str:
        if isinstance(written, str) and re.fullmatch(ID_PATTERN, written):
            if written in RESERVED:
                raise ReadingError("id-reserved", written,
                                   f"an id other than {', '.join(RESERVED)}")
            return written
        suggestion = re.sub("[^a-z0-9]+", "-", str(written).lower()).strip("-")
        hint = "" if written is None or not suggestion else f"write {suggestion}"
        if isinstance(written, int) and not isinstance(written, bool):
            hint = f"put it in quotes: '{written}'"
        raise ReadingError("id-malformed", f"{written!r}",
                           "lower-case letters, digits, and hyphens between them", hint)

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": f"^{ID_PATTERN}$"}
