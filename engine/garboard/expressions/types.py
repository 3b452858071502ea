"""The type of a part of an expression: what kind of value it gives, and what it measures."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final, Literal

from garboard.expressions.measure import BARE, Measure, measure_of
from garboard.expressions.vocabulary import NameInfo

TypeKind = Literal["number", "count", "truth", "text", "texts", "date", "one", "many", "opaque",
                   "unclear"]


@dataclass(frozen=True, slots=True)
class Type:
    """``measure`` counts for numbers, ``target`` for things, ``choices`` for texts.

    ``dimension`` is the name a figure is shown under; a share has ``ratio``, a plain number none.
    """

    kind: TypeKind
    measure: Measure = BARE
    dimension: str | None = None
    target: str | None = None
    choices: tuple[str, ...] | None = None

    @property
    def is_number(self) -> bool:
        return self.kind in ("number", "count")

    @property
    def is_unclear(self) -> bool:
        """Whether something is wrong with it already; it then causes no further complaint."""
        return self.kind == "unclear"

    def described(self) -> str:
        """The type in words, for messages."""
        if self.is_number:
            if self.measure.is_bare:
                return "a number without unit"
            name = self.measure.dimension
            return (f"a figure in {self.measure.unit}" if name is None
                    else f"a {name.replace('_', ' ')} in {self.measure.unit}")
        if self.kind == "text" and self.choices:
            return (f"the text {self.choices[0]!r}" if len(self.choices) == 1
                    else f"a text, one of {', '.join(self.choices)}")
        thing = (self.target or "").replace("_", " ")
        return {"truth": "true or false", "text": "a text",
                "texts": "a list of texts", "date": "a date", "one": f"a {thing}",
                "many": f"several of {thing}", "opaque": "a value without a use here",
                "unclear": "something unclear"}[self.kind]


TRUTH: Final = Type("truth")
TEXT: Final = Type("text")
COUNT: Final = Type("count")
PLAIN: Final = Type("number")
UNCLEAR: Final = Type("unclear")


def number(measure: Measure, *, share: bool = False) -> Type:
    """The type of a figure; ``share`` keeps a plain number that is one."""
    return Type("number", measure, "ratio" if share and measure.is_bare else measure.dimension)


def type_of(info: NameInfo) -> Type:
    """The type of what a name stands for."""
    if info.kind == "number":
        measure = measure_of(info.dimension or "")
        return Type("number", measure, info.dimension)
    return replace(Type(info.kind), target=info.target, choices=info.choices)
