"""The record of what is aboard, as read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from garboard.documents import Document, path_text
from garboard.errors import Place, Problem
from garboard.record.answer import Answer
from garboard.record.conflict import Conflict
from garboard.record.thing import Thing


@dataclass(frozen=True, slots=True, eq=False)
class Record:
    """Everything recorded, by id and by subject.

    ``things`` holds every thing aboard by its id, and the four that have no id of their own under
    ``record``, ``vessel``, ``survey`` and ``wiring`` (without facts where nothing is recorded).
    ``lists`` holds the things of a subject in the order written; ``None`` means the list is not
    recorded, an empty one that there are none aboard. ``written`` is the data as written.
    ``conflicts`` are by the data path of every fact in doubt.
    """

    format: str
    written: Mapping[str, Any]
    document: Document | None
    things: dict[str, Thing]
    lists: dict[str, tuple[Thing, ...] | None]
    answers: Mapping[str, tuple[Answer, ...]]
    evidence: Mapping[str, Thing]
    conflicts: Mapping[str, Conflict]
    warnings: tuple[Problem, ...]

    def place(self, thing_id: str, name: str | None = None) -> Place:
        """Where a thing, or one of its facts, stands in the file."""
        thing = self.things[thing_id]
        keys: tuple[str | int, ...] = tuple(name.split(".")) if name else ()
        path = (*thing.path, *keys)
        if self.document is None:
            return Place(path=path_text(path))
        return self.document.place(path)
