"""References: the id of another thing aboard, several of them, or a terminal."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Final

from garboard.errors import ReadingError
from garboard.record.field import FieldKind
from garboard.record.leaves.base import LeafKind

#: The word for "there is none" where a reference may lead nowhere.
NONE: Final = "none"
#: The terminals of what has two of them.
TERMINALS: Final = ("positive", "negative")
#: What has a positive and a negative terminal.
HAS_TERMINALS: Final = ("battery", "source", "load")
_ID: Final[dict[str, Any]] = {"type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$"}


@dataclass(frozen=True, slots=True, eq=False)
class Reference(LeafKind):
    """The id of one thing of one of the subjects ``to``; ``none`` where ``may_be_none``."""

    to: tuple[str, ...] = ()
    may_be_none: bool = False

    kind: ClassVar[FieldKind] = "reference"

    @property
    def targets(self) -> tuple[str, ...] | None:
        return self.to

    def read(self, written: object) -> str | None:
        identity = _id(written)
        return None if self.may_be_none and identity == NONE else identity

    def scalar_schema(self) -> dict[str, Any]:
        return dict(_ID)


@dataclass(frozen=True, slots=True, eq=False)
class References(LeafKind):
    """A list of ids of things of the subjects ``to``; an empty list says there are none."""

    to: tuple[str, ...] = ()

    kind: ClassVar[FieldKind] = "references"

    @property
    def targets(self) -> tuple[str, ...] | None:
        return self.to

    def read(self, written: object) -> tuple[str, ...]:
        if not isinstance(written, list):
            hint = f"write [{written}]" if isinstance(written, str) else ""
            raise ReadingError("list-expected", f"{written!r}", "a list of ids", hint)
        return tuple(_id(each) for each in written)

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "array", "items": dict(_ID)}


@dataclass(frozen=True, slots=True, eq=False)
class Terminal(LeafKind):
    """Where a run ends: ``<id>.positive``, ``<id>.negative``, or the id of a bus.

    A bare id of a battery, source or load means its positive terminal.
    """

    kind: ClassVar[FieldKind] = "text"
    has_mapping: ClassVar[bool] = False

    def read(self, written: object) -> str:
        return _id(written)

    def scalar_schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": r"^[a-z0-9]+(-[a-z0-9]+)*(\.(positive|negative))?$",
                "examples": ["pack-1.positive", "main-bus"]}


def _id(written: object) -> str:
    if not isinstance(written, str):
        raise ReadingError("text-expected", f"{written!r}", "an id",
                           "put it in quotes so that it stays as you wrote it")
    if not written.strip():
        raise ReadingError("value-empty", "an empty text", "an id", "leave the key out instead")
    return written
