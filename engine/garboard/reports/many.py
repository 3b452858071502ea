"""Lists in a text when there are very many: the first, how many more, and where they all stand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final, TypeVar

#: How many of a kind a text names. A record of a whole boat seldom has more; the trail has no end.
MOST: Final = 50
_T = TypeVar("_T")


def named(words: Callable[[_T], str], things: Sequence[_T]) -> str:
    """Things by their words, with commas; of very many the first and how many more."""
    shown = ", ".join(map(words, things[:MOST]))
    return f"{shown} {and_more(len(things) - MOST)}" if len(things) > MOST else shown


def and_more(count: int, what: str = "") -> str:
    """``and 1,944 more (all stand in the trail)``."""
    return f"and {count:,} more{f' {what}' if what else ''} (all stand in the trail)"
