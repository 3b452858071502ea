"""Where a part of a pack stands, with the data as it was written there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from garboard.documents import Document, path_text
from garboard.errors import Place

DataPath = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Spot:
    """A data path in a document (in none when the pack comes from a trail) and what is there."""

    document: Document | None
    path: DataPath
    data: object

    def at(self, *steps: str | int) -> Spot:
        """The spot some steps further down; its data is ``None`` where nothing is written."""
        data = self.data
        for step in steps:
            if isinstance(data, dict):
                data = data.get(step)
            elif isinstance(data, list) and isinstance(step, int) and step < len(data):
                data = data[step]
            else:
                data = None
        return Spot(self.document, (*self.path, *steps), data)

    def place(self, *, key: bool = False, offset: int | None = None) -> Place:
        """The place in the file; the data path alone when there is no file."""
        if self.document is None:
            return Place(path=path_text(self.path) or None)
        return self.document.place(self.path, key=key, offset=offset)

    def parts(self) -> Iterator[Spot]:
        """The spots it is made of: itself, and what stands elsewhere."""
        yield self

    def entries(self) -> Iterator[tuple[str, Spot]]:
        """The entries of a mapping."""
        if isinstance(self.data, dict):
            for key, value in self.data.items():
                yield str(key), Spot(self.document, (*self.path, key), value)

    def items(self) -> Iterator[Spot]:
        """The items of a list."""
        if isinstance(self.data, list):
            for index, value in enumerate(self.data):
                yield Spot(self.document, (*self.path, index), value)


@dataclass(frozen=True, slots=True)
class PatchedSpot(Spot):
    """A spot some of whose entries stand elsewhere: in the layer that changed them."""

    patches: Mapping[str, Spot]

    def at(self, *steps: str | int) -> Spot:
        patch = self.patches.get(str(steps[0])) if steps else None
        return Spot.at(self, *steps) if patch is None else patch.at(*steps[1:])

    def parts(self) -> Iterator[Spot]:
        yield self
        for patch in self.patches.values():
            yield from patch.parts()


def shown(value: object) -> str:
    """A value as a person wrote it, short enough for a message."""
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, list):
        return "a list"
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "yes or no"
    text = value if isinstance(value, str) else str(value)
    return text if len(text) <= 80 else f"{text[:77]}..."
