"""One thing aboard as rules and calculations see it: names to values, found when asked for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any


class Item(dict[str, Any]):
    """Recorded fields, relations and quantities of one thing, by name.

    ``item["capacity"]`` is a recorded value, ``item["fault_current"]`` a quantity, ``item["run"]``
    another item, ``item["conductors"]`` a tuple of items; what is not known is an unknown with its
    reason. A value is found once and kept.
    """

    __slots__ = ("_find", "id", "subject")

    def __init__(self, identity: str, subject: str, recorded: dict[str, Any],
                 find: Callable[[Item, str], object]) -> None:
        super().__init__(recorded)
        self["id"] = identity
        self.id, self.subject, self._find = identity, subject, find

    def __missing__(self, name: str) -> object:
        value = self[name] = self._find(self, name)
        return value

    def __hash__(self) -> int:  # type: ignore[override]
        return id(self)

    def __eq__(self, other: object) -> bool:
        return self is other

    def __repr__(self) -> str:
        return f"<{self.subject} {self.id}>"
