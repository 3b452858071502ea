"""Report files opened again, by the standard library: cells of a workbook, rows of a table."""

from __future__ import annotations

import csv
import io
import zipfile
from xml.etree import ElementTree

_MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"


def table(text: str) -> list[dict[str, str]]:
    """The rows of a comma-separated table by column."""
    return list(csv.DictReader(io.StringIO(text, newline="")))


def sheets(data: bytes) -> list[list[list[str]]]:
    """The cells of every sheet of a workbook as text; a formula anywhere is an error."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        names = archive.namelist()
        shared = [("".join(each.itertext()))
                  for each in _tree(archive, "xl/sharedStrings.xml").iter(f"{_MAIN}si")]
        found = []
        for number in range(1, sum(name.startswith("xl/worksheets/sheet") for name in names) + 1):
            tree = _tree(archive, f"xl/worksheets/sheet{number}.xml")
            assert not list(tree.iter(f"{_MAIN}f"))
            found.append([[_cell(cell, shared) for cell in row.iter(f"{_MAIN}c")]
                          for row in tree.iter(f"{_MAIN}row")])
        return found


def _tree(archive: zipfile.ZipFile, name: str) -> ElementTree.Element:
    return ElementTree.fromstring(archive.read(name))


def _cell(cell: ElementTree.Element, shared: list[str]) -> str:
    value = cell.find(f"{_MAIN}v")
    if value is None or value.text is None:
        return ""
    return shared[int(value.text)] if cell.get("t") == "s" else value.text
