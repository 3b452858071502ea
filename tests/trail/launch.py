"""The hand-made trail of the launch Grey Heron: its parts, which may be changed, and the trail."""

from __future__ import annotations

from copy import deepcopy
from functools import lru_cache
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from garboard.trail import Trail, digest_of, finding_id, make_trail, record_part

_STATEMENT = ("left", "relation", "right")


@lru_cache(maxsize=1)
def _written() -> dict[str, Any]:
    text = (Path(__file__).parent / "launch.yaml").read_text(encoding="utf-8")
    return YAML(typ="safe", pure=True).load(text)


def launch_parts() -> dict[str, Any]:
    """The keyword arguments of ``make_trail``, new each time."""
    parts = deepcopy(_written())
    parts["record"] = record_part(**parts["record"]).data
    for pack in parts["packs"]:
        pack["traces"] = {rule: _trace(**trace) for rule, trace in pack["traces"].items()}
        pack["digest"] = digest_of(pack["resolved"])
    pack = parts["packs"][0]
    about = {rule["id"]: rule["about"] for rule in pack["resolved"]["rules"]}
    parts["findings"] = [finding(pack["pack"], about, **each) for each in parts["findings"]]
    return parts


def _trace(operands: list[list[Any]], statements: list[list[Any]]) -> dict[str, Any]:
    return {
        "operands": [{"part": part, "text": text, "kind": kind, "dimension": dimension,
                      "unit": unit, "constant": bool(limit), "limit": limit[0] if limit else None}
                     for part, text, kind, dimension, unit, *limit in operands],
        "statements": [dict(zip(_STATEMENT, each, strict=True)) for each in statements]}


def finding(pack: str, about: dict[str, str], *, rule: str, item: str | None, outcome: str,
            **rest: Any) -> dict[str, Any]:
    """A finding in full from what is worth saying about it."""
    empty: dict[str, Any] = {"reason": None, "flags": [], "missing": [], "operands": [], "of": [],
                             "holds": [], "decides": []}
    return {"id": finding_id(pack, rule, item), "pack": pack, "rule": rule, "item": item,
            "subject": about[rule], "outcome": outcome, **empty, **rest}


def launch_trail(**changed: Any) -> Trail:
    """The trail, with some of its parts changed."""
    return make_trail(**{**launch_parts(), **changed})
