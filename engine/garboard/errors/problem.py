"""One thing that is wrong, with its place, what was found, what would be right, and a hint."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from garboard.errors.codes import CATALOGUE
from garboard.errors.place import NOWHERE, Place

Level = Literal["error", "warning"]


@dataclass(frozen=True, slots=True)
class Problem:
    """A problem as data; text is made only when it is shown (see ``render``)."""

    code: str
    place: Place = NOWHERE
    found: str = ""
    expected: str = ""
    hint: str = ""
    level: Level = "error"

    def __post_init__(self) -> None:
        if self.code not in CATALOGUE:
            raise KeyError(f"problem code {self.code!r} is not in the catalogue")

    @property
    def title(self) -> str:
        return CATALOGUE[self.code].title

    def at(self, place: Place) -> Problem:
        """The same problem at another place."""
        return replace(self, place=place)

    def as_data(self) -> dict[str, object]:
        """The problem as plain JSON data, with the same fields as the text."""
        return {
            "code": self.code, "title": self.title, "level": self.level,
            "file": self.place.file, "line": self.place.line, "column": self.place.column,
            "path": self.place.path, "found": self.found, "expected": self.expected,
            "hint": self.hint,
        }


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Sorted by place, then code; errors before warnings at the same place; duplicates dropped."""
    unique = dict.fromkeys(problems)
    return tuple(sorted(unique, key=lambda p: (*p.place.order(), p.level, p.code, p.found)))


def render(problem: Problem) -> str:
    """The problem as text: place and title, the source line with a caret, found, expected, hint."""
    place = problem.place
    word = "" if problem.level == "error" else "warning: "
    lines = [f"{place}: {word}{problem.code}: {problem.title}"]
    if place.source is not None:
        shown, mark = _caret(place)
        lines += [f"    {shown}", f"    {mark}"]
    if place.path:
        lines.append(f"  at: {place.path}")
    for label, text in (("found", problem.found), ("expected", problem.expected),
                        ("hint", problem.hint)):
        if text:
            lines.append(f"  {label}: {text}")
    return "\n".join(lines)


_WIDTH = 96


def _caret(place: Place) -> tuple[str, str]:
    """The source line, cut to a readable width around the spot, and the mark under it."""
    source = (place.source or "").rstrip("\r\n")
    column = max(place.column or 1, 1) - 1
    start = 0 if len(source) <= _WIDTH else max(0, min(column - _WIDTH // 2, len(source) - _WIDTH))
    shown = source[start:start + _WIDTH]
    before = "".join("\t" if c == "\t" else " " for c in shown[:column - start])
    length = max(1, min(place.length, len(shown) - (column - start)))
    shown = "".join(c if c == "\t" or c.isprintable() else "�" for c in shown)
    return shown, before + "^" * length
