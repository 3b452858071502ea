"""Writing the survey sheet along the shapes of the models, so that it cannot differ from them."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from garboard.record.format import RECORD_FORMAT
from garboard.record.leaves import LeafKind
from garboard.record.models.record import InstallationRecord
from garboard.record.shape import GroupSlot, LeafSlot, ListSlot, Shape, Slot, shape_of
from garboard.record.sheet.examples import example_of, first_id, how_to_write

_HEADING: Final = """\
## Survey sheet of a battery installation.
##
## A line with one # is a key to be filled in: take away the # and the space after it, on the lines
## it stands under as well, and write the value after the colon. Leave out what is not known: it is
## then not recorded, and nothing passes on it. Lines with ## only explain.
##
## Of a list, copy the item (from its dash on) for each further thing, give each an id of its own,
## and take out what is not aboard. A list left out is not recorded; [] says that there are none.
##
## A value can say more: {value: 2.1 mΩ, plus_minus: 10 %, from: measured, note: at 18 °C}; from is
## one of measured, nameplate, datasheet, owner, estimated. What cannot be found out is written
## {not_determinable: the label is gone}.
"""
_COLUMN: Final = 40
_WIDTH: Final = 110
_STEP: Final = "  "
#: What a part of a run is called that has the keys of another: it is not written out again.
_LIKE: Final = {"breaker": "fuse"}
_ELSEWHERE: Final = ("format", "answers")


@dataclass(frozen=True, slots=True)
class SheetQuestion:
    """A question to answer aboard; ``answer`` says in words what an answer is."""

    id: str
    ask: str
    how_to_look: str
    answer: str
    evidence_required: bool


def survey_sheet(questions: Sequence[SheetQuestion] = ()) -> str:
    """The sheet as text: a record that reads as it is, and says nothing but its format."""
    lines = [f"format: {RECORD_FORMAT.newest_name}"]
    for key, slot in shape_of(InstallationRecord).slots.items():
        if key not in _ELSEWHERE:
            lines += ["", *_slot(slot, "record", "")]
    if questions:
        lines += ["", *_answers(questions)]
    return f"{_HEADING}\n" + "\n".join(lines) + "\n"


def _answers(questions: Sequence[SheetQuestion]) -> Iterator[str]:
    yield from _line("", "answers", "Answers to the questions of the packs")
    for each in questions:
        for text in (each.ask, each.how_to_look):
            yield from (f"##   {line}" for line in textwrap.wrap(text, _WIDTH - len(_STEP)))
        yield f"# {_STEP}{each.id}:"
        inner = _STEP * 2
        yield from _line(inner, "value", each.answer)
        yield from _line(inner, "by", "Who answered")
        yield from _line(inner, "on", "Day of the answer, such as 2026-04-18")
        if each.evidence_required:
            yield from _line(inner, "evidence", "Required: evidence it rests on, "
                             f"such as [{first_id('evidence')}]")


def _slot(slot: Slot, subject: str, indent: str) -> Iterator[str]:
    if isinstance(slot, LeafSlot):
        yield from _leaf(slot, subject, indent)
    elif isinstance(slot, GroupSlot) and slot.word is not None:
        keys = ", ".join(slot.shape.slots)
        yield from _line(indent, slot.key, f"{slot.word.meaning}; one of "
                         f"{', '.join(slot.word.among)}; or below it: {keys}")
    elif isinstance(slot, GroupSlot):
        yield from _line(indent, slot.key, slot.meaning)
        yield from _keys(slot.shape, slot.shape.subject or subject, indent + _STEP)
    elif isinstance(slot, ListSlot):
        yield from _line(indent, slot.key, slot.meaning)
        yield from _item(slot.shape, indent + _STEP)


def _keys(shape: Shape, subject: str, indent: str) -> Iterator[str]:
    for slot in shape.slots.values():
        yield from _slot(slot, subject, indent)


def _item(shape: Shape, indent: str) -> Iterator[str]:
    """One item of a list; of parts of which each item has exactly one, an item for each."""
    if all(isinstance(slot, GroupSlot) for slot in shape.slots.values()):
        for key, slot in shape.slots.items():
            if key in _LIKE:
                yield from _explained(indent, f"- {key}: with the keys of a {_LIKE[key]}")
                continue
            yield from _dashed(_slot(slot, shape.subject, indent + _STEP), indent)
        return
    yield from _dashed(_keys(shape, shape.subject, indent + _STEP), indent)


def _dashed(lines: Iterator[str], indent: str) -> Iterator[str]:
    """Lines of an item, with the dash before its first key."""
    first = next(lines)
    yield f"# {indent}- {first[len('# ' + indent) + len(_STEP):]}"
    yield from lines


def _leaf(slot: LeafSlot, subject: str, indent: str) -> Iterator[str]:
    example = example_of(slot.leaf, subject, begins=slot.key != "to")
    says = f"{slot.leaf.meaning}; {how_to_write(slot.leaf, example)}"
    yield from _line(indent, slot.key, says + _more(slot.leaf))


def _more(leaf: LeafKind) -> str:
    return f" (can say {', '.join(leaf.extras)})" if leaf.extras else ""


def _line(indent: str, key: str, says: str) -> Iterator[str]:
    """A key, and beside it what it is; what does not fit stands below."""
    start = f"# {indent}{key}:"
    first, *rest = textwrap.wrap(says, _WIDTH - _COLUMN, break_on_hyphens=False)
    yield f"{start:<{_COLUMN - 2}} # {first}"
    for each in rest:
        yield f"{'##':<{_COLUMN - 2}} # {each}"


def _explained(indent: str, says: str) -> Iterator[str]:
    yield f"## {indent}{says}"
