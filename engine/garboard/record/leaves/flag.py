"""A flag: yes or no."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, ClassVar, Final

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind

_WORDS: Final[Mapping[str, bool]] = MappingProxyType(
    {"yes": True, "no": False, "true": True, "false": False})


@dataclass(frozen=True, slots=True, eq=False)
class Flag(LeafKind):
    """Yes or no, written ``yes``, ``no``, ``true`` or ``false``."""

    kind: ClassVar[FieldKind] = "flag"

    def read(self, written: object) -> bool:
        if isinstance(written, bool):
            return written
        if isinstance(written, str) and written in _WORDS:
            return _WORDS[written]
        lowered = str(written).strip().lower()
        hint = {"on": "did you mean yes?", "off": "did you mean no?", "y": "did you mean yes?",
                "n": "did you mean no?", "1": "did you mean yes?", "0": "did you mean no?",
                "unknown": "leave the key out, or write {not_determinable: why}",
                "?": "leave the key out, or write {not_determinable: why}"}.get(lowered, "")
        if lowered in _WORDS:
            hint = f"did you mean {lowered}?"
        raise ReadingError("flag-unreadable", f"{written!r}", "yes or no", hint)

    def scalar_schema(self) -> dict[str, Any]:
        return {"enum": [True, False, *_WORDS]}
