"""The survey sheet reads as it is, and with every key filled in as the sheet itself says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from garboard.record.models.record import InstallationRecord
from garboard.record.shape import GroupSlot, ListSlot, Shape, shape_of
from garboard.record.sheet import SheetQuestion, survey_sheet
from record.launch import problems, read

_KEY = re.compile(r"# (?P<key> *(?:- )?[a-z0-9_]+:) +# (?P<says>.*)")
_MORE = re.compile(r"## {20,}# (?P<says>.*)")


def entries(sheet: str) -> Iterator[tuple[str, str]]:
    """Every key of the sheet as it stands, and what is said beside it."""
    key, says = "", ""
    for line in sheet.splitlines():
        if found := _KEY.fullmatch(line):
            if key:
                yield key, says
            key, says = found["key"], found["says"]
        elif more := _MORE.fullmatch(line):
            says += f" {more['says']}"
    yield key, says


def filled(key: str, says: str) -> str:
    """The line with a value, taken from what the sheet says."""
    _, _, how = says.rpartition("; ")
    for lead, value in (("such as ", how[len("such as "):].partition(" (can say")[0]),
                        ("one of ", how[len("one of "):].partition(",")[0]),
                        ("yes or no", "yes"), ("a whole number, ", how.split()[-3:][0]),
                        ("a whole number", "1"), ("in words", "as seen")):
        if how.startswith(lead):
            return f"{key} {value}"
    if "; one of " in says:
        return f"{key} {says.partition('; one of ')[2].partition(',')[0]}"
    return key


def keys_of(shape: Shape) -> int:
    """How many keys the sheet has for a shape: a breaker's are those of a fuse, and stand once."""
    count = 0
    for key, slot in shape.slots.items():
        if key in ("format", "answers", "breaker"):
            continue
        count += 1
        if isinstance(slot, ListSlot) or (isinstance(slot, GroupSlot) and slot.word is None):
            count += keys_of(slot.shape)
    return count


def test_the_sheet_reads_as_it_is_and_has_every_key() -> None:
    assert problems(survey_sheet()) == ()
    assert len(list(entries(survey_sheet()))) == keys_of(shape_of(InstallationRecord)) > 300


def test_every_key_filled_in_as_the_sheet_says_reads() -> None:
    text = "\n".join(["format: installation-record/1",
                      *(filled(key, says) for key, says in entries(survey_sheet()))])
    text = text.replace("64 digits of 0-9 and a-f", "0" * 64)
    assert problems(text) == ()
    assert len(read(text).things) > 8


def test_questions_stand_on_the_sheet_with_what_an_answer_is() -> None:
    asked = SheetQuestion("torque", "Were they tightened?", "Look for marks.", "yes or no", True)
    sheet = survey_sheet([asked])
    assert problems(sheet) == ()
    written = sheet[sheet.index("# answers:"):]
    assert [key.strip() for key, _ in entries(written)] == ["answers:", "value:", "by:", "on:",
                                                           "evidence:"]
    assert "#   torque:" in written.splitlines()
