"""The names that expressions may use, and what stands behind each."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

Kind = Literal["number", "count", "truth", "text", "texts", "date", "one", "many", "opaque"]
KINDS: Final = ("number", "count", "truth", "text", "texts", "date", "one", "many", "opaque")

#: Things there is one of, in scope everywhere (where the vocabulary has them).
SINGLE: Final = ("record", "survey", "vessel", "wiring")


@dataclass(frozen=True, slots=True)
class NameInfo:
    """What a name stands for.

    ``number`` has a dimension; ``text`` may have ``choices``; ``texts`` is a list of texts (a
    limit), its values in ``choices``; ``one`` and ``many`` lead to things of the subject
    ``target``;
    ``opaque`` is a value no expression can do anything with. ``origin`` is the plugin that
    supplies a quantity.
    """

    kind: Kind
    dimension: str | None = None
    target: str | None = None
    choices: tuple[str, ...] | None = None
    origin: str | None = None

    def __post_init__(self) -> None:
        if self.kind not in KINDS:
            raise ValueError(f"{self.kind!r} is not a kind of name")
        if (self.kind == "number") != (self.dimension is not None):
            raise ValueError("a number, and only a number, has a dimension")
        if (self.kind in ("one", "many")) != (self.target is not None):
            raise ValueError("a relation, and only a relation, has a target")


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """The names of every subject; a name may be dotted (``charge.voltage_max``).

    ``lists`` names the list of the record that holds a subject's things (``batteries``), for the
    message when it is absent; a subject without an entry is named itself.
    """

    subjects: Mapping[str, Mapping[str, NameInfo]]
    lists: Mapping[str, str] = field(default_factory=dict)

    @property
    def single(self) -> tuple[str, ...]:
        """The things there is one of."""
        return tuple(name for name in SINGLE if name in self.subjects)

    def longest(self, subject: str, words: tuple[str, ...]) -> int:
        """How many of the words make up the longest known name; 0 when none does."""
        names = self.subjects[subject]
        return next((count for count in range(len(words), 0, -1)
                     if ".".join(words[:count]) in names), 0)
