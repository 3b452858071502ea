"""A page of text lines for a terminal: headings, labelled fields, bullets, all wrapped to a width.

Text is wrapped by the cells it takes on a screen. Colour is put on after wrapping and never says
anything that is not also said in words.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final
from unicodedata import category, east_asian_width

from garboard.values.units import UNITS

NARROWEST: Final = 60
WIDEST: Final = 110

#: Named styles as the codes of ECMA-48 "select graphic rendition".
_CODES: Final = {"strong": "1", "faint": "2", "danger": "1;31", "warning": "1;33", "caution": "33",
                 "notice": "1;34", "failed": "1;31", "open": "1;33", "passed": "32"}
_LEAST_GAP: Final = 5
_UNITS: Final = frozenset({"AWG", "SAE"}.union(*UNITS.values()))
_WORDS: Final = re.compile(r"\S+")


def cells(text: str) -> int:
    """How many cells of a screen a text takes."""
    if text.isascii():
        return len(text)
    return sum(map(_cells_of, text))


def _cells_of(character: str) -> int:
    if category(character) in ("Mn", "Me"):
        return 0
    return 2 if east_asian_width(character) in "WF" else 1


def wrapped(text: str, width: int) -> list[str]:
    """The text in lines of at most ``width`` cells; a word that is longer is broken."""
    lines: list[str] = []
    line, used = "", 0
    for word in _words(text, width):
        size = cells(word)
        if line and used + 1 + size <= width:
            line, used = f"{line} {word}", used + 1 + size
        else:
            if line:
                lines.append(line)
            line, used = word, size
    return [*lines, line] if line or not lines else lines


def _words(text: str, width: int) -> Iterator[str]:
    for word in _figures_whole(_WORDS.findall(text)):
        while cells(word) > width:
            piece = _fitting(word, width)
            yield piece
            word = word[len(piece):]
        yield word


def _figures_whole(words: list[str]) -> Iterator[str]:
    """The words, a number and the unit after it as one: ``28.67 kA,``."""
    before = ""
    for word in words:
        if before and before[-1].isdigit() and word.rstrip(").,;:") in _UNITS:
            before = f"{before} {word}"
            continue
        if before:
            yield before
        before = word
    if before:
        yield before


def _fitting(word: str, width: int) -> str:
    used = 0
    for number, character in enumerate(word):
        used += _cells_of(character)
        if used > width:
            return word[:max(number, 1)]
    return word


class Sheet:
    """Lines of a given width. ``text`` must be harmless already; styles are names of ``_CODES``."""

    def __init__(self, width: int, colour: bool) -> None:
        self.width = min(max(width, NARROWEST), WIDEST)
        self._colour = colour
        self._lines: list[str] = []

    def __str__(self) -> str:
        return "\n".join([*self._lines, ""])

    def blank(self) -> None:
        """An empty line, unless the last one is empty."""
        if self._lines and self._lines[-1]:
            self._lines.append("")

    def title(self, text: str, right: str = "") -> None:
        """The title of the page, with something at its right end where there is room."""
        gap = self.width - cells(text) - cells(right)
        self._lines += [f"{self._painted(text, 'strong')}{' ' * gap}{right}" if right and gap > 1
                        else self._painted(text, "strong"), "═" * self.width]

    def heading(self, text: str, style: str = "strong") -> None:
        """A heading with a line under it."""
        self.blank()
        lines = wrapped(text, self.width)
        self._lines += [self._painted(line, style) for line in lines]
        self._lines.append("─" * max(map(cells, lines)))

    def paragraph(self, text: str, indent: int = 0, style: str = "") -> None:
        """Wrapped text."""
        self._hang(" " * indent, text, style)

    def bullet(self, mark: str, text: str, indent: int = 0, style: str = "",
               mark_style: str = "") -> None:
        """Wrapped text beside a mark."""
        self._hang(f"{' ' * indent}{mark} ", text, style, mark_style)

    def field(self, label: str, text: str, indent: int = 0, span: int = 15,
              style: str = "") -> None:
        """Wrapped text beside a label that takes ``span`` cells, or under a longer label."""
        if cells(label) > span - 2:
            self._hang(" " * indent, label, "faint")
            self._hang(" " * (indent + span), text, style)
            return
        pad = " " * (span - cells(label))
        self._hang(f"{' ' * indent}{label}{pad}", text, style, "faint")

    def row(self, mark: str, text: str, right: str, style: str = "") -> None:
        """A bullet with something at the right end, or under it where there is no room."""
        size = cells(mark) + 1 + cells(text)
        gap = self.width - size - cells(right)
        if gap < _LEAST_GAP:
            self.bullet(mark, text, style=style)
            self.paragraph(right, cells(mark) + 1, "faint")
            return
        self._lines.append(f"{mark} {self._painted(text, style)} "
                           f"{self._painted('.' * (gap - 2), 'faint')} {right}")

    def line(self, text: str, style: str = "") -> None:
        """A line that is laid out already and narrow enough."""
        self._lines.append(self._painted(text, style))

    def _hang(self, first: str, text: str, style: str = "", first_style: str = "") -> None:
        """Wrapped text whose first line starts with ``first`` and whose others are indented."""
        hanging = cells(first)
        if hanging > self.width // 2:
            hanging = self.width // 4
            self._lines += [self._painted(line, first_style)
                            for line in wrapped(first, self.width)]
            first = " " * hanging
        lines = wrapped(text, self.width - hanging)
        self._lines.append(f"{self._painted(first, first_style)}{self._painted(lines[0], style)}"
                           .rstrip())
        self._lines += [" " * hanging + self._painted(line, style) for line in lines[1:]]

    def _painted(self, text: str, style: str) -> str:
        if not (self._colour and style and text.strip()):
            return text
        return f"\x1b[{_CODES[style]}m{text}\x1b[0m"
