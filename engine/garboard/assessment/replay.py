"""An assessment made again from its trail alone: record, packs and exceptions as embedded there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from garboard.assessment.assess import Assessment, assess
from garboard.assessment.day import Day
from garboard.documents import check_signature
from garboard.expressions import Vocabulary
from garboard.packs import (
    SEALED_FORMAT,
    CheckedPack,
    Dispensation,
    Seal,
    check_pack,
    pack_from_data,
)
from garboard.quantities import Registry
from garboard.record import Record, read_record
from garboard.trail import Trail, canonical_bytes


def replay(trail: Trail, vocabulary: Vocabulary, registry: Registry, about: Mapping[str, Any],
           record: Record | None = None,
           packs: Sequence[CheckedPack] | None = None) -> Assessment:
    """The assessment that the trail is of, made again by this program.

    Nothing is read but the trail: packs that are installed do not count. Refused (RecordRefused,
    PackRefused and so on) where this program no longer accepts what the trail holds. With a
    ``record`` that one is assessed instead, with ``packs`` by those, everything else as in the
    trail.
    """
    data = trail.assessment
    return assess(read_record(trail.written) if record is None else record,
                  packs_of(trail, vocabulary) if packs is None else packs, registry,
                  Day(date.fromisoformat(trail.date), data["date_from"]), about,
                  dispensations=[Dispensation.from_data(each) for each in data["dispensations"]],
                  previous=trail.previous)


def packs_of(trail: Trail, vocabulary: Vocabulary) -> list[CheckedPack]:
    """The packs embedded in a trail, compiled; PackRefused where this program refuses one.

    One that came sealed is so still; SignatureRefused where its signature does not hold.
    """
    return [check_pack(replace(pack_from_data(pack["resolved"]), seal=_seal(pack)), vocabulary)
            for pack in trail.packs]


def _seal(pack: Mapping[str, Any]) -> Seal | None:
    if pack["status"] != "sealed":
        return None
    block = pack.get("signature")
    return Seal(None if block is None else check_signature(
        SEALED_FORMAT, canonical_bytes(pack["resolved"]), block))
