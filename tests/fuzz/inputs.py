"""What strangers can hand in, and what each of them may do: be read, or be refused by name.

One function per way in. Anything but a refusal, or a refusal without problems, is a defect; each
defect found stays as an input of ``test_found.py``.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from copy import deepcopy
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final

from garboard.assembly.workshop import Workshop, open_workshop
from garboard.documents import Limits, read_text, shipped_folder
from garboard.errors import DocumentRefused, PackRefused, RecordRefused, Refused
from garboard.expressions import (
    ExpressionRefused,
    NameInfo,
    Vocabulary,
    parse,
    read_expression,
)
from garboard.packs import CheckedPack, check_pack, read_pack_text
from garboard.record import read_record

EXAMPLES: Final = Path(__file__).parents[2] / "examples"
ODD: Final[tuple[Any, ...]] = (
    None, True, -1, 0, 2.5, 1e308, "", "x", "5 A", "0.5 m", "-0 V", "1 .. 2 V", "2/0 AWG", "[",
    "\x00", "é", "(" * 60, "x" * 5000, "not recorded", "pack-1.positive", [], {}, [None], [[]],
    {"": None}, {"value": "1 V", "plus_minus": "10 %"}, {"not_determinable": ""}, ["LFP", 3],
    "2026-02-30", "true", "battery.voltage >= 1", 10 ** 30)


@cache
def _workshop() -> Workshop:
    return open_workshop()


@cache
def _packs() -> tuple[CheckedPack, ...]:
    return _workshop().load_packs(["small-craft-lithium"])


def vocabulary() -> Vocabulary:
    return _workshop().vocabulary


# the ways in -------------------------------------------------------------------------------------
def try_expression(text: str) -> None:
    """An expression of a rule about a battery."""
    try:
        parse(text)
        read_expression(text, vocabulary(), "battery", {"least": NameInfo("number", "voltage")})
    except ExpressionRefused as refused:
        assert refused.problems
        assert all(0 <= each.offset <= len(text) and each.length >= 1 for each in refused.problems)


def try_document(text: str) -> None:
    """A YAML or JSON document."""
    for name in ("x.yaml", "x.json"):
        try:
            read_text(text, name, Limits(depth=20))
        except DocumentRefused as refused:
            _said(refused)


def try_record(text: str) -> None:
    """An installation record."""
    try:
        read_record(read_text(text))
    except (DocumentRefused, RecordRefused) as refused:
        _said(refused)


def try_pack(text: str) -> None:
    """A rule pack."""
    try:
        check_pack(read_pack_text(text), vocabulary())
    except PackRefused as refused:
        _said(refused)


def try_assessment(text: str) -> None:
    """A record, assessed with a shipped pack as far as it can be read."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "record.yaml"
        file.write_text(text, encoding="utf-8", errors="replace", newline="")
        try:
            _workshop().assess(file, _packs())
        except Refused as refused:
            _said(refused)


def _said(refused: Refused) -> None:
    assert refused.problems
    assert str(refused)
    assert all(each.place is not None for each in refused.problems)


WAYS_IN: Final[Mapping[str, Callable[[str], None]]] = {
    "expression": try_expression, "document": try_document, "record": try_record,
    "pack": try_pack, "assessment": try_assessment,
}


# what to begin with ------------------------------------------------------------------------------
def seeds() -> Iterator[tuple[str, str]]:
    """Ways in with texts that are right, from what is shipped and the examples."""
    packs = sorted(shipped_folder("rulepacks").glob("*/rules/*.yaml"))
    for file in packs:
        for rule in read_text(file.read_text("utf-8")).data.get("rules", []):
            for key in ("must_hold", "applies_when"):
                if isinstance(rule.get(key), str):
                    yield "expression", rule[key]
    for file in sorted(EXAMPLES.glob("*/*.yaml")):
        yield "record", file.read_text("utf-8")
    for data in whole_packs():
        yield "pack", json.dumps(data, ensure_ascii=False)


@cache
def whole_packs() -> tuple[Any, ...]:
    """Packs of one rule with all a pack can say, as data."""
    found = []
    for name in ("small-craft-lithium", "small-craft-dc", "teaching-first-steps"):
        folder = shipped_folder("rulepacks") / name
        head = read_text((folder / "pack.yaml").read_text("utf-8")).data
        for file in sorted((folder / "rules").glob("*.yaml")):
            part = read_text(file.read_text("utf-8")).data
            found.append({**head, **{key: {**head.get(key, {}), **value}
                                     if isinstance(value, dict) else value
                                     for key, value in part.items() if key != "rules"},
                          "rules": part.get("rules", [])[:3]})
    return tuple(found)


@cache
def whole_records() -> tuple[Any, ...]:
    """The records of the examples, as data."""
    texts = (text for way, text in seeds() if way == "record")
    return tuple(data for data in (read_text(text).data for text in texts)
                 if isinstance(data, dict) and "batteries" in data)


def spots(data: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Every data path of a document."""
    pairs = data.items() if isinstance(data, dict) else (
        enumerate(data) if isinstance(data, list) else ())
    for key, each in pairs:
        yield (*path, key)
        yield from spots(each, (*path, key))


def changed(data: Any, choose: Callable[[int], int], changes: int) -> Any:
    """``data`` with some places replaced by odd values, removed, repeated or renamed.

    ``choose(n)`` gives a number from 0 to n - 1.
    """
    copy = deepcopy(data)
    for _ in range(changes):
        places = list(spots(copy))
        if not places:
            break
        path = places[choose(len(places))]
        holder = copy
        for step in path[:-1]:
            holder = holder[step]
        last = path[-1]
        match choose(5):
            case 0:
                del holder[last]
            case 1 if isinstance(holder, list):
                holder.append(deepcopy(holder[last]))
            case 1:
                holder[f"{last}x"] = holder.pop(last)
            case 2:
                source = places[choose(len(places))]
                value = copy
                for step in source:
                    value = value[step] if not isinstance(value, str) else value
                holder[last] = deepcopy(value)
            case _:
                holder[last] = deepcopy(ODD[choose(len(ODD))])
    return copy
