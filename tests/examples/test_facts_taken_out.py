"""What a fact is worth: taken out of a record that meets the pack, it never leaves a pass behind
that it was needed for, and never turns anything into a pass or a failure."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from examples.launch import FOLDER, trail_of
from garboard.documents import read_document
from garboard.trail import Trail

RECORD = read_document(FOLDER / "after-corrected.yaml").data
#: Keys that name things or say what is joined to what, and the day of an answer that holds for a
#: time: without them there is no record. Without its tolerance a figure counts as exact.
STRUCTURE = ("format", "evidence", "id", "from", "to", "through", "conductor", "fuse", "breaker",
             "switch", "value", "note", "vessel", "survey", "on", "plus_minus")
Steps = tuple[str, ...]


def keys(data: Any, steps: Steps = ()) -> Iterator[Steps]:
    """Every way to a key below, without positions in lists: one way leads to all their things."""
    if isinstance(data, list):
        for each in data:
            yield from keys(each, steps)
    elif isinstance(data, dict):
        for key, value in data.items():
            if key not in STRUCTURE and len(steps) > 0:
                yield (*steps, key)
            if key not in ("format", "evidence", "vessel", "survey"):
                yield from keys(value, (*steps, key))


def without(data: Any, steps: Steps) -> Any:
    """The data without a key, wherever the steps lead to it."""
    if isinstance(data, list):
        return [without(each, steps) for each in data]
    if not isinstance(data, dict):
        return data
    step, *rest = steps
    if not rest:
        return {key: value for key, value in data.items() if key != step}
    return {key: without(value, tuple(rest)) if key == step else value
            for key, value in data.items()}


WAYS = sorted(set(keys(RECORD)))


@cache
def outcomes(steps: Steps, folder: Path) -> dict[tuple[str, str], str]:
    data = copy.deepcopy(RECORD) if not steps else without(RECORD, steps)
    file = folder / "record.json"
    file.write_text(json.dumps(data), "utf-8")
    return by_rule_and_item(trail_of(file))


def by_rule_and_item(trail: Trail) -> dict[tuple[str, str], str]:
    return {(each["rule"], each["item"]): each["outcome"] for each in trail.findings}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("records")


@pytest.mark.parametrize("steps", WAYS, ids=".".join)
def test_a_missing_fact_decides_nothing(steps: Steps, folder: Path) -> None:
    before, after = outcomes((), folder), outcomes(steps, folder)
    decided = {key: outcome for key, outcome in after.items()
               if outcome != "not assessed" and before.get(key) != outcome}
    assert decided == {}


def test_every_rule_that_passes_needs_a_fact_for_it(folder: Path) -> None:
    passing = {rule for (rule, _), outcome in outcomes((), folder).items() if outcome == "passed"}
    assert len(passing) > 50
    lost = {rule for steps in WAYS for (rule, _), outcome in outcomes(steps, folder).items()
            if outcome == "not assessed"}
    assert passing - lost == set()
