"""The size of a conductor: AWG, SAE or square millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar

from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind
from garboard.values.conductor_size import ConductorSize, read_size


@dataclass(frozen=True, slots=True, eq=False)
class Size(LeafKind):
    """A size by name: ``2/0 AWG``, ``4 SAE``, ``50 mm2``. SAE sizes are smaller than AWG."""

    kind: ClassVar[FieldKind] = "size"

    def read(self, written: object) -> ConductorSize:
        return read_size(written)

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": r"[0-9]", "examples": ["50 mm2", "2/0 AWG", "4 SAE"]}
