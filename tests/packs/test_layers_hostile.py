"""Odd values anywhere in a layered pack, as written or as a trail keeps it: read or refused."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

from garboard.errors import GarboardError
from garboard.packs import Shelf, check_pack, load_pack, pack_from_data
from packs.layered import WHY, loaded, on_top, written
from packs.small_vocabulary import VOCABULARY

ODD: tuple[Any, ...] = (None, True, 7, -1, 1e300, "", "x" * 300, "\u202e", [], ["a"], {}, {"a": 1},
                        [[]], [None], {"": None})
TOP = on_top(f"rule: near, retire: true{WHY}", f"limit: least, value: 4 A{WHY}",
             "rule: rated, severity: danger", more="""\
acceptance:
  must_have_passed: [rated]
  referred_when: [{says: A, outcome: failed, severity: [danger], rules: [rated], at_least: 2}]
questions: [{id: q, ask: Q?, answer: {type: boolean}, holds_for: 1 day, evidence: required}]
""")


def places(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    inside = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(
        data, list) else ()
    for key, value in inside:
        yield (*path, key)
        yield from places(value, (*path, key))


def changed(data: Any, path: tuple[Any, ...], value: Any) -> Any:
    copy = deepcopy(data)
    holder = copy
    for step in path[:-1]:
        holder = holder[step]
    holder[path[-1]] = value
    return copy


def written_data() -> Any:
    from ruamel.yaml import YAML

    return YAML(typ="safe", pure=True).load(TOP)


@pytest.mark.parametrize("part", ["layers", "set_by", "relaxations", "acceptance", "rules"])
def test_a_resolved_form(tmp_path: Path, part: str) -> None:
    data = json.loads(json.dumps(loaded(tmp_path, top=TOP).pack.as_data()))
    tried = 0
    for path in places(data):
        if path[0] != part or (part == "rules" and path[1:2] not in ((0,), ())):
            continue
        for odd in ODD:
            tried += 1
            try:
                pack = pack_from_data(changed(data, path, odd))
                assert json.loads(json.dumps(pack.as_data())) == changed(data, path, odd)
                check_pack(pack, VOCABULARY)
            except GarboardError:
                continue
    assert tried > 30


@pytest.mark.parametrize("part", ["builds_on", "changes", "acceptance", "questions"])
def test_a_layer_as_written(tmp_path: Path, part: str) -> None:
    data, tried = written_data(), 0
    written(tmp_path)
    for path in places(data):
        if path[0] != part:
            continue
        for odd in ODD:
            tried += 1
            (tmp_path / "top.yaml").write_text(json.dumps(changed(data, path, odd)), "utf-8")
            try:
                load_pack(tmp_path / "top.yaml", VOCABULARY, Shelf(()))
            except GarboardError as refused:
                assert str(refused)
    assert tried > 30
