"""An agreed exception to one rule for one item, as read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from garboard.errors import NOWHERE, Place
from garboard.trail import in_force


@dataclass(frozen=True, slots=True)
class Dispensation:
    """Which rule and item, who agreed, why, and its first and last day (year-month-day).

    ``pack`` is ``None`` where the file does not say which pack's rule is meant, ``vessel`` where
    it is for any; ``name`` is what its author called it.
    """

    rule: str
    item: str
    who: str
    why: str
    first_day: str
    last_day: str
    pack: str | None = None
    name: str | None = None
    vessel: str | None = None
    place: Place = field(default=NOWHERE, compare=False)
    rule_place: Place = field(default=NOWHERE, compare=False)
    item_place: Place = field(default=NOWHERE, compare=False)

    @classmethod
    def from_data(cls, data: Mapping[str, Any]) -> Dispensation:
        """The dispensation of which a trail says this."""
        kept = ("rule", "item", "who", "why", "first_day", "last_day", "pack")
        return cls(**{key: data[key] for key in kept}, name=data["id"])

    def in_force_on(self, day: str) -> bool:
        """Whether it is in force on a day, its first and last day included."""
        return in_force(day, self.first_day, self.last_day)

    def identity(self, pack: str) -> str:
        """Its name, else one made of what it is about and when it begins."""
        return self.name or f"{pack}/{self.rule}/{self.item}/{self.first_day}"

    def as_data(self, pack: str, *, counts: bool) -> dict[str, Any]:
        """What a trail says of it. ``counts``: whether a failure counts as failed all the same."""
        return {"id": self.identity(pack), "pack": pack, "rule": self.rule, "item": self.item,
                "who": self.who, "why": self.why, "first_day": self.first_day,
                "last_day": self.last_day, "counts_as_failed": counts}
