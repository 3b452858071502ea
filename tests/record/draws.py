"""Drawn records: any fields of any things, each leaf in any form, with what it must read as.

A drawn leaf is what is written and the facts it must give, worked out here in exact fractions and
not by the reader.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from garboard.record.leaves import (
    Choice,
    Count,
    Day,
    Flag,
    LeafKind,
    Measure,
    RatedVoltage,
    Reference,
    References,
    Size,
    Window,
    Words,
)
from garboard.record.leaves.remarks import ORIGINS
from garboard.record.models.record import InstallationRecord
from garboard.record.shape import GroupSlot, LeafSlot, ListSlot, Shape, shape_of
from garboard.values import NOT_DETERMINABLE, TOLERANCE, UNCERTAINTY, Bounds, Unknown
from garboard.values.conductor_size import read_size
from garboard.values.units import DIMENSIONS

Facts = dict[str, Any]
#: What is written, and the facts by their name within the thing.
Drawn = tuple[Any, Facts]

#: One thing of each kind that can be referred to, so that every reference can be drawn.
IDS = {"place": "p", "battery": "b", "management_system": "m", "bus": "n", "source": "s",
       "load": "l", "run": "r", "conductor": "w", "device": "f", "switch": "k", "evidence": "e"}
_TEXT = st.text(st.characters(codec="utf-8", categories=("L", "N", "P")), min_size=1, max_size=12)
_NUMBER = st.integers(1, 99_999).flatmap(
    lambda digits: st.integers(0, 4).map(lambda places: Fraction(digits, 10 ** places)))


def decimal(number: Fraction) -> str:
    """A decimal fraction as people write it."""
    sign, number = ("-" if number < 0 else ""), abs(number)
    places = 0
    while number * 10 ** places != int(number * 10 ** places):
        places += 1
    digits = str(int(number * 10 ** places)).rjust(places + 1, "0")
    return sign + (f"{digits[:-places]}.{digits[-places:]}" if places else digits)


@st.composite
def scalar(draw: st.DrawFn, leaf: LeafKind, name: str) -> Drawn:
    """The scalar form of a leaf."""
    if isinstance(leaf, Measure):
        number = draw(_NUMBER)
        return f"{decimal(number)} {DIMENSIONS[leaf.of].unit}", {name: float(number)}
    if isinstance(leaf, Window):
        low, high = sorted((draw(_NUMBER), draw(_NUMBER)))
        ends = (float(low), float(high))
        return (f"{decimal(low)} .. {decimal(high)} {DIMENSIONS[leaf.of].unit}",
                {name: ends, f"{name}.low": ends[0], f"{name}.high": ends[1]})
    if isinstance(leaf, RatedVoltage):
        number, kind = draw(_NUMBER), draw(st.sampled_from(["DC", "AC"]))
        return f"{decimal(number)} V {kind}", {name: float(number), f"{name}.kind": kind}
    return draw(_plain(leaf).map(lambda drawn: (drawn[0], {name: drawn[1]})))


def _plain(leaf: LeafKind) -> st.SearchStrategy[tuple[Any, Any]]:
    """The scalar form of a leaf that gives one fact: what is written, and its value."""
    if isinstance(leaf, Count):
        counts = st.sampled_from(leaf.among) if leaf.among else st.integers(leaf.least, 9999)
        return counts.map(lambda count: (count, count))
    if isinstance(leaf, Choice):
        return st.sampled_from(leaf.among).map(lambda word: (word, word))
    if isinstance(leaf, Flag):
        return st.sampled_from([(True, True), (False, False), ("yes", True), ("no", False)])
    if isinstance(leaf, Day):
        return st.dates(date(1990, 1, 1), date(2060, 1, 1)).map(lambda day: (day.isoformat(), day))
    if isinstance(leaf, Size):
        return st.sampled_from(["50 mm2", "2/0 AWG", "4 SAE"]).map(lambda each: (each,
                                                                                 read_size(each)))
    if isinstance(leaf, Reference):
        return st.sampled_from([IDS[each] for each in leaf.to]).map(lambda each: (each, each))
    if isinstance(leaf, References):
        ids = st.lists(st.sampled_from([IDS[each] for each in leaf.to]), unique=True)
        return ids.map(lambda each: (each, tuple(each)))
    assert isinstance(leaf, Words)
    if leaf.pattern:
        return st.from_regex(leaf.pattern, fullmatch=True).filter(str.isascii).map(
            lambda each: (each, each))
    return _TEXT.map(lambda each: (each, each))


@st.composite
def leaf_form(draw: st.DrawFn, leaf: LeafKind, name: str, thing: str) -> Drawn:
    """A leaf in any form, with the facts it must give."""
    form = draw(st.sampled_from(["scalar", "scalar", "mapping", "spread", "not determinable"]))
    if form == "scalar" or not leaf.has_mapping:
        return draw(scalar(leaf, name))
    written: dict[str, Any] = {}
    if form == "not determinable":
        why = draw(_TEXT)
        written["not_determinable"] = why
        unknown = Unknown.because(NOT_DETERMINABLE, f"{thing}.{name}", why)
        parts = {Window: (".low", ".high"), RatedVoltage: (".kind",)}.get(type(leaf), ())
        facts: Facts = dict.fromkeys((name, *(f"{name}{part}" for part in parts)), unknown)
    else:
        written["value"], facts = draw(scalar(leaf, name))
        takes_share = isinstance(leaf, Measure) and leaf.of not in ("temperature", "ratio")
        if form == "spread" and takes_share:
            facts = {name: draw(_spread(written))}
    for key, extra in leaf.extras.items():
        if draw(st.booleans()):
            written[key], more = draw(scalar(extra, f"{name}.{key}"))
            facts |= more
    if draw(st.booleans()):
        written["from"] = draw(st.sampled_from(ORIGINS))
    if draw(st.booleans()):
        written["evidence"] = [IDS["evidence"]]
    return written, facts


@st.composite
def _spread(draw: st.DrawFn, written: dict[str, Any]) -> Bounds:
    key, basis = draw(st.sampled_from([("plus_minus", TOLERANCE), ("uncertainty", UNCERTAINTY)]))
    per_cent = draw(st.integers(1, 99))
    written[key] = f"{per_cent} %"
    nominal = Fraction(written["value"].partition(" ")[0])
    share = Fraction(per_cent, 100)
    return Bounds(float(nominal * (1 - share)), float(nominal * (1 + share)), float(nominal),
                  basis=(basis,))


@st.composite
def fields(draw: st.DrawFn, shape: Shape, thing: str) -> Drawn:
    """Some fields of a thing, groups included; lists of parts are left out."""
    written: dict[str, Any] = {}
    facts: Facts = {}
    for key, slot in shape.slots.items():
        if isinstance(slot, ListSlot) or key in ("id", "from", "to") or not draw(st.booleans()):
            continue
        if isinstance(slot, LeafSlot):
            written[key], more = draw(leaf_form(slot.leaf, slot.name, thing))
            facts |= more
        elif isinstance(slot, GroupSlot) and slot.word is None:
            written[key], more = draw(fields(slot.shape, thing))
            facts |= more
    return written, facts


@st.composite
def records(draw: st.DrawFn) -> tuple[dict[str, Any], dict[str, Facts]]:
    """A record with one thing of each kind, and the facts each thing must have."""
    shape = shape_of(InstallationRecord)
    data: dict[str, Any] = {"format": "installation-record/1"}
    facts: dict[str, Facts] = {}
    for key, slot in shape.slots.items():
        if isinstance(slot, GroupSlot):
            data[key], facts[key] = draw(fields(slot.shape, key))
        elif isinstance(slot, ListSlot) and key != "runs":
            identity = IDS[slot.shape.subject]
            written, facts[identity] = draw(fields(slot.shape, identity))
            data[key] = [{"id": identity, **written}]
    runs = shape.slots["runs"]
    assert isinstance(runs, ListSlot)
    through = runs.shape.slots["through"]
    assert isinstance(through, ListSlot)
    parts = []
    for kind in ("conductor", "fuse", "switch"):
        slot = through.shape.slots[kind]
        assert isinstance(slot, GroupSlot)
        identity = IDS[slot.shape.subject]
        written, facts[identity] = draw(fields(slot.shape, identity))
        parts.append({kind: {"id": identity, **written}})
    written, facts["r"] = draw(fields(runs.shape, "r"))
    written.pop("length", None)
    facts["r"] = {name: value for name, value in facts["r"].items() if name != "length"}
    data["runs"] = [{"id": "r", "from": "b.positive", "to": "n", "through": parts, **written}]
    return data, facts


def mappings(data: Any) -> Iterator[dict[str, Any]]:
    """Every mapping in some data, the outermost first."""
    if isinstance(data, dict):
        yield data
        for each in data.values():
            yield from mappings(each)
    elif isinstance(data, list):
        for each in data:
            yield from mappings(each)
