"""A list of parts of a thing, where it could not be found out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Final, NoReturn

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind


@dataclass(frozen=True, slots=True, eq=False)
class Parts(LeafKind):
    """Stands in for a list of parts: only ``{not_determinable: why, evidence, note}`` reads."""

    kind: ClassVar[FieldKind] = "references"
    mapping_keys: ClassVar[tuple[str, ...] | None] = ("not_determinable", "evidence", "note")

    def read(self, written: object) -> NoReturn:
        raise ReadingError("list-expected", repr(written), "a list, or not_determinable and why")

    def scalar_schema(self) -> dict[str, Any]:
        return {"not": {}}


PARTS: Final = Parts("A list of parts")
