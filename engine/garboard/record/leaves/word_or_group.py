"""A word, or a group of fields that says more."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

from garboard.record.fact import Fact
from garboard.record.field import Field
from garboard.record.leaves.words import Choice

#: What the word reads as when the group is given instead.
STATED: Final = "stated"
OWN_RUN: Final = "own run"


@dataclass(frozen=True, slots=True, eq=False)
class WordOrGroup(Choice):
    """One of a few words, or a mapping with the fields of the model ``group``.

    Given a group, the word itself reads ``own run`` when the group names a run, else ``stated``.
    """

    group: type[Any] = object

    def fields(self, name: str) -> tuple[Field, ...]:
        return (Field(name, "text", None, (*self.among, STATED, OWN_RUN), self.meaning),)

    @staticmethod
    def reads_as(group: dict[str, Any]) -> Fact:
        """The fact that the word itself is, where the group is given."""
        word = OWN_RUN if "run" in group else STATED
        return Fact(word, ", ".join(f"{key}: {each}" for key, each in group.items()))

    def _accepted(self, written: object) -> object:
        if isinstance(written, dict) and not {"value", "not_determinable"} & written.keys():
            self.group.model_validate(written)
            return written
        return Choice._accepted(self, written)
