"""Trails kept from every format are read and replayed: nothing comes out otherwise unnoticed."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from garboard.documents import read_document
from garboard.reports import Replayed, replayed
from garboard.trail import FORMAT, read_trail
from replay.workshop import workshop

KEPT = Path(__file__).parent / "kept"
NAMES = sorted(file.name for file in KEPT.glob("*.trail.json"))
LONGEST = 400_000


@cache
def known() -> dict[str, Any]:
    data = read_document(KEPT / "known.yaml").data
    assert isinstance(data, dict)
    return data


@cache
def result(name: str) -> Replayed:
    kept = read_trail(KEPT / name)
    return replayed(kept, workshop().replay(kept).trail)


def test_a_trail_of_every_format_is_kept() -> None:
    newest = int(FORMAT.partition("/")[2])
    assert [f"trail-{number}.trail.json" for number in range(1, newest + 1)] == NAMES
    assert sorted(known()) == NAMES
    assert all((KEPT / name).stat().st_size < LONGEST for name in NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_only_what_is_known_comes_out_otherwise(name: str) -> None:
    found, expected = result(name), known()[name]
    assert {each.name: f"{each.before} -> {each.after}" for each in found.quantities
            if each.name not in expected["quantities"]} == {}
    outcomes = {each["id"]: each["outcome"] for each in found.again.findings}
    otherwise = {each["id"]: outcomes.get(each["id"]) for each in found.kept.findings
                 if outcomes.get(each["id"]) != each["outcome"]}
    assert otherwise == expected["findings"]
    if not expected["quantities"]:
        assert [each for each in found.differences if not each.near] == []
