"""Trails kept from every format are read and replayed: nothing comes out otherwise unnoticed."""

from __future__ import annotations

from collections.abc import Mapping
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


def resting_on(derivations: Mapping[str, Any], key: str) -> set[str]:
    """The quantities a figure rests on, its own among them."""
    found, waiting = set(), [key]
    while waiting:
        derivation = derivations.get(waiting.pop())
        if derivation is not None and derivation["quantity"] not in found:
            found.add(derivation["quantity"])
        waiting += [] if derivation is None else [
            each for given in derivation["inputs"] for each in given["of"]]
    return found


def test_a_trail_of_every_format_is_kept() -> None:
    newest = int(FORMAT.partition("/")[2])
    assert [f"trail-{number}.trail.json" for number in range(1, newest + 1)] == NAMES
    assert sorted(known()) == NAMES
    assert all((KEPT / name).stat().st_size < LONGEST for name in NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_the_same_findings_come_out_but_for_those_that_are_known(name: str) -> None:
    outcomes = {each["id"]: each["outcome"] for each in result(name).again.findings}
    otherwise = {each["id"]: outcomes.get(each["id"]) for each in result(name).kept.findings
                 if outcomes.get(each["id"]) != each["outcome"]}
    assert otherwise == {key: said["now"] for key, said in known()[name].items()}


@pytest.mark.parametrize("name", NAMES)
def test_a_figure_only_moves_with_the_version_of_a_calculation(name: str) -> None:
    found = result(name)
    renewed = {each.name for each in found.quantities if "described otherwise" not in each.after}
    sides = [trail.assessment["derivations"] for trail in (found.kept, found.again)]
    moved = {key for key in sides[0].keys() & sides[1].keys()
             if any(each.path.startswith(f'derivations["{key}"].value') and not each.near
                    for each in found.differences)}
    causes = {key: resting_on(sides[0], key) | resting_on(sides[1], key) for key in moved}
    assert {key for key in moved if not causes[key] & renewed} == set()
