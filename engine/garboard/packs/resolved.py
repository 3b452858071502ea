"""A pack from its resolved form, as a trail keeps it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from garboard.errors import PackRefused, Problem
from garboard.packs.draft import draft_pack
from garboard.packs.header import Header
from garboard.packs.layering import ADDED, Layering, Retired
from garboard.packs.pack import Pack
from garboard.packs.rule import Rule
from garboard.packs.spot import Spot

_OF_A_LAYER: Final = ("builds_on", "changes")
_OF_LAYERS: Final = ("layers", "set_by", "relaxations")
_OF_A_LIMIT: Final = ("written", "amount", "dimension", "unit", "citation")


def pack_from_data(data: Mapping[str, object], stands: Spot | None = None) -> Pack:
    """The pack whose ``as_data`` this is; ``stands`` says where, if it stands in a file.

    PackRefused when the data is not the resolved form of a pack: when it breaks
    the format, or when a limit's amount is not what its text says.
    """
    at = Spot(None, (), data) if stands is None else stands
    unresolved = [key for key in _OF_A_LAYER if key in data]
    if unresolved:
        raise PackRefused([Problem("pack-data-differs", at.place(), found=", ".join(unresolved))])
    draft = draft_pack(Spot(at.document, at.path, _as_written(data)))
    if draft.refused:
        raise PackRefused(draft.problems)
    pack = draft.pack()
    if "layers" in data:
        pack = _layered(pack, data, at)
    resolved = pack.as_data()
    differing = [key for key in sorted({*resolved, *data}) if resolved.get(key) != data.get(key)]
    if differing:
        raise PackRefused([Problem("pack-data-differs", at.place(), found=", ".join(differing))])
    return pack


def _layered(pack: Pack, data: Mapping[str, Any], at: Spot) -> Pack:
    """The pack with what it remembers of its layers; its retired rules apart."""
    try:
        said = {rule["id"]: rule["retired"] for rule in data["rules"] if "retired" in rule}
        retired = tuple(Retired(rule, **said[rule.id]) for rule in pack.rules if rule.id in said)
        layering = Layering.from_data(data, retired)
        told = {each.what for each in layering.relaxations if each.change == "retired"}
        changes = {each.change for each in layering.relaxations}
        if told != {f"rule {each}" for each in said} or not changes <= {"relaxed", "retired"}:
            raise ValueError
        if not _set_by_layers(pack, layering, set(said)):
            raise ValueError
    except (KeyError, TypeError, ValueError, AttributeError) as wrong:
        raise PackRefused([Problem("pack-data-differs", at.place(),
                                   found=", ".join(_OF_LAYERS))]) from wrong
    return replace(pack, layering=layering,
                   rules=tuple(rule for rule in pack.rules if rule.id not in said))


def _set_by_layers(pack: Pack, layering: Layering, retired: set[str]) -> bool:
    """Whether it is said of everything in the pack who added it, and only of that who set it."""
    parts: dict[tuple[str, str], set[str]] = {("head", ""): {*Header.model_fields}}
    parts |= {("limit", name): {"value", "citation"} for name in pack.limits}
    parts |= {("rule", rule.id): {*Rule.model_fields, *(("retire",) if rule.id in retired else ())}
              for rule in pack.rules}
    known = all(of == ADDED or of in parts.get((kind, name), ())
                for kind, name, of in layering.set_by)
    added = {(kind, name) for kind, name, of in layering.set_by if of == ADDED}
    gone = {name for kind, name, of in layering.set_by if (kind, of) == ("rule", "retire")}
    return (known and added == set(parts) and gone == retired
            and all(layer.count(" ") == 1 for layer in layering.set_by.values()))


def _as_written(data: Mapping[str, object]) -> dict[str, object]:
    """The resolved form as one file would hold it: limits as they were written."""
    written = {key: value for key, value in data.items() if key not in _OF_LAYERS}
    rules = data.get("rules")
    if "layers" in data and isinstance(rules, list):
        written["rules"] = [{key: value for key, value in rule.items() if key != "retired"}
                            if isinstance(rule, dict) else rule for rule in rules]
    limits = data.get("limits")
    if isinstance(limits, dict):
        written["limits"] = {name: _limit_as_written(limit) for name, limit in limits.items()}
    return written


def _limit_as_written(limit: object) -> object:
    if not isinstance(limit, dict) or not set(limit) <= set(_OF_A_LIMIT):
        return limit
    return {"value": limit.get("written"), "citation": limit.get("citation")}
