"""The nearest known name to a misspelt one, or nothing when none is near enough."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import get_close_matches


def nearest(name: str, known: Iterable[str], cutoff: float = 0.72) -> str | None:
    """The closest of ``known`` to ``name``; ``None`` rather than a silly guess.

    Where none is spelt alike, the only one of which the name is a word (``sources`` of
    ``charging_sources``), or that is a word of the name.
    """
    if len(name) > 200:
        return None
    names = sorted(set(known))
    matches = get_close_matches(name, names, n=1, cutoff=cutoff)
    if matches:
        return matches[0]
    words = _words(name)
    holding = [each for each in names if (theirs := _words(each)) and words
               and (words < theirs or theirs < words)]
    return holding[0] if len(holding) == 1 else None


def _words(name: str) -> set[str]:
    """The words of a name that are long enough to tell something."""
    return {word for word in re.split("[^a-z]+", name.lower()) if len(word) > 3}


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A hint sentence naming the nearest name, or an empty text."""
    guess = nearest(name, known)
    return f"did you mean {guess!r}?" if guess else ""
