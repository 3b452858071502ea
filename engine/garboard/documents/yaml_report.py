"""The problems of a YAML text while it is read: collected with their data path, up to a limit."""

from __future__ import annotations

import re
from dataclasses import replace

from garboard.documents.limits import Limits
from garboard.documents.path_text import path_text
from garboard.documents.scalar_index import scalar_index
from garboard.documents.sheet import Sheet
from garboard.documents.yaml_tree import Tree, YamlSpot
from garboard.errors import Place, Problem


class StopReading(Exception):
    """Reading stops here: a limit is passed or the rest makes no sense."""


class Report:
    """Collects problems; ``add`` goes on reading, ``stop`` does not."""

    def __init__(self, sheet: Sheet, limits: Limits, tree: Tree) -> None:
        self.sheet, self.limits, self.tree = sheet, limits, tree
        self.problems: list[Problem] = []

    def add(self, problem: Problem) -> None:
        """Keep a problem; at the limit of problems reading stops."""
        self.problems.append(problem.at(self._with_path(problem.place)))
        if len(self.problems) >= self.limits.problems:
            self.stop(Problem(
                "document-problems", problem.place, f"{len(self.problems)} problems so far",
                self.limits.expected("problems", "problems"), "mend these first"))

    def stop(self, problem: Problem) -> None:
        """Keep a problem and read no further."""
        self.problems.append(problem.at(self._with_path(problem.place)))
        raise StopReading

    def unprintable(self, spot: YamlSpot, bad: re.Match[str]) -> None:
        """A character that an escape brought in and nobody can see."""
        place = self.sheet.place(scalar_index(self.sheet.text, spot, bad.start()))
        self.add(Problem("document-character", place, f"U+{ord(bad[0]):04X}",
                         "printable characters"))

    def _with_path(self, place: Place) -> Place:
        return replace(place, path=path_text(self.tree.path()) or None)
