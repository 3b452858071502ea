"""The record as it was read: every fact, thing by thing in the order of the record."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from garboard.reports.html.book import Book
from garboard.reports.html.views.facts import Facts, spaced, things_in
from garboard.reports.html.views.things import Things

_FIRST: Final = ("vessel", "survey", "record", "wiring")


def record(book: Book, things: Things) -> list[dict[str, Any]]:
    """The things of the record, each with its facts; none is left out."""
    facts = Facts(book)
    found: dict[str, list[tuple[str, Mapping[str, Any]]]] = {}
    for path, fact in book.trail.assessment["record"]["read"].items():
        identity, _, name = path.partition(".")
        found.setdefault(identity, []).append((name or identity, fact))
    written = (each["id"] for each in things_in(book.trail.written))
    order = dict.fromkeys([*_FIRST, *written, *sorted(found)])
    return [{"name": book.names.thing(identity), "number": things.number_of.get(identity),
             "letter": things.letters.get(identity, ""),
             "facts": [{"name": spaced(name), **facts.shown(fact)}
                       for name, fact in found[identity]]}
            for identity in order if identity in found]

