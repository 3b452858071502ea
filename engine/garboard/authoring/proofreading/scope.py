"""What stands behind the names of a rule: limits as numbers, fields with their possible range."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.authoring.proofreading.span import ANY, Span
from garboard.expressions import Vocabulary
from garboard.expressions.rule import LimitValue
from garboard.expressions.tree import Gathering, Read
from garboard.record import SUBJECTS
from garboard.values.units import DIMENSIONS


@dataclass
class Scope:
    """The names of one rule. ``loops`` gives the subject of each loop variable met so far."""

    vocabulary: Vocabulary
    about: str
    limits: Mapping[str, LimitValue]
    loops: dict[str, str] = field(default_factory=dict)

    def enter(self, loop: Gathering) -> None:
        """Learn what the variable of a loop stands for."""
        target = None if loop.collection.type is None else loop.collection.type.target
        self.loops[loop.variable.text] = target or ""

    def owner(self, read: Read) -> str:
        """The subject that a value is read from."""
        subject = self.about if read.root == "item" else self.loops.get(read.root, read.root)
        for step in read.steps[:-1]:
            subject = self.vocabulary.subjects[subject][step].target or subject
        return subject

    def span(self, read: Read) -> Span:
        """The numbers a field or quantity can be."""
        subject, name = self.owner(read), read.steps[-1]
        recorded = SUBJECTS[subject].fields.get(name) if subject in SUBJECTS else None
        if recorded is not None and recorded.floor is not None:
            least, more = recorded.floor
            return Span(least, low_open=more)
        if read.type is not None and read.type.kind == "count":
            return Span(0.0)
        dimension = None if read.type is None else read.type.dimension
        lowest = None if dimension is None else DIMENSIONS[dimension].least
        return ANY if lowest is None else Span(float(lowest))
