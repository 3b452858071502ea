"""Named limits on what is read; each is named, with its value, in the message that applies it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Limits:
    """How much one document may hold.

    ``size_bytes``     bytes of the file; a larger file is refused unread
    ``depth``          mappings and lists inside one another
    ``nodes``          values in a YAML document (JSON is read many times faster and has none)
    ``aliased_nodes``  values that all YAML aliases (``*name``) of a document stand for, together
    ``problems``       problems listed before reading stops
    """

    size_bytes: int = 4_000_000
    depth: int = 40
    nodes: int = 50_000
    aliased_nodes: int = 1_000
    problems: int = 100

    @classmethod
    def for_size(cls, megabytes: int) -> Limits:
        """The usual limits, with those on size and values raised or lowered in proportion."""
        return cls(size_bytes=megabytes * 1_000_000, nodes=megabytes * 12_500)

    def expected(self, name: str, what: str) -> str:
        """The ``expected`` text of a problem: ``at most 40 levels (limit depth)``."""
        return f"at most {getattr(self, name):,} {what} (limit {name})"


DEFAULT_LIMITS: Final = Limits()
