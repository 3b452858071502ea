"""What the reader has to say about a document: problems and warnings, each with its place."""

from __future__ import annotations

from collections.abc import Sequence

from garboard.documents import Document, path_text
from garboard.errors import Place, Problem
from garboard.record.leaves.leaf_reading import LeafReading
from garboard.record.thing import DataPath


class Notes:
    """Collects problems and warnings; places are worked out only for what is wrong."""

    def __init__(self, document: Document | None) -> None:
        self.document = document
        self.problems: list[Problem] = []
        self.warnings: list[Problem] = []

    def place(self, path: Sequence[str | int], *, key: bool = False,
              offset: int | None = None) -> Place:
        """Where a data path stands in the file, or only the path where there is no file."""
        if self.document is None:
            return Place(path=path_text(path) or None)
        return self.document.place(path, key=key, offset=offset)

    def refuse(self, code: str, path: Sequence[str | int], found: str = "", expected: str = "",
               hint: str = "", *, key: bool = False, offset: int | None = None) -> None:
        """Note a problem: the record will be refused."""
        place = self.place(path, key=key, offset=offset)
        self.problems.append(Problem(code, place, found, expected, hint))

    def warn(self, code: str, path: Sequence[str | int], found: str = "", expected: str = "",
             hint: str = "") -> None:
        """Note something that is possible but unlikely."""
        self.warnings.append(Problem(code, self.place(path), found, expected, hint, "warning"))

    def take(self, reading: LeafReading, path: DataPath) -> None:
        """Note everything that is wrong with a leaf that stands at ``path``."""
        for each in reading.problems:
            self.refuse(each.code, (*path, *each.path), each.found, each.expected, each.hint,
                        key=each.key, offset=each.offset)
        for each in reading.unlikely:
            self.warn(each.code, (*path, *each.path), each.found, each.expected, each.hint)
