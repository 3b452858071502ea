"""Every source the assessment rests on, and every method of calculation it used."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from operator import itemgetter
from typing import Any

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.words import citation_words, method_source_words, standing_words


def method_numbers(book: Book) -> dict[str, int]:
    """A number for every calculation that was used, in the order of their names."""
    return {name: number for number, name in enumerate(sorted(
        book.trail.assessment["quantities"]), 1)}


def methods(book: Book) -> list[dict[str, Any]]:
    """The calculations: what they do, where that comes from, how far it holds."""
    quantities: Mapping[str, Any] = book.trail.assessment["quantities"]
    return [{"number": number, "name": harmless_name(name).replace("_", " ").replace(".", ": "),
             "method": quantities[name]["method"], "valid": quantities[name]["valid"],
             "source": method_source_words(quantities[name]["citation"]),
             "version": quantities[name]["version"], "origin": quantities[name]["origin"]}
            for name, number in method_numbers(book).items()]


def sources(book: Book) -> list[dict[str, Any]]:
    """What rules and limits are taken from: each source once, with what is taken from it."""
    cited: dict[tuple[str, str], dict[str, Any]] = {}
    for used, citation in _citations(book):
        named = citation_words({key: citation.get(key) for key in ("source", "clause", "edition")})
        key = (named, standing_words(citation))
        entry = cited.setdefault(key, {"source": named or "no document is cited",
                                       "standing": key[1], "taken": []})
        entry["taken"].append((used, harmless(citation.get("says") or "")))
    return [each for _, each in sorted(cited.items(), key=lambda pair: pair[0])]


def _citations(book: Book) -> Iterator[tuple[str, Mapping[str, Any]]]:
    several = len(book.trail.packs) > 1
    for pack in book.trail.packs:
        of = f" of {harmless_name(pack['pack'])}" if several else ""
        for rule in pack["resolved"]["rules"]:
            yield f"rule {harmless_name(rule['id'])}{of}", rule["citation"]
        for name, limit in sorted(pack["resolved"]["limits"].items(), key=itemgetter(0)):
            yield f"limit {harmless_name(name).replace('_', ' ')}{of}", limit["citation"]
