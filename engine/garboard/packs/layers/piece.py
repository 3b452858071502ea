"""A rule, a limit or the head of a pack on its way up through the layers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from typing import Any, Final

from garboard.packs.header import Header
from garboard.packs.layering import ADDED, Kind, Relaxation
from garboard.packs.limit import Limit, WrittenLimit, read_limit
from garboard.packs.rule import Rule
from garboard.packs.spot import PatchedSpot, Spot
from garboard.packs.translation import RuleTexts, merged, without

RETIRE: Final = "retire"
Value = Rule | Limit | Header


@dataclass(frozen=True, slots=True)
class Setting:
    """The layer that set a field, where it did, and which packs' change of it that replaces."""

    pack: str
    version: str
    spot: Spot = field(compare=False)
    replaces: tuple[str, ...] = ()

    @property
    def layer(self) -> str:
        return f"{self.pack} {self.version}"


@dataclass(slots=True)
class Piece:
    """What has become of it so far: ``origin`` is what it was when it was added, where known.

    ``settings`` hold who added it (under ``ADDED``) and who set which field last.
    """

    kind: Kind
    name: str
    value: Value
    origin: Value | None
    spot: Spot
    settings: dict[str, Setting]
    relaxations: dict[str, Relaxation] = field(default_factory=dict)

    @property
    def retired(self) -> bool:
        return RETIRE in self.settings

    @property
    def changed(self) -> tuple[str, ...]:
        """The fields a layer has changed since it was added."""
        return tuple(name for name in self.settings if name != ADDED)

    @property
    def what(self) -> str:
        """What it is called in messages and reports."""
        return f"{self.kind} {self.name}".strip()

    def copy(self) -> Piece:
        return replace(self, settings=dict(self.settings), relaxations=dict(self.relaxations))

    def set(self, of: str, value: Any, setting: Setting, spot: Spot) -> None:
        """Set a field anew; ReadingError where a limit's text is no number with its unit."""
        if of != RETIRE:
            self.value = changed(self.value, of, value)
        self.settings[of] = setting
        patches = self.spot.patches if isinstance(self.spot, PatchedSpot) else {}
        self.spot = PatchedSpot(self.spot.document, self.spot.path, self.spot.data,
                                {**patches, of: spot})

    def take(self, of: str, other: Piece) -> None:
        """Take a field over as another line of layers has set it."""
        value = None if of == RETIRE else field_of(other.value, of)
        self.set(of, value, other.settings[of], other.spot.at(of))
        self.relaxations.pop(of, None)
        if of in other.relaxations:
            self.relaxations[of] = other.relaxations[of]


def changed(value: Value, of: str, new: Any) -> Value:
    """A rule, limit or head with one field set anew."""
    if isinstance(value, Rule) and of == "translations":
        new = merged(value.translations, new)
    elif isinstance(value, Rule) and of in RuleTexts.model_fields:
        value = value.model_copy(update={"translations": without(value.translations, of)})
    if not isinstance(value, Limit):
        return value.model_copy(update={of: new})
    if of == "citation":
        return replace(value, citation=new)
    return read_limit(value.name, WrittenLimit(value=new, citation=value.citation))


def field_of(value: Value, of: str) -> Any:
    """A field as it can be set."""
    return value.written if isinstance(value, Limit) and of == "value" else getattr(value, of)


def in_words(value: Any) -> Iterator[str]:
    """A field's value for people, where a word or two will do."""
    if isinstance(value, tuple):
        yield ", ".join(map(str, value))
    elif isinstance(value, (str, int)):
        yield str(value)
