"""Findings and figures as an Excel workbook. Every text is written as text, never as a formula."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import astuple, fields
from datetime import datetime
from typing import TYPE_CHECKING, Any, Final

from garboard.reports.files.library import library
from garboard.reports.rows import FigureRow, FindingRow, figure_rows, finding_rows
from garboard.reports.scope import scope_of
from garboard.trail import Trail

if TYPE_CHECKING:
    from xlsxwriter.workbook import Workbook

_WIDE: Final = {"title", "found", "because", "remark", "work", "source", "method", "text"}
_SHEETS: Final = (("Findings", FindingRow), ("Quantities", FigureRow))


def xlsx_report(trail: Trail, us_units: bool = False) -> bytes:
    """The workbook of a trail: scope and result, findings, quantities.

    Raises ReportRefused where the library that writes it is not installed.
    """
    with library("XlsxWriter", "xlsx"):
        import xlsxwriter
    system: Any = "us" if us_units else "metric"
    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False,
                                     "strings_to_urls": False, "strings_to_numbers": False})
    book.set_properties({"title": "Assessment of a battery installation",
                         "comments": trail.digest,
                         "created": datetime.fromisoformat(f"{trail.date}T00:00:00")})
    _sheet(book, "Result", ("about", "text"), list(scope_of(trail, system)))
    rows = ([astuple(each) for each in finding_rows(trail, system)],
            [astuple(each) for each in figure_rows(trail, system)])
    for (name, kind), some in zip(_SHEETS, rows, strict=True):
        _sheet(book, name, [each.name for each in fields(kind)], some)
    book.close()
    return out.getvalue()


def _sheet(book: Workbook, name: str, columns: Sequence[str], rows: Sequence[Sequence[Any]],
           ) -> None:
    sheet = book.add_worksheet(name)
    head = book.add_format({"bold": True, "bottom": 1})
    body = book.add_format({"text_wrap": True, "valign": "top"})
    for number, column in enumerate(columns):
        sheet.set_column(number, number, 48 if column in _WIDE else 18)
        sheet.write_string(0, number, column, head)
    for at, row in enumerate(rows, 1):
        for number, value in enumerate(row):
            if isinstance(value, str):
                sheet.write_string(at, number, value, body)
            elif value is not None:
                sheet.write_number(at, number, value, body)
    sheet.freeze_panes(1, 0)
    sheet.autofilter(0, 0, max(len(rows), 1), len(columns) - 1)
    sheet.set_landscape()
    sheet.repeat_rows(0)
    sheet.fit_to_pages(1, 0)
