"""Recorded facts as lines: value, as written, where from; and what is not recorded, said so."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cached_property
from typing import Any, Final

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.names import Names
from garboard.reports.summary import fact_value
from garboard.reports.words import ORIGINS, REASONS

#: Names that lead from one thing to others; they follow from the record as a whole.
RELATION_NAMES: Final = frozenset({
    "bank", "banks", "batteries", "buses", "conductors", "devices", "first_device", "loads",
    "managed_by", "management_systems", "own_device", "place", "places", "protecting_devices",
    "record", "return_run", "run", "runs", "sources", "stopped_by", "string", "strings", "survey",
    "switches", "vessel", "wiring", "worked_by"})
#: Written forms nest no deeper.
_DEEPEST: Final = 12
_COUNTED: Final = re.compile(r"\[([0-9]{1,9})\]")
_SAID: Final = frozenset({"value", "written", "unit", "from", "basis", "extras"})


class Facts:
    """The facts of one trail's record."""

    def __init__(self, book: Book) -> None:
        self._book = book
        self._entries: dict[tuple[str, bool], dict[str, Any]] = {}

    def entry(self, path: str, of: str) -> dict[str, Any]:
        """What the record says under a path, or that it says nothing; see ``named`` for ``of``."""
        key = (path, path.partition(".")[0] == of)
        if key not in self._entries:
            self._entries[key] = self._entry(path, named(self._book.names, path, of))
        return self._entries[key]

    def _entry(self, path: str, name: str) -> dict[str, Any]:
        fact = self._book.trail.fact(path)
        if fact is not None:
            return {"kind": "fact", "name": name, **self.shown(fact)}
        under = self._under.get(path)
        if under:
            return {"kind": "facts", "name": name, "facts": [
                {"name": spaced(each.removeprefix(path)), **self.shown(known)}
                for each, known in under]}
        if self._written_empty(path):
            return {"kind": "none", "name": name}
        relation = path.rpartition(".")[2] in RELATION_NAMES
        return {"kind": "traced" if relation else "missing", "name": name}

    def _written_empty(self, path: str) -> bool:
        """Whether the record says that there are none, rather than nothing."""
        identity, *names = path.split(".")
        here: Any = self._written.get(identity)
        for name in names:
            here = here.get(name) if isinstance(here, dict) else None
        return isinstance(here, list) and not here

    def shown(self, fact: Mapping[str, Any]) -> dict[str, str]:
        """A fact in words."""
        value = fact["value"]
        if isinstance(value, dict) and "unknown" in value:
            causes = dict.fromkeys(f"{REASONS[each['reason']]}"
                                   f"{': ' + harmless(each['detail']) if each['detail'] else ''}"
                                   for each in value["unknown"])
            text, known = "; ".join(causes), False
        else:
            text, known = harmless(fact_value(fact, self._book.system)), True
        written = harmless(fact.get("written") or "")
        return {"value": text, "known": "yes" if known else "", "from": self._origin(fact),
                "written": written if written.replace(".0 ", " ") != text else ""}

    def _origin(self, fact: Mapping[str, Any]) -> str:
        """Where it is from, how it was found, and whatever else stands beside it."""
        said = [ORIGINS.get(fact["from"], harmless(fact["from"]))] if fact.get("from") else []
        beside = {**(fact.get("extras") or {}), **{key: each for key, each in fact.items()
                                                   if key not in _SAID}}
        said += [f"{key.replace('_', ' ')}: {_plain(each)}" for key, each in beside.items()
                 if each not in (None, "", [])]
        return "; ".join(said)

    @cached_property
    def _written(self) -> Mapping[str, Any]:
        """What is written of every thing, by id."""
        return {each["id"]: each for each in things_in(self._book.trail.written)}

    @cached_property
    def _under(self) -> Mapping[str, list[tuple[str, Mapping[str, Any]]]]:
        """The facts inside each list or group: ``f0.breaks`` has ``f0.breaks[0].current``."""
        under: dict[str, list[tuple[str, Mapping[str, Any]]]] = {}
        for path, fact in self._book.trail.assessment["record"]["read"].items():
            for place, character in enumerate(path):
                if character in ".[" and "." in path[:place]:
                    under.setdefault(path[:place], []).append((path, fact))
        return under


def named(names: Names, path: str, of: str) -> str:
    """A fact or figure in words; one of the item ``of`` without saying which item."""
    thing, _, name = path.partition(".")
    return spaced(name) if thing == of and name else names.fact(path)


def spaced(name: str) -> str:
    """The name of a fact in words: ``breaks[0].current`` is ``breaks 1 current``."""
    counted = _COUNTED.sub(lambda found: f" {int(found[1]) + 1}", harmless_name(name))
    return counted.replace("_", " ").replace(".", " ").strip()


def things_in(data: Any, depth: int = 0) -> Iterator[Mapping[str, Any]]:
    """The mappings with an id in the data of a record, as they come."""
    if depth > _DEEPEST:
        return
    if isinstance(data, dict):
        if isinstance(data.get("id"), str):
            yield data
        for each in data.values():
            yield from things_in(each, depth + 1)
    elif isinstance(data, list):
        for each in data:
            yield from things_in(each, depth + 1)


def _plain(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(map(_plain, value))
    return harmless(value)
