"""JSON data together with their canonical bytes: what stays the same is encoded once and kept."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from garboard.trail.canonical import canonical_bytes, canonical_form
from garboard.trail.digest import digest_of_bytes


@dataclass(frozen=True, slots=True, eq=False)
class Encoded:
    """JSON data with their texts in NFC, treated as frozen, and their canonical bytes."""

    data: Any
    canonical: bytes = field(repr=False)

    @property
    def digest(self) -> str:
        """``sha256:`` and the hexadecimal SHA-256 of the canonical bytes."""
        return digest_of_bytes(self.canonical)


def encoded(data: object) -> Encoded:
    """Data encoded; what is encoded already is taken as it is. ReadingError when it is no JSON."""
    return data if isinstance(data, Encoded) else Encoded(*canonical_form(data))


def encoded_object(members: Mapping[str, object]) -> Encoded:
    """An object of members, of which those that are encoded already are not looked at again.

    The names of members are in ASCII.
    """
    parts = {name: encoded(members[name]) for name in sorted(members)}
    return Encoded({name: part.data for name, part in parts.items()},
                   b"{%b}" % b",".join(b"%b:%b" % (canonical_bytes(name), part.canonical)
                                       for name, part in parts.items()))


def encoded_list(items: list[Encoded]) -> Encoded:
    """A list of what is encoded already."""
    return Encoded([each.data for each in items],
                   b"[%b]" % b",".join(each.canonical for each in items))
