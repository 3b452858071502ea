"""Where each value of a document stands in its text: a tree that rides beside the plain data."""

from __future__ import annotations

from typing import NamedTuple, Protocol

#: How a scalar or a collection was written.
PLAIN, SINGLE, DOUBLE, LITERAL, FOLDED = "plain", "'", '"', "|", ">"
JSON_TEXT, FLOW, BLOCK = "json", "flow", "block"
COLLECTIONS = (FLOW, BLOCK)


class Member(NamedTuple):
    """A value inside a collection; for a list item the key span is empty."""

    spot: Spot
    key_start: int = -1
    key_end: int = -1


class Spot(Protocol):
    """The span of one value: character indexes into the text, style, and its members.

    ``written`` is the text that a scalar stands for, before it is read as a number or a flag;
    ``None`` for a collection.
    """

    @property
    def start(self) -> int: ...
    @property
    def end(self) -> int: ...
    @property
    def style(self) -> str: ...
    @property
    def written(self) -> str | None: ...

    def member(self, step: str | int) -> Member | None:
        """The member at a key or an index, or ``None``."""
