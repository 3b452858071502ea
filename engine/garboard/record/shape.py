"""The shape of a model: every key it may have, and what stands under it, found out once.

The reader, the table of subjects and the JSON Schema all walk shapes, so that none of them can
disagree with the models.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType, UnionType
from typing import Any, Final, Union, get_args, get_origin

from garboard.record.fact import Fact
from garboard.record.leaves import LeafKind, WordOrGroup
from garboard.record.leaves.leaf_reading import LeafReading
from garboard.record.models.base import Model, NotDeterminable, Noun
from garboard.values import Bounds

#: How many different texts are remembered for each field.
_MEMO_SIZE: Final = 1024


@dataclass(frozen=True, slots=True, eq=False)
class LeafSlot:
    """A key with a leaf under it; ``name`` is its flat dotted name within its subject.

    ``refers`` says whether it names other things. ``memo`` keeps what plain texts read as: records
    repeat themselves.
    """

    key: str
    name: str
    leaf: LeafKind
    refers: bool = field(init=False)
    memo: dict[str, tuple[tuple[str, Fact], ...]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        object.__setattr__(self, "refers", self.leaf.targets is not None)

    def remember(self, written: str, reading: LeafReading) -> None:
        """Keep a reading that depends on nothing but the text, and has nothing wrong with it."""
        if reading.problems or reading.unlikely:
            return
        if any(isinstance(fact.value, Bounds) for _, fact in reading.facts):
            return
        if len(self.memo) >= _MEMO_SIZE:
            self.memo.clear()
        self.memo[written] = tuple(reading.facts)


@dataclass(frozen=True, slots=True, eq=False)
class GroupSlot:
    """A key with a mapping under it whose fields belong to the same subject, or stand alone.

    ``word`` is the leaf that may stand in place of the mapping, if one may.
    """

    key: str
    name: str
    shape: Shape
    meaning: str
    word: WordOrGroup | None = None


@dataclass(frozen=True, slots=True, eq=False)
class ListSlot:
    """A key with a list of mappings under it, each a thing or a part of its own."""

    key: str
    name: str
    shape: Shape
    meaning: str
    may_be_not_determinable: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class OpenSlot:
    """A key whose content has a reader of its own (the answers)."""

    key: str
    name: str
    meaning: str


Slot = LeafSlot | GroupSlot | ListSlot | OpenSlot


@dataclass(frozen=True, slots=True, eq=False)
class Shape:
    """All keys of a model; ``subject`` is empty for a group within a subject."""

    model: type[Model]
    subject: str
    slots: Mapping[str, Slot]
    required: tuple[str, ...]

    @property
    def meaning(self) -> str:
        return meaning_of(self.model)

    def leaves(self) -> Iterator[LeafSlot]:
        """All leaves of the subject, those inside its groups included."""
        for slot in self.slots.values():
            if isinstance(slot, LeafSlot):
                yield slot
            elif isinstance(slot, GroupSlot) and not slot.shape.subject:
                if slot.word is not None:
                    yield LeafSlot(slot.key, slot.name, slot.word)
                yield from slot.shape.leaves()

    def lists(self) -> Iterator[ListSlot]:
        """All lists of the subject, those inside its groups included."""
        for slot in self.slots.values():
            if isinstance(slot, ListSlot):
                yield slot
            elif isinstance(slot, GroupSlot) and not slot.shape.subject:
                yield from slot.shape.lists()


@cache
def shape_of(model: type[Model], prefix: str = "") -> Shape:
    """The shape of a model; ``prefix`` stands before the names of its fields."""
    slots: dict[str, Slot] = {}
    required = []
    for attribute, info in model.model_fields.items():
        key = info.alias or attribute
        slots[key] = _slot(key, f"{prefix}{key}", info)
        if info.is_required():
            required.append(key)
    subject = "" if prefix or not issubclass(model, Noun) else model.subject
    return Shape(model, subject, MappingProxyType(slots), tuple(required))


def meaning_of(model: type[Model]) -> str:
    """The first sentence of a model's description, without the full stop."""
    return (model.__doc__ or "").strip().partition("\n")[0].rstrip(".")


def _slot(key: str, name: str, info: Any) -> Slot:
    leaf = next((each for each in info.metadata if isinstance(each, LeafKind)), None)
    if isinstance(leaf, WordOrGroup):
        words: type[Model] = leaf.group
        return GroupSlot(key, name, shape_of(words, f"{name}."), leaf.meaning, leaf)
    if leaf is not None:
        return LeafSlot(key, name, leaf)
    inner = _inner(info.annotation)
    if get_origin(inner) is list:
        part: type[Model] = get_args(inner)[0]
        shape = shape_of(part)
        return ListSlot(key, name, shape, info.description or shape.meaning,
                        NotDeterminable in get_args(info.annotation))
    if isinstance(inner, type) and issubclass(inner, Model):
        group: type[Model] = inner
        shape = shape_of(group) if issubclass(group, Noun) else shape_of(group, f"{name}.")
        return GroupSlot(key, name, shape, info.description or shape.meaning)
    return OpenSlot(key, name, info.description or "")


def _inner(annotation: Any) -> Any:
    """The type itself where ``| None`` or ``| NotDeterminable`` stands beside it."""
    if get_origin(annotation) in (Union, UnionType):
        kinds = [each for each in get_args(annotation)
                 if each not in (type(None), NotDeterminable)]
        if len(kinds) == 1:
            return kinds[0]
    return annotation
