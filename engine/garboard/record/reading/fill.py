"""Filling things from mappings, key by key, along the shapes of the models."""

from __future__ import annotations

from typing import Any, Final

from garboard.record.fact import Fact
from garboard.record.leaves import Identity
from garboard.record.leaves.leaf_reading import LeafReading
from garboard.record.leaves.parts import PARTS
from garboard.record.leaves.read_leaf import read_leaf
from garboard.record.leaves.remarks import REMARKS
from garboard.record.reading.draft import Draft
from garboard.record.reading.structure import is_list, is_mapping, unknown_key
from garboard.record.shape import GroupSlot, LeafSlot, ListSlot, Shape, Slot
from garboard.record.thing import DataPath, Thing

#: The kinds of device by the key they stand under in a run.
_DEVICE_KIND: Final = {"fuse": Fact("fuse", "fuse"), "breaker": Fact("breaker", "breaker")}
#: How many keys of a part are shown where a list of parts belongs.
_KEYS_SHOWN: Final = 3


def fill(draft: Draft, shape: Shape, data: dict[str, Any], path: DataPath, thing: Thing) -> None:
    """Read every key of a mapping into the facts and groups of a thing."""
    slots = shape.slots
    facts = thing.facts
    for key, written in data.items():
        slot = slots.get(key)
        if type(slot) is LeafSlot:
            if type(written) is str:
                known = slot.memo.get(written)
                if known is not None:
                    for name, fact in known:
                        facts[name] = fact
                    if slot.refers:
                        draft.mention(slot.leaf, known[0][1].value, (*path, key))
                    continue
            _leaf(draft, slot, written, (*path, key), thing)
        elif slot is None:
            unknown_key(draft, shape.slots, key, path)
        else:
            _branch(draft, slot, written, (*path, key), thing)
    for key in shape.required:
        if key not in data:
            draft.notes.refuse("key-missing", path, f"no {key!r}", f"the key {key!r}")


def thing_from(draft: Draft, shape: Shape, data: object, path: DataPath) -> Thing | None:
    """A thing of its own, with an id; ``None`` when what stands there is no mapping."""
    if not is_mapping(data, draft, path):
        draft.miss(shape.subject)
        return None
    identity = data.get("id")
    thing = Thing(identity if isinstance(identity, str) and identity else "", shape.subject, path)
    fill(draft, shape, data, path, thing)
    if thing.id:
        draft.admit(thing)
    else:
        draft.miss(shape.subject)
    return thing


def _leaf(draft: Draft, slot: LeafSlot, written: object, path: DataPath, thing: Thing) -> None:
    reading = read_leaf(slot.leaf, written, slot.name, thing.id)
    if reading.problems or reading.unlikely:
        draft.notes.take(reading, path)
    if isinstance(slot.leaf, Identity):
        reading.facts.clear()
    facts = thing.facts
    for name, fact in reading.facts:
        facts[name] = fact
    if type(written) is str:
        slot.remember(written, reading)
    _mentions(draft, slot, written, path, reading)


def _mentions(draft: Draft, slot: LeafSlot, written: object, path: DataPath,
              reading: LeafReading) -> None:
    for at, ids in reading.evidence:
        draft.mention(REMARKS["evidence"], ids, (*path, *at))
    if slot.refers and reading.facts:
        where = (*path, "value") if isinstance(written, dict) else path
        draft.mention(slot.leaf, reading.facts[-1][1].value, where)


def _branch(draft: Draft, slot: Slot, written: object, path: DataPath, thing: Thing) -> None:
    if isinstance(slot, ListSlot):
        if slot.key == "through":
            _through(draft, slot, written, path, thing)
        else:
            _parts(draft, slot, written, path, thing)
    elif isinstance(slot, GroupSlot):
        _group(draft, slot, written, path, thing)


def _group(draft: Draft, slot: GroupSlot, written: object, path: DataPath, thing: Thing) -> None:
    if slot.word is not None:
        if not isinstance(written, dict) or {"value", "not_determinable"} & written.keys():
            _leaf(draft, LeafSlot(slot.key, slot.name, slot.word), written, path, thing)
            return
        thing.facts[slot.name] = slot.word.reads_as(written)
    if is_mapping(written, draft, path):
        fill(draft, slot.shape, written, path, thing)


def _parts(draft: Draft, slot: ListSlot, written: object, path: DataPath, thing: Thing) -> None:
    """A list of parts that have no id of their own; the list may be not determinable."""
    if (slot.may_be_not_determinable and isinstance(written, dict)
            and "not_determinable" in written):
        _leaf(draft, LeafSlot(slot.key, slot.name, PARTS), written, path, thing)
        return
    if not is_list(written, draft, path, _list_form(slot)):
        return
    parts = []
    for position, data in enumerate(written):
        at = (*path, position)
        if is_mapping(data, draft, at):
            part = Thing(f"{thing.id}.{slot.name}[{position}]", slot.shape.subject, at)
            fill(draft, slot.shape, data, at, part)
            parts.append(part)
    thing.groups[slot.name] = tuple(parts)


def _list_form(slot: ListSlot) -> str:
    """What a list of parts looks like, by the first keys of one."""
    keys = list(slot.shape.slots)
    shown = ", ".join(f"{key}: …" for key in keys[:_KEYS_SHOWN])
    return f"a list, such as [{{{shown}}}]"


def _through(draft: Draft, slot: ListSlot, written: object, path: DataPath, run: Thing) -> None:
    """What a run passes through: a list of mappings with one key each."""
    if not is_list(written, draft, path):
        draft.miss("run")
        return
    parts = []
    for position, data in enumerate(written):
        at = (*path, position)
        if not is_mapping(data, draft, at):
            draft.miss("run")
            continue
        known = [key for key in data if key in slot.shape.slots]
        for key in data:
            if key not in slot.shape.slots:
                draft.miss("run")
                unknown_key(draft, slot.shape.slots, key, at)
        if len(known) > 1:
            draft.notes.refuse("through-one-key", (*at, known[1]), f"{', '.join(known)} together",
                               "one part in each item", "put a dash before each part", key=True)
        if not data:
            draft.notes.refuse("through-one-key", at, "an empty mapping",
                               f"one of {', '.join(slot.shape.slots)}")
        for key in known:
            part_slot = slot.shape.slots[key]
            assert isinstance(part_slot, GroupSlot)
            part = thing_from(draft, part_slot.shape, data[key], (*at, key))
            if part is not None:
                parts.append(part)
                if key in _DEVICE_KIND:
                    part.facts["kind"] = _DEVICE_KIND[key]
    run.groups[slot.name] = tuple(parts)
