"""The record in a trail: every fact as read, in canonical units."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from garboard.documents import Document
from garboard.record import SUBJECTS, Fact, Record, Thing
from garboard.trail import Encoded, record_part, value_as_data
from garboard.values import Bounds
from garboard.values.units import DIMENSIONS


def record_in_trail(record: Record) -> Encoded:
    """The record part: as written, and each fact by its data path (``pack-1.capacity``)."""
    read = {f"{thing.id}.{name}": _fact(thing.subject, name, fact)
            for thing in all_things(record) for name, fact in thing.facts.items()}
    return record_part(record.written, read)


def all_things(record: Record) -> Iterator[Thing]:
    """Every thing aboard, and the parts of each (``f1.breaks[0]``)."""
    for thing in record.things.values():
        yield from _with_parts(thing)


def _with_parts(thing: Thing) -> Iterator[Thing]:
    yield thing
    for name, parts in thing.groups.items():
        if name != "through":
            for part in parts:
                yield from _with_parts(part)


def _fact(subject: str, name: str, fact: Fact) -> dict[str, Any]:
    data: dict[str, Any] = {"value": value_as_data(fact.value), "written": fact.written}
    unit = _unit(subject, name)
    if unit is not None:
        data["unit"] = unit
    if fact.origin is not None:
        data["from"] = fact.origin
    if fact.method is not None:
        data["method"] = fact.method
    if fact.note is not None:
        data["note"] = fact.note
    if fact.evidence:
        data["evidence"] = list(fact.evidence)
    if fact.extras:
        data["extras"] = {key: value_as_data(value) for key, value in fact.extras.items()}
    if isinstance(fact.value, Bounds):
        data["basis"] = list(fact.value.basis)
    return data


@cache
def _unit(subject: str, name: str) -> str | None:
    """The canonical unit of a field, where it has one."""
    field = SUBJECTS[subject].fields.get(name)
    return None if field is None or field.dimension is None else DIMENSIONS[field.dimension].unit


def places_of(record: Record, document: Document | None) -> dict[str, dict[str, Any]]:
    """Where each thing stands in the file it was read from, for the part outside the digest."""
    if document is None:
        return {}
    places = {}
    for thing in record.things.values():
        place = document.place(thing.path)
        places[thing.id] = {"file": place.file, "line": place.line, "column": place.column}
    return places
