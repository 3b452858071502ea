"""What is refused in a well-formed JSON text, and where: a second, slower look at it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import cast
from unicodedata import normalize

from garboard.documents.characters import UNPRINTABLE
from garboard.documents.json_spot import JsonSpot
from garboard.documents.limits import Limits
from garboard.documents.path_text import path_text
from garboard.documents.plain_scalar import decimal_number, whole_number
from garboard.documents.scalar_index import scalar_index
from garboard.documents.sheet import Sheet
from garboard.errors import Problem, ReadingError

_Path = list[str | int]
_WORDS = ("NaN", "Infinity", "-Infinity")


def faults(sheet: Sheet, limits: Limits) -> list[Problem]:
    """All that is refused, up to the limit of problems."""
    problems: list[Problem] = []
    for path, spot in _walk(JsonSpot.whole(sheet.text)):
        problems += [*_keys(sheet, path, spot), *_scalar(sheet, path, spot)]
        if len(problems) >= limits.problems:
            problems.append(Problem(
                "document-problems", problems[-1].place, f"{len(problems)} problems so far",
                limits.expected("problems", "problems"), "mend these first"))
            break
    return problems


def _walk(spot: JsonSpot) -> Iterator[tuple[_Path, JsonSpot]]:
    """Every value with its path, from the top down."""
    waiting: list[tuple[_Path, JsonSpot]] = [([], spot)]
    while waiting:
        path, found = waiting.pop()
        yield path, found
        waiting += reversed([([*path, key], cast(JsonSpot, member.spot))
                             for key, member in found.pairs()])


def _keys(sheet: Sheet, path: _Path, spot: JsonSpot) -> Iterator[Problem]:
    seen: dict[str, int] = {}
    for key, member in spot.pairs():
        if not isinstance(key, str):
            return
        names = path_text([*path, key])
        yield from _characters(sheet, JsonSpot(sheet.text, member.key_start, member.key_end), names)
        first = seen.setdefault(normalize("NFC", key), member.key_start)
        if first != member.key_start:
            yield Problem("duplicate-key", sheet.place(member.key_start, member.key_end, names),
                          f"{key!r}, first given on line {sheet.line_of(first)}",
                          "each key once", "keep one of the two")


def _scalar(sheet: Sheet, path: _Path, spot: JsonSpot) -> Iterator[Problem]:
    written = spot.written
    names = path_text(path) or None
    if written is None:
        return
    if sheet.text[spot.start] == '"':
        yield from _characters(sheet, spot, names)
        return
    place = sheet.place(spot.start, spot.end, names)
    if written in _WORDS:
        yield Problem("json-not-finite", place, written, "a finite number",
                      "leave the value out, or state why it is not known")
    elif written[0] in "-0123456789":
        try:
            (decimal_number if re.search("[.eE]", written) else whole_number)(written)
        except ReadingError as error:
            yield error.problem().at(place)


def _characters(sheet: Sheet, spot: JsonSpot, names: str | None) -> Iterator[Problem]:
    bad = UNPRINTABLE.search(spot.written or "")
    if bad:
        index = scalar_index(sheet.text, spot, bad.start())
        yield Problem("document-character", sheet.place(index, path=names),
                      f"U+{ord(bad[0]):04X}", "printable characters")
