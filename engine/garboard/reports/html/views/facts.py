"""Recorded facts as lines: value, as written, where from; and what is not recorded, said so."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cached_property
from operator import itemgetter
from typing import Any, Final

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.names import Names
from garboard.reports.summary import fact_value
from garboard.reports.words import ORIGINS, REASONS
from garboard.trail import Trail
from garboard.values.units import format_number

#: Names that lead from one thing to others; they follow from the record as a whole.
RELATION_NAMES: Final = frozenset({
    "bank", "banks", "batteries", "buses", "conductors", "devices", "first_device", "loads",
    "managed_by", "management_systems", "own_device", "place", "places", "protecting_devices",
    "record", "return_run", "run", "runs", "sources", "stopped_by", "string", "strings", "survey",
    "switches", "vessel", "wiring", "worked_by"})
#: The lists of a record in the order people take them in.
_LISTS: Final = ("places", "batteries", "management_systems", "buses", "charging_sources", "loads",
                 "runs", "evidence")
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
            return {"kind": "fact", "name": name, **self.shown(path, fact)}
        under = self._under.get(path)
        if under:
            return {"kind": "facts", "name": name, "facts": [
                {"name": spaced(each.removeprefix(path)), **self.shown(each, known)}
                for each, known in under]}
        if self._written_at(path) == []:
            return {"kind": "none", "name": name}
        relation = path.rpartition(".")[2] in RELATION_NAMES
        return {"kind": "traced" if relation else "missing", "name": name}

    def _written_at(self, path: str) -> Any:
        """What is written under a path; an empty list says that there are none, None nothing."""
        identity, *names = path.split(".")
        here: Any = self._written.get(identity)
        for name in names:
            here = here.get(name) if isinstance(here, dict) else None
        return here

    def shown(self, path: str, fact: Mapping[str, Any]) -> dict[str, str]:
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
        return {"value": text, "known": "yes" if known else "", "from": self._origin(path, fact),
                "written": written if written.replace(".0 ", " ") != text else ""}

    def _origin(self, path: str, fact: Mapping[str, Any]) -> str:
        """Where it is from, how it was found, and whatever else stands beside it."""
        said = [ORIGINS.get(fact["from"], harmless(fact["from"]))] if fact.get("from") else []
        written = self._written_at(path)
        extras = fact.get("extras") or {}
        if isinstance(written, dict):  # with its unit
            extras = {key: written.get(key, each) for key, each in extras.items()}
        beside = {**extras, **{key: each for key, each in fact.items()
                                                   if key not in _SAID}}
        said += [f"{key.replace('_', ' ')}: {_plain(each)}"
                 for key, each in sorted(beside.items(), key=itemgetter(0))
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
        for path, fact in facts_in_order(self._book.trail):
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


def facts_in_order(trail: Trail) -> list[tuple[str, Mapping[str, Any]]]:
    """Every fact by its path, in the order of the paths; a trail's own order says nothing."""
    return sorted(trail.assessment["record"]["read"].items(), key=itemgetter(0))


def things_in(data: Any, depth: int = 0) -> Iterator[Mapping[str, Any]]:
    """The mappings with an id in the data of a record: list by list, each as it was written."""
    if depth > _DEEPEST:
        return
    if isinstance(data, dict):
        if isinstance(data.get("id"), str):
            yield data
        for key in sorted(data, key=_list_order):
            yield from things_in(data[key], depth + 1)
    elif isinstance(data, list):
        for each in data:
            yield from things_in(each, depth + 1)


def _list_order(key: str) -> tuple[int, str]:
    return (_LISTS.index(key) if key in _LISTS else len(_LISTS), key)


def _plain(value: Any) -> str:
    if isinstance(value, list):
        return ", ".join(map(_plain, value))
    return format_number(value, None) if isinstance(value, float) else harmless(value)
