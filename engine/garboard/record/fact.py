"""One recorded fact: its value, and everything the record says about where it comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True, eq=False)
class Fact:
    """A fact as read, with the words it was written in.

    ``value`` is a float in the canonical unit, bounds, a count, a text, a flag, a date, a conductor
    size, an id or ids, or an unknown (not determinable, conflict). ``written`` is the scalar as it
    stands in the record, with its tolerance if it has one. ``origin`` is how it was found out
    (measured, nameplate ...), ``evidence`` the ids of what shows it, ``extras`` the values of the
    further keys its field allows. A fact can be pickled, and with it a whole record.
    """

    value: Any
    written: str
    origin: str | None = None
    method: str | None = None
    evidence: tuple[str, ...] = ()
    note: str | None = None
    extras: Mapping[str, Any] = field(default_factory=dict)
