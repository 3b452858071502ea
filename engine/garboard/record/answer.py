"""What a person answered to a question of a pack."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from garboard.record.thing import DataPath


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer, and the days on which it holds.

    ``about`` is the id of the thing it is about, or ``None`` where the question is asked once.
    ``on`` and ``until`` are its first and last day, where they are recorded.
    """

    question: str
    value: Any
    path: DataPath
    about: str | None = None
    by: str | None = None
    on: date | None = None
    until: date | None = None
    evidence: tuple[str, ...] = ()
    note: str | None = None

    def holds_on(self, day: date) -> bool:
        """Whether it is in force on a day, its first and last day included."""
        return (self.on is None or self.on <= day) and (self.until is None or day <= self.until)
