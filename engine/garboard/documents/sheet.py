"""The text of a document as a sheet of numbered lines."""

from __future__ import annotations

import re
from bisect import bisect_right

from garboard.errors import Place

_BREAK = re.compile(r"\r\n|\n|\r")


class Sheet:
    """A text with its file name; turns character indexes into places. Lines are found when asked.

    Lines end at LF, CRLF or CR. Lines and columns count from 1; a tab is one column.
    """

    __slots__ = ("_starts", "file", "text")

    def __init__(self, file: str, text: str) -> None:
        self.file, self.text = file, text
        self._starts: list[int] | None = None

    def place(self, index: int, end: int | None = None, path: str | None = None) -> Place:
        """The place of the character at ``index``, underlined up to ``end`` or the line's end."""
        index = max(0, min(index, len(self.text)))
        starts = self._lines()
        line = bisect_right(starts, index)
        start = starts[line - 1]
        stop = starts[line] if line < len(starts) else len(self.text)
        source = self.text[start:stop].rstrip("\r\n")
        last = min(index + 1 if end is None else end, start + len(source))
        return Place(self.file, line, index - start + 1, path, source, max(1, last - index))

    def line_of(self, index: int) -> int:
        """The number of the line on which the character at ``index`` stands."""
        return bisect_right(self._lines(), index)

    def line_start(self, index: int) -> int:
        """The index of the first character of the line on which ``index`` stands."""
        return self._lines()[self.line_of(index) - 1]

    def _lines(self) -> list[int]:
        if self._starts is None:
            self._starts = [0, *(match.end() for match in _BREAK.finditer(self.text))]
        return self._starts
