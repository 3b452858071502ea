"""The nearest known name to a misspelt one, or nothing when none is near enough."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(name: str, known: Iterable[str], cutoff: float = 0.72) -> str | None:
    """The closest of ``known`` to ``name``; ``None`` rather than a silly guess."""
    if len(name) > 200:
        return None
    matches = get_close_matches(name, sorted(set(known)), n=1, cutoff=cutoff)
    return matches[0] if matches else None


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A hint sentence naming the nearest name, or an empty text."""
    guess = nearest(name, known)
    return f"did you mean {guess!r}?" if guess else ""
