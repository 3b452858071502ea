"""Tables of figures: YAML beside the code, one citation and one status each, read once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from garboard.documents import read_document
from garboard.quantities.declaration import FROM_MEMORY, Citation

FOLDER = Path(__file__).parent / "tables"


class Cell(NamedTuple):
    """A figure of a table, and how a derivation names where it was read."""

    value: float
    row: str


@dataclass(frozen=True, slots=True)
class Table:
    """Rows and columns by name; a cell gives a figure or nothing, never something between."""

    name: str
    title: str
    citation: Citation
    rows: Mapping[str, Mapping[str, float]]

    def cell(self, row: str, column: str) -> float | None:
        """The figure where row and column meet; ``None`` where the table has no such cell."""
        return self.rows.get(row, {}).get(column)

    def reference(self, row: str, column: str) -> str:
        """How the trail names a cell that was read, with its figure; and that it is from memory."""
        sure = f" ({FROM_MEMORY})" if self.citation.status == FROM_MEMORY else ""
        return f"{self.name}: {row}, {column} = {self.rows[row][column]:.12g}{sure}"

    def read(self, row: str, column: str) -> Cell:
        """A cell that is there, with the name a derivation gives it; else KeyError."""
        return Cell(self.rows[row][column], self.reference(row, column))


def table_from_data(data: Mapping[str, object]) -> Table:
    """A table from the data of its file; ValueError when a row has not one figure per column."""
    columns = [str(column) for column in _list(data["columns"])]
    rows: dict[str, Mapping[str, float]] = {}
    for name, figures in _mapping(data["rows"]).items():
        if len(_list(figures)) != len(columns):
            raise ValueError(f"row {name!r} of table {data['table']} has not one figure per column")
        rows[str(name)] = MappingProxyType(
            {column: float(str(figure)) for column, figure in
             zip(columns, _list(figures), strict=True)})
    citation = _mapping(data["citation"])
    return Table(str(data["table"]), str(data["title"]),
                 Citation(str(citation["source"]), str(citation["status"])),
                 MappingProxyType(rows))


@cache
def table(name: str) -> Table:
    """The shipped table ``name``."""
    data = read_document(FOLDER / f"{name}.yaml").data
    return table_from_data(_mapping(data))


def table_names() -> tuple[str, ...]:
    """The names of all shipped tables, sorted."""
    return tuple(sorted(file.stem for file in FOLDER.glob("*.yaml")))


def _list(data: object) -> list[object]:
    if not isinstance(data, list):
        raise TypeError(f"expected a list, found {data!r}")
    return data


def _mapping(data: object) -> Mapping[str, object]:
    if not isinstance(data, dict):
        raise TypeError(f"expected a mapping, found {data!r}")
    return data
