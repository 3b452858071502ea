"""A pack from its resolved form, as a trail keeps it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from garboard.errors import PackRefused, Problem
from garboard.packs.draft import draft_pack
from garboard.packs.pack import Pack
from garboard.packs.spot import Spot

_OF_A_LIMIT: Final = ("written", "amount", "dimension", "unit", "citation")


def pack_from_data(data: Mapping[str, object]) -> Pack:
    """The pack whose ``as_data`` this is.

    PackRefused, without places, when the data is not the resolved form of a pack: when it breaks
    the format, or when a limit's amount is not what its text says.
    """
    draft = draft_pack(Spot(None, (), _as_written(data)))
    if draft.refused:
        raise PackRefused(draft.problems)
    pack = draft.pack()
    resolved = pack.as_data()
    differing = [key for key in sorted({*resolved, *data}) if resolved.get(key) != data.get(key)]
    if differing:
        raise PackRefused([Problem("pack-data-differs", found=", ".join(differing))])
    return pack


def _as_written(data: Mapping[str, object]) -> dict[str, object]:
    """The resolved form as one file would hold it: limits as they were written."""
    written = dict(data)
    limits = data.get("limits")
    if isinstance(limits, dict):
        written["limits"] = {name: _limit_as_written(limit) for name, limit in limits.items()}
    return written


def _limit_as_written(limit: object) -> object:
    if not isinstance(limit, dict) or not set(limit) <= set(_OF_A_LIMIT):
        return limit
    return {"value": limit.get("written"), "citation": limit.get("citation")}
