"""What is wrong with an expression, by its spot in the author's text; a file comes later."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from garboard.errors import NOWHERE, GarboardError, Place, Problem, render
from garboard.errors.problem import Level


@dataclass(frozen=True, slots=True)
class ExpressionProblem:
    """One problem. ``offset`` and ``length`` count characters in the text, the offset from 0."""

    code: str
    offset: int
    length: int = 1
    found: str = ""
    expected: str = ""
    hint: str = ""

    def problem(self, place: Place = NOWHERE, level: Level = "error") -> Problem:
        """The same with its place in a file; whoever knows the file works that place out."""
        return Problem(self.code, place, self.found, self.expected, self.hint, level)


class ExpressionRefused(GarboardError):
    """An expression that is refused, with all its problems in the order of the text."""

    def __init__(self, text: str, problems: Iterable[ExpressionProblem]) -> None:
        self.text = text
        self.problems = tuple(sorted(dict.fromkeys(problems),
                                     key=lambda each: (each.offset, each.code, each.found)))
        super().__init__(text, self.problems)

    def __str__(self) -> str:
        return "\n".join(render(each.problem(self._place(each))) for each in self.problems)

    def _place(self, each: ExpressionProblem) -> Place:
        """The place within the text alone, for whoever has no file."""
        before = self.text[:each.offset]
        start = before.rfind("\n") + 1
        line = self.text[start:start + 10_000].split("\n", 1)[0]
        return Place("<expression>", before.count("\n") + 1, each.offset - start + 1,
                     source=line, length=each.length)
