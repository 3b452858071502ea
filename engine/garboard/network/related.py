"""What a relation leads to, and what makes it unknown."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import cast

from garboard.record import SUBJECTS, Thing
from garboard.values import NOT_RECORDED, Unknown

#: One id, several, ``None`` for none, or unknown.
Related = str | tuple[str, ...] | Unknown | None


def recorded(thing: Thing, field: str) -> Related:
    """The id or ids a field of a thing names."""
    fact = thing.facts.get(field)
    if fact is None:
        return not_recorded(f"{thing.id}.{field}")
    return cast(Related, fact.value)


def not_recorded(path: str, detail: str = "") -> Unknown:
    return Unknown.because(NOT_RECORDED, path, detail)


def list_path(subject: str) -> str:
    return SUBJECTS[subject].list_key or {"conductor": "runs", "device": "runs",
                                          "switch": "runs"}.get(subject, subject)


def unless(unknown: Unknown | None, known: Callable[[], Related]) -> Related:
    """What is known, unless something it rests on is unknown."""
    return known() if unknown is None else unknown


def joined(values: Iterable[object]) -> Unknown | None:
    """All unknowns among some values as one, or ``None``."""
    found: Unknown | None = None
    for value in values:
        if isinstance(value, Unknown):
            found = value if found is None else found.joined(value)
    return found
