"""From a document to a record, or to all the problems that stand in the way."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import Any

from garboard.documents import Document
from garboard.errors import ReadingError, RecordRefused, in_order, nearest
from garboard.record.conflicts import find_conflicts
from garboard.record.fact import Fact
from garboard.record.format import RECORD_FORMAT, Format
from garboard.record.models.record import InstallationRecord
from garboard.record.reading.answers import read_answers
from garboard.record.reading.circuits import check_circuits
from garboard.record.reading.days import check_days
from garboard.record.reading.derived_ids import check_derived_ids
from garboard.record.reading.draft import Draft
from garboard.record.reading.fill import fill, thing_from
from garboard.record.reading.mentions import check_mentions
from garboard.record.reading.notes import EnoughError, Notes
from garboard.record.reading.structure import is_list, is_mapping, unknown_key
from garboard.record.reading.terminals import check_terminals
from garboard.record.record import Record
from garboard.record.shape import GroupSlot, LeafSlot, ListSlot, OpenSlot, Shape, Slot, shape_of
from garboard.record.subjects import IN_RUNS, LIST_KEYS
from garboard.record.thing import DataPath, Thing

#: Things that stand alone in a record, each under its own name.
SINGLE = ("vessel", "survey", "wiring")
#: The key of the record under which things of a subject are found, those in the runs included.
FOUND_UNDER = {**LIST_KEYS, **dict.fromkeys(IN_RUNS, "runs")}


def read_record(source: Document | Mapping[str, Any], form: Format = RECORD_FORMAT) -> Record:
    """Read a record from a document, or from plain data where there is no file.

    Raises RecordRefused with all problems in order, warnings among them; a record that is read
    keeps its warnings. An older format is brought up first, one that is newer refused by name.
    """
    document = source if isinstance(source, Document) else None
    written = source.data if isinstance(source, Document) else source
    notes = Notes(document)
    if not isinstance(written, Mapping):
        notes.refuse("document-not-a-mapping", (), type(written).__name__,
                     f"a mapping that starts with format: {form.newest_name}")
        raise RecordRefused(notes.problems)
    data = _in_newest_format(notes, written, form)
    draft = Draft(notes)
    with suppress(EnoughError):
        _read_root(draft, data)
        check_derived_ids(draft)
        check_mentions(draft)
        check_terminals(draft)
        if not notes.problems:
            check_circuits(draft)
            check_days(draft)
    if notes.problems:
        raise RecordRefused([*notes.problems, *notes.all_warnings()])
    return _record(draft, written, data, document)


def _in_newest_format(notes: Notes, written: Mapping[str, Any], form: Format) -> Mapping[str, Any]:
    """The data in the newest format; only a name too odd to go on with is refused here."""
    if "format" not in written:
        notes.refuse("format-missing", (), "no format", f"format: {form.newest_name}",
                     "write it as the first line")
        return written
    try:
        version = form.version_of(written["format"])
    except ReadingError as error:
        notes.refuse(error.code, ("format",), error.found, error.expected, error.hint)
        if error.code in ("format-newer", "format-older"):
            raise RecordRefused(notes.problems) from None
        return written
    return form.brought_up(written, version)


def _read_root(draft: Draft, data: Mapping[str, Any]) -> None:
    shape = shape_of(InstallationRecord)
    root = Thing("record", "record", ())
    draft.things["record"] = root
    for name in SINGLE:
        draft.things[name] = Thing(name, name, (name,))
    for key, written in data.items():
        slot = shape.slots.get(key)
        if slot is None:
            unknown_key(draft, shape.slots, key, ())
            slot = _meant(shape, key, data)
        if isinstance(slot, OpenSlot):
            read_answers(draft, written, (key,))
        elif slot is not None and not isinstance(slot, LeafSlot):
            _read_branch(draft, slot, written, (key,))
    text = str(data.get("format"))
    root.facts["format"] = Fact(text, text)


def _meant(shape: Shape, key: str, data: Mapping[str, Any]) -> Slot | None:
    """What a misspelt key most likely is, so that what it holds does not go missing as well."""
    guess = nearest(str(key), shape.slots)
    return None if guess is None or guess in data else shape.slots[guess]


def _read_branch(draft: Draft, slot: Slot, written: object, path: DataPath) -> None:
    if isinstance(slot, GroupSlot):
        if is_mapping(written, draft, path):
            fill(draft, slot.shape, written, path, draft.things[slot.key])
    elif isinstance(slot, ListSlot):
        if not is_list(written, draft, path):
            draft.miss(slot.shape.subject)
            return
        for position, each in enumerate(written):
            thing_from(draft, slot.shape, each, (*path, position))


def _record(draft: Draft, written: Mapping[str, Any], data: Mapping[str, Any],
            document: Document | None) -> Record:
    lists: dict[str, tuple[Thing, ...] | None] = {}
    for subject, key in FOUND_UNDER.items():
        listed = draft.lists.get(subject, [])
        lists[subject] = tuple(listed) if key in data else None
    for name in SINGLE:
        lists[name] = (draft.things[name],) if name in data else None
    lists["record"] = (draft.things["record"],)
    return Record(
        format=str(data["format"]), written=written, document=document, things=draft.things,
        lists=lists, answers=draft.answers, evidence=draft.evidence,
        conflicts=find_conflicts(draft.things.values()),
        warnings=in_order(draft.notes.all_warnings()))
