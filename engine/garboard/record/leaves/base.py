"""What all kinds of leaf have in common.

A leaf is the smallest thing a record says: a scalar, or a mapping where there is more to say. Each
kind of leaf knows how to read its scalar, how it appears in the table of fields, and its JSON
Schema. Models attach one to every field: ``Annotated[Leaf, Measure("current", "Rated current")]``.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, ClassVar, Final

from garboard.record.field import Field, FieldKind

#: The type of a leaf as written: what exactly is allowed is said by the kind of leaf beside it.
Leaf = Any
#: What a field of a model holds when the record does not say anything about it.
NOT_RECORDED: Final[Any] = None

NO_EXTRAS: Final[Mapping[str, LeafKind]] = MappingProxyType({})


@dataclass(frozen=True, slots=True, eq=False)
class LeafKind:
    """A kind of leaf; ``extras`` are further keys its mapping form allows, each itself a leaf."""

    meaning: str
    extras: Mapping[str, LeafKind] = field(default_factory=lambda: NO_EXTRAS, kw_only=True)

    kind: ClassVar[FieldKind]
    #: Whether the scalar may carry ``plus_minus`` or ``uncertainty`` in the mapping form.
    spreads: ClassVar[bool] = False
    #: Whether there is a mapping form at all.
    has_mapping: ClassVar[bool] = True
    #: The keys of the mapping form, where they are not those of every leaf.
    mapping_keys: ClassVar[tuple[str, ...] | None] = None

    def read(self, written: object) -> object:
        """The value of a scalar as written; ReadingError when it is not one of this kind."""
        raise NotImplementedError

    def parts(self, name: str, value: object) -> tuple[tuple[str, object], ...]:
        """The facts a value gives: usually one, under the field's own name."""
        return ((name, value),)

    @property
    def floor(self) -> tuple[float, bool] | None:
        """The least value, and whether a value must be more than that; ``None``: there is none."""
        return None

    def fields(self, name: str) -> tuple[Field, ...]:
        """The entries of this leaf in the table of fields, extras included."""
        own = (Field(name, self.kind, self.dimension, self.choices, self.meaning, self.targets,
                     self.floor),)
        return own + self.extra_fields(name)

    def extra_fields(self, name: str) -> tuple[Field, ...]:
        """The entries of the extra keys: ``<name>.<extra>``."""
        return tuple(entry for key, extra in self.extras.items()
                     for entry in extra.fields(f"{name}.{key}"))

    def unlikely(self, written: object, value: object) -> str | None:
        """A hint when a value is possible but absurd for what it describes, else ``None``."""
        return None

    def likely_range(self) -> tuple[str, str] | None:
        """The ends of what a survey ever meets there, as texts with units."""
        return None

    @property
    def dimension(self) -> str | None:
        return None

    @property
    def choices(self) -> tuple[str, ...] | None:
        return None

    @property
    def targets(self) -> tuple[str, ...] | None:
        return None

    def scalar_schema(self) -> dict[str, Any]:
        """JSON Schema of the scalar form."""
        raise NotImplementedError

    def __get_pydantic_core_schema__(self, source: object, handler: object) -> Any:
        from pydantic_core import core_schema

        return core_schema.no_info_plain_validator_function(self._accepted)

    def _accepted(self, written: object) -> object:
        """The leaf unchanged when it reads; for models that are filled without the reader."""
        from garboard.record.leaves.read_leaf import read_leaf

        problems = read_leaf(self, written, "").problems
        if problems:
            raise ValueError("; ".join(problem.code for problem in problems))
        return written
