"""Where things are aboard, as far as the record tells."""

from __future__ import annotations

from collections.abc import Iterator
from operator import itemgetter
from typing import Final

from garboard.reports.harmless import harmless_name
from garboard.trail import Finding, Trail

WHOLE_BOAT: Final = "The boat as a whole"
SEVERAL: Final = "Cables through several places"
NOT_RECORDED: Final = "Place not recorded"

_OF_THE_BOAT: Final = ("vessel", "survey", "record", "wiring")
_DERIVED: Final = ("bank-", "string-")


class Places:
    """The places of one trail's items."""

    def __init__(self, trail: Trail) -> None:
        self._trail = trail
        self._managed: dict[str, list[str]] = {}
        for path, fact in sorted(trail.assessment["record"]["read"].items(), key=itemgetter(0)):
            thing, _, name = path.partition(".")
            if name == "managed_by" and isinstance(fact["value"], str):
                self._managed.setdefault(fact["value"], []).append(thing)

    def of(self, finding: Finding) -> str:
        """The heading of the place a finding belongs to."""
        if finding["item"] is None or finding["subject"] in _OF_THE_BOAT:
            return WHOLE_BOAT
        if finding["subject"] == "place":
            return harmless_name(finding["item"])
        return self.of_item(finding["item"])

    def words(self, item: str) -> str:
        """All places of a thing in words; empty where none is recorded."""
        return ", ".join(map(harmless_name, dict.fromkeys(self._places(item))))

    def of_item(self, item: str) -> str:
        """The place of a thing: its own, that of its cable, or of the batteries it is about."""
        found = list(dict.fromkeys(self._places(item)))
        if not found:
            return NOT_RECORDED
        return harmless_name(found[0]) if len(found) == 1 else SEVERAL

    def order(self) -> list[str]:
        """The headings in the order of the record's places, those that are no place last."""
        written = self._trail.written.get("places")
        named = [harmless_name(each["id"]) for each in written
                 if isinstance(each, dict) and "id" in each] if isinstance(written, list) else []
        return [*dict.fromkeys(named), SEVERAL, NOT_RECORDED, WHOLE_BOAT]

    def _places(self, item: str) -> Iterator[str]:
        own = self._texts(f"{item}.place") or self._texts(f"{item}.crosses")
        if own:
            yield from own
            return
        for battery in self._managed.get(item, ()):
            yield from self._texts(f"{battery}.place")
        for prefix in _DERIVED:
            if item.startswith(prefix):
                yield from self._texts(f"{item.removeprefix(prefix)}.place")

    def _texts(self, path: str) -> list[str]:
        fact = self._trail.fact(path)
        value = fact["value"] if fact is not None else None
        several = value if isinstance(value, list) else [value]
        return [each for each in several if isinstance(each, str)]
