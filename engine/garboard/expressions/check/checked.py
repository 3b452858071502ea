"""An expression whose names, types and dimensions are right."""

from __future__ import annotations

from dataclasses import dataclass, field

from garboard.expressions.tree import Expression


@dataclass(frozen=True, slots=True)
class Checked:
    """The resolved tree with its text and what it uses, all in the order of names.

    ``absent`` is the name of the list that holds the things it is about. ``reads`` are pairs of
    subject and name. Two are equal when text and subject are.
    """

    text: str
    about: str
    root: Expression = field(compare=False)
    absent: str = field(compare=False)
    limits: tuple[str, ...] = field(compare=False, default=())
    answers: tuple[str, ...] = field(compare=False, default=())
    reads: tuple[tuple[str, str], ...] = field(compare=False, default=())

    def written(self, node: Expression) -> str:
        """The author's words for a part, on one line."""
        return " ".join(self.text[node.offset:node.offset + node.length].split())
