"""Ampacity against the published table, and what the table does not say."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.documents import read_document
from garboard.quantities import table, table_names
from garboard.quantities.topics.conductors import ampacity
from garboard.values import OUTSIDE_METHOD, Unknown
from garboard.values.conductor_size import read_size

CELLS = read_document(Path(__file__).with_name("ampacity_cells.yaml"), expect="list").data


def test_all_cells_are_read() -> None:
    assert len(CELLS) == 19


@pytest.mark.parametrize(("size", "insulation", "expected", "source"), CELLS,
                         ids=[f"{row[0]} {row[1]}" for row in CELLS])
def test_ampacity(size: str, insulation: int, expected: int | None, source: str) -> None:
    value = ampacity.function(read_size(size), float(insulation)).value
    if expected is None:
        assert isinstance(value, Unknown), source
        assert value.reason == OUTSIDE_METHOD
    else:
        assert value == expected, source


def test_every_row_of_the_ampacity_table_grows_with_size_and_insulation() -> None:
    rows = [list(row.values()) for row in table("ampacity-33cfr183-425").rows.values()]
    assert len(rows) == 15
    for row in rows:
        assert row == sorted(row)
    for column in zip(*rows, strict=True):
        assert list(column) == sorted(column)


def test_tables_are_what_they_are_called() -> None:
    names = table_names()
    assert len(names) >= 4
    assert [table(name).name for name in names] == list(names)
