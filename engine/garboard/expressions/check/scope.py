"""What is known at a spot of an expression, and the complaints collected so far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.expressions.limits import Limits
from garboard.expressions.problem import ExpressionProblem
from garboard.expressions.tree import Node, Word
from garboard.expressions.vocabulary import NameInfo, Vocabulary


@dataclass
class Scope:
    """Names in scope. ``variables`` are those of the loops around the spot: own name, subject."""

    vocabulary: Vocabulary
    about: str
    limits: Mapping[str, NameInfo]
    answers: Mapping[str, NameInfo]
    sizes: Limits
    variables: dict[str, tuple[str, str]] = field(default_factory=dict)
    problems: list[ExpressionProblem] = field(default_factory=list)
    limits_used: set[str] = field(default_factory=set)
    answers_used: set[str] = field(default_factory=set)
    reads: set[tuple[str, str]] = field(default_factory=set)

    def complain(self, code: str, spot: Node | Word, found: str = "", expected: str = "",
                 hint: str = "") -> None:
        self.problems.append(ExpressionProblem(code, spot.offset, spot.length, found, expected,
                                               hint))

    def names(self) -> tuple[str, ...]:
        """Every name an expression may start with here."""
        return (self.about, *self.vocabulary.single, *self.variables, *self.limits, "answer")
