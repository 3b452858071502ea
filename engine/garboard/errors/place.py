"""Where something is wrong: file, line, column, data path, and the line itself."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Place:
    """A spot in a file a person wrote. Lines and columns count from 1; all parts may be unknown.

    ``path`` is the data path as people read it (``runs[2].through[0].fuse.rating``); ``source`` is
    the text of the line; ``length`` is how many characters the caret underlines.
    """

    file: str | None = None
    line: int | None = None
    column: int | None = None
    path: str | None = None
    source: str | None = None
    length: int = 1

    def __str__(self) -> str:
        parts = [self.file or "<input>"]
        if self.line is not None:
            parts.append(str(self.line))
            if self.column is not None:
                parts.append(str(self.column))
        return ":".join(parts)

    def order(self) -> tuple[str, int, int, str]:
        """Sort key: file, then line, then column, then path."""
        return (self.file or "", self.line or 0, self.column or 0, self.path or "")


NOWHERE = Place()
