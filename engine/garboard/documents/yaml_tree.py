"""Plain data and its spots, built value by value in the order of the text."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from garboard.documents.spot import Member


@dataclass(slots=True)
class YamlSpot:
    """The span of one value in a YAML text; see ``Spot``."""

    start: int
    end: int
    style: str
    written: str | None = None
    members: dict[str | int, Member] | None = None

    def member(self, step: str | int) -> Member | None:
        return self.members.get(step) if self.members is not None else None


@dataclass(slots=True)
class Holder:
    """A mapping or list that is being read; ``key`` is the key whose value comes next.

    ``first_node`` is the count of values when it began, ``tallest`` the levels inside it so far,
    ``as_key`` says that it stands where a key should, ``key_starts`` where each key stands.
    """

    data: Any
    spot: YamlSpot
    first_node: int
    anchor: str | None = None
    as_key: bool = False
    key: str | None = None
    key_start: int = -1
    key_end: int = -1
    key_starts: dict[str, int] = field(default_factory=dict)
    tallest: int = 0


class Tree:
    """The data so far: ``open`` holds the mappings and lists that are not finished."""

    def __init__(self) -> None:
        self.open: list[Holder] = []
        self.root: tuple[object, YamlSpot] | None = None

    def key_is_due(self) -> bool:
        """Whether the next thing is a key."""
        return bool(self.open) and type(self.open[-1].data) is dict and self.open[-1].key is None

    def take_key(self, text: str, start: int, end: int) -> None:
        """The next value belongs to this key."""
        holder = self.open[-1]
        holder.key, holder.key_start, holder.key_end = text, start, end

    def take_no_key(self, start: int, end: int) -> None:
        """The next value belongs to something that cannot be a key; it is kept apart."""
        self.take_key(f"\0{start}", start, end)

    def store(self, value: object, spot: YamlSpot, height: int) -> None:
        """Put a value in its place; ``height`` is how many levels it has itself."""
        if not self.open:
            self.root = (value, spot)
            return
        holder = self.open[-1]
        holder.tallest = max(holder.tallest, height)
        members = holder.spot.members
        assert members is not None
        if holder.key is None:
            members[len(holder.data)] = Member(spot)
            holder.data.append(value)
            return
        holder.data[holder.key] = value
        members[holder.key] = Member(spot, holder.key_start, holder.key_end)
        holder.key = None

    def path(self) -> list[str | int]:
        """The data path of what is being read."""
        path: list[str | int] = []
        for holder in self.open:
            if type(holder.data) is list:
                path.append(len(holder.data))
            elif holder.key is not None and not holder.key.startswith("\0"):
                path.append(holder.key)
        return path
