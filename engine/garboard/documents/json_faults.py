"""What is refused in a well-formed JSON text, and where: a second, slower look at it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import islice
from typing import NamedTuple, cast
from unicodedata import normalize

from garboard.documents.characters import UNPRINTABLE
from garboard.documents.json_spot import JsonSpot, JsonText
from garboard.documents.limits import Limits
from garboard.documents.path_text import path_text
from garboard.documents.plain_scalar import decimal_number, whole_number
from garboard.documents.scalar_index import scalar_index
from garboard.documents.sheet import Sheet
from garboard.documents.spot import Member
from garboard.errors import Problem, ReadingError

_WORDS = ("NaN", "Infinity", "-Infinity")


class _Link(NamedTuple):
    """A data path from its end to its beginning, so that a long one costs nothing until shown."""

    before: _Link | None
    step: str | int


def faults(sheet: Sheet, limits: Limits) -> list[Problem]:
    """All that is refused, up to the limit of problems."""
    problems = list(islice(_all_faults(sheet), limits.problems))
    if len(problems) == limits.problems:
        problems.append(Problem(
            "document-problems", problems[-1].place, f"{len(problems)} problems so far",
            limits.expected("problems", "problems"), "mend these first"))
    return problems


def _all_faults(sheet: Sheet) -> Iterator[Problem]:
    """Every value in turn, from the top down."""
    whole = JsonText(sheet.text)
    waiting: list[tuple[_Link | None, JsonSpot]] = [(None, whole.whole())]
    while waiting:
        link, spot = waiting.pop()
        members = list(spot.pairs())
        if members:
            yield from _keys(sheet, whole, link, members)
            waiting += [(_Link(link, key), cast(JsonSpot, member.spot))
                        for key, member in reversed(members)]
        elif spot.written is not None:
            yield from _scalar(sheet, link, spot, spot.written)


def _keys(sheet: Sheet, whole: JsonText, link: _Link | None,
          members: list[tuple[str | int, Member]]) -> Iterator[Problem]:
    seen: dict[str, int] = {}
    for key, member in members:
        if not isinstance(key, str):
            return
        here = _Link(link, key)
        if UNPRINTABLE.search(key):
            yield _character(sheet, JsonSpot(whole, member.key_start, member.key_end), here)
        first = seen.setdefault(normalize("NFC", key), member.key_start)
        if first != member.key_start:
            place = sheet.place(member.key_start, member.key_end, _names(here))
            yield Problem("duplicate-key", place,
                          f"{key!r}, first given on line {sheet.line_of(first)}",
                          "each key once", "keep one of the two")


def _scalar(sheet: Sheet, link: _Link | None, spot: JsonSpot, written: str) -> Iterator[Problem]:
    if sheet.text[spot.start] == '"':
        if UNPRINTABLE.search(written):
            yield _character(sheet, spot, link)
    elif written in _WORDS:
        yield Problem("json-not-finite", sheet.place(spot.start, spot.end, _names(link)), written,
                      "a finite number", "leave the value out, or state why it is not known")
    elif written[0] in "-0123456789":
        try:
            (decimal_number if re.search("[.eE]", written) else whole_number)(written)
        except ReadingError as error:
            yield error.problem().at(sheet.place(spot.start, spot.end, _names(link)))


def _character(sheet: Sheet, spot: JsonSpot, link: _Link | None) -> Problem:
    bad = UNPRINTABLE.search(spot.written or "")
    assert bad is not None
    index = scalar_index(sheet.text, spot, bad.start())
    return Problem("document-character", sheet.place(index, path=_names(link)),
                   f"U+{ord(bad[0]):04X}", "printable characters")


def _names(link: _Link | None) -> str | None:
    path: list[str | int] = []
    while link is not None:
        path.append(link.step)
        link = link.before
    return path_text(path[::-1]) or None
