"""Words: free text, or one of a closed list of choices."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar

from garboard.errors import ReadingError, did_you_mean
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind


@dataclass(frozen=True, slots=True, eq=False)
class Words(LeafKind):
    """Free text with something in it; where ``pattern`` is given, the whole text matches it."""

    pattern: str | None = None
    example: str = ""

    kind: ClassVar[FieldKind] = "text"

    def read(self, written: object) -> str:
        text = _text(written)
        if self.pattern is not None and re.fullmatch(self.pattern, text) is None:
            raise ReadingError("text-malformed", text, f"a text such as {self.example}")
        return text

    def scalar_schema(self) -> dict[str, Any]:
        if self.pattern is not None:
            return {"type": "string", "pattern": f"^(?:{self.pattern})$"}
        return {"type": "string", "pattern": r"\S"}


@dataclass(frozen=True, slots=True, eq=False)
class Choice(LeafKind):
    """One of a closed list of words, spelled as in the list.

    ``also_called``: other names for one or several of the choices, in small letters; they are not
    read, and the refusal names what they may mean.
    """

    among: tuple[str, ...] = ()
    also_called: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    kind: ClassVar[FieldKind] = "text"

    @property
    def choices(self) -> tuple[str, ...] | None:
        return self.among

    def read(self, written: object) -> str:
        if isinstance(written, str) and written in self.among:
            return written
        text = _text(written)
        raise ReadingError("choice-unknown", text, f"one of {', '.join(self.among)}",
                           self._hint(text))

    def _hint(self, text: str) -> str:
        lowered = {choice.lower(): choice for choice in self.among}
        folded = text.strip().lower().replace("_", " ")
        meant = (lowered[folded],) if folded in lowered else self.also_called.get(folded, ())
        if meant:
            return f"did you mean {' or '.join(map(repr, meant))}?"
        return did_you_mean(text, self.among)

    def scalar_schema(self) -> dict[str, Any]:
        return {"enum": list(self.among)}


def _text(written: object) -> str:
    if not isinstance(written, str):
        raise ReadingError("text-expected", f"{written!r}", "a text",
                           "put it in quotes so that it stays as you wrote it")
    if not written.strip():
        raise ReadingError("value-empty", "an empty text", "a text", "leave the key out instead")
    return written
