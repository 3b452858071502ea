"""One thing aboard with everything that is recorded of it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from garboard.record.fact import Fact

#: Where something stands in the record as written: keys and positions in lists.
DataPath = tuple[str | int, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Thing:
    """A thing of one subject, found by its id.

    ``facts`` are by flat dotted name (``charge.voltage_max``); a field that is not recorded has
    none. ``groups`` are its lists of parts (``breaks``, ``outputs``, and ``through`` of a run); a
    list that is not recorded is missing. ``path`` is where it stands in the record. A part of a
    thing has the id ``<id>.<list>[<position>]``.
    """

    id: str
    subject: str
    path: DataPath
    facts: dict[str, Fact] = field(default_factory=dict)
    groups: dict[str, tuple[Thing, ...]] = field(default_factory=dict)

    def value(self, name: str) -> Any:
        """The value of a fact, or ``None`` where it is not recorded."""
        fact = self.facts.get(name)
        return None if fact is None else fact.value
