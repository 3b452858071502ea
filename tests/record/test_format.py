"""Formats: versions in order, older ones brought up step by step, newer ones refused by name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from garboard.errors import ReadingError, RecordRefused
from garboard.record import RECORD_FORMAT, Format, Upgrade, read_record


def renamed(old: str, new: str) -> Any:
    def change(data: Mapping[str, Any]) -> dict[str, Any]:
        return {new if key == old else key: value for key, value in data.items()}
    return change


TRIED = Format("tried", 3, (
    Upgrade(1, "batterys was a slip", renamed("batterys", "cells")),
    Upgrade(2, "cells were batteries all along", renamed("cells", "batteries")),
))


@pytest.mark.parametrize(("version", "key"), [(1, "batterys"), (2, "cells"), (3, "batteries")])
def test_every_older_version_is_brought_up(version: int, key: str) -> None:
    data = {"format": f"tried/{version}", key: [{"id": "a"}]}
    kept = dict(data)
    assert TRIED.version_of(data["format"]) == version
    assert TRIED.brought_up(data, version) == {"format": "tried/3", "batteries": [{"id": "a"}]}
    assert data == kept


def test_a_record_in_an_older_version_reads_as_if_it_were_new() -> None:
    record = read_record({"format": "tried/1", "batterys": [{"id": "a"}]}, TRIED)
    assert [each.id for each in record.lists["battery"] or ()] == ["a"]
    assert record.format == "tried/3"
    assert record.written["format"] == "tried/1"


@pytest.mark.parametrize(("written", "code"), [
    ("tried/4", "format-newer"), ("tried/0", "format-older"), ("trid/1", "format-unknown"),
    ("tried", "format-malformed"), ("tried/-1", "format-malformed"),
    ("tried/1.0", "format-malformed"),
    ("tried/1 ", "format-malformed"), (1, "format-malformed"), (None, "format-malformed"),
    ("tried/99999999999", "format-malformed"),
])
def test_other_formats_are_refused_by_name(written: object, code: str) -> None:
    with pytest.raises(ReadingError) as refused:
        TRIED.version_of(written)
    assert refused.value.code == code


def test_nothing_else_of_a_newer_record_is_looked_at() -> None:
    with pytest.raises(RecordRefused) as refused:
        read_record({"format": "installation-record/2", "unheard-of": 1})
    assert [each.code for each in refused.value.problems] == ["format-newer"]


@pytest.mark.parametrize(("newest", "versions"), [(3, [1]), (3, [2, 1]), (3, [1, 2, 3]), (1, [1])])
def test_steps_with_a_gap_or_out_of_order_are_refused(newest: int, versions: list[int]) -> None:
    with pytest.raises(ValueError):
        Format("tried", newest, tuple(Upgrade(each, "why", dict) for each in versions))


def test_the_record_format_stands_at_its_first_version() -> None:
    assert (RECORD_FORMAT.newest_name, RECORD_FORMAT.oldest) == ("installation-record/1", 1)
