"""One thing in a network that does not hang together as it should."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Irregularity:
    """One thing that is odd: its code, the ids concerned in order, and a sentence for people."""

    code: str
    items: tuple[str, ...]
    text: str
