"""The record as it was read: every fact, thing by thing in the order of the record."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from garboard.reports.html.book import Book
from garboard.reports.html.views.facts import Facts, facts_in_order, spaced, things_in
from garboard.reports.html.views.things import Things

_FIRST: Final = ("vessel", "survey", "record", "wiring")


def record(book: Book, things: Things) -> list[dict[str, Any]]:
    """The things of the record, each with its facts; none is left out."""
    facts = Facts(book)
    found: dict[str, list[tuple[str, str, Mapping[str, Any]]]] = {}
    for path, fact in facts_in_order(book.trail):
        identity, _, name = path.partition(".")
        found.setdefault(identity, []).append((name or identity, path, fact))
    written = (each["id"] for each in things_in(book.trail.written))
    order = dict.fromkeys([*_FIRST, *written, *sorted(found)])
    return [{"name": book.names.thing(identity), "number": things.number_of.get(identity),
             "letter": things.letters.get(identity, ""),
             "facts": [{"name": spaced(name), **facts.shown(path, fact)}
                       for name, path, fact in found[identity]]}
            for identity in order if identity in found]

