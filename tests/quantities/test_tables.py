"""Every table of figures keeps to its schema."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.assembly.table_schema import table_schema
from garboard.documents import read_document, read_text, schema_problems
from garboard.quantities import table, table_from_data, table_names
from garboard.quantities.table import FOLDER


@pytest.mark.parametrize("name", table_names())
def test_table_keeps_to_the_schema(name: str) -> None:
    assert schema_problems(read_document(FOLDER / f"{name}.yaml"), table_schema()) == []


def test_a_table_without_status_breaks_the_schema() -> None:
    document = read_text("{format: table/1, table: a, title: b, citation: {source: c}, rows_are: d,"
                         " columns_are: e, values_are: f, columns: [g], rows: {h: [1]}}")
    problems = schema_problems(document, table_schema())
    assert [(problem.code, problem.place.path) for problem in problems] == [
        ("schema-required", "citation.status")]


def test_a_row_with_a_figure_too_few_is_refused() -> None:
    with pytest.raises(ValueError, match="row"):
        table_from_data({"table": "t", "title": "t", "columns": ["a", "b"], "rows": {"x": [1]},
                         "citation": {"source": "s", "status": "read"}})


AGAIN = read_document(Path(__file__).with_name("written_again.yaml")).data


@pytest.mark.parametrize("name", AGAIN)
def test_a_table_is_written_twice_alike(name: str) -> None:
    rows, columns = table(name).rows, AGAIN[name]  # type: ignore[index]
    order = sorted(rows) if name == "resting-voltages" else list(rows)
    assert {column: [rows[row][column] for row in order] for column in rows[order[0]]} == columns
