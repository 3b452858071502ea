"""What the reader has to say about a document: problems and warnings, each with its place."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from garboard.documents import DEFAULT_LIMITS, Document, path_text
from garboard.errors import Place, Problem, did_you_mean
from garboard.record.leaves.leaf_reading import LeafReading
from garboard.record.thing import DataPath

#: How many names are compared, over all hints of a record, in search of the nearest.
COMPARISONS: Final = 20_000


class EnoughError(Exception):
    """So many problems that reading on helps nobody; for the reader alone."""


class Notes:
    """Collects problems and warnings; places and hints are worked out only for what is wrong.

    Both are limited, so that a file of nothing but slips is refused as quickly as any other.
    """

    def __init__(self, document: Document | None) -> None:
        self.document = document
        self.problems: list[Problem] = []
        self.warnings: list[Problem] = []
        self._comparisons = COMPARISONS
        self._unlisted = 0

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
        if len(self.problems) >= DEFAULT_LIMITS.problems:
            self.problems.append(Problem(
                "document-problems", place, f"{len(self.problems)} problems so far",
                DEFAULT_LIMITS.expected("problems", "problems"), "mend these first"))
            raise EnoughError

    def warn(self, code: str, path: Sequence[str | int], found: str = "", expected: str = "",
             hint: str = "") -> None:
        """Note something that is possible but unlikely."""
        if len(self.warnings) < DEFAULT_LIMITS.problems:
            self.warnings.append(Problem(code, self.place(path), found, expected, hint, "warning"))
        else:
            self._unlisted += 1

    def all_warnings(self) -> list[Problem]:
        """The warnings, with a last one that counts those left out."""
        if not self._unlisted:
            return self.warnings
        return [*self.warnings, Problem("more-warnings", self.warnings[-1].place,
                                        f"{self._unlisted} more", level="warning")]

    def nearest(self, name: str, known: Collection[str]) -> str:
        """A hint at the nearest known name, as long as looking for it is no burden."""
        if len(known) > self._comparisons:
            return ""
        self._comparisons -= len(known)
        return did_you_mean(name, known)

    def take(self, reading: LeafReading, path: DataPath) -> None:
        """Note everything that is wrong with a leaf that stands at ``path``."""
        for each in reading.problems:
            self.refuse(each.code, (*path, *each.path), each.found, each.expected, each.hint,
                        key=each.key, offset=each.offset)
        for each in reading.unlikely:
            self.warn(each.code, (*path, *each.path), each.found, each.expected, each.hint)
