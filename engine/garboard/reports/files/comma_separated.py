"""Findings and figures as comma-separated values (RFC 4180): one table, its rows told by kind.

Text that a spreadsheet would take for a formula gets an apostrophe in front and stays text.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from typing import Final

from garboard.reports.rows import figure_rows, finding_rows
from garboard.reports.scope import scope_of
from garboard.trail import Trail
from garboard.values.units import System

COLUMNS: Final = ("kind", "id", "outcome", "severity", "title", "item", "place", "text", "least",
                  "most", "nominal", "unit", "because", "remark", "dispensation", "work", "source")
#: What starts a formula in a spreadsheet; the wide forms are taken for the narrow ones by some.
_FORMULA: Final = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")

Row = dict[str, str | float | None]


def csv_report(trail: Trail, us_units: bool = False) -> str:
    """The table of a trail: first scope and result, then findings, then figures."""
    out = io.StringIO(newline="")
    writer = csv.DictWriter(out, COLUMNS, restval="", lineterminator="\r\n")
    writer.writeheader()
    for row in _rows(trail, "us" if us_units else "metric"):
        writer.writerow({name: _cell(value) for name, value in row.items()})
    return out.getvalue()


def _rows(trail: Trail, system: System) -> Iterator[Row]:
    for label, text in scope_of(trail, system):
        yield {"kind": label, "text": text}
    for finding in finding_rows(trail, system):
        yield {"kind": "finding", "id": finding.id, "outcome": finding.outcome,
               "severity": finding.severity, "title": finding.title, "item": finding.item,
               "place": finding.place, "text": finding.found, "because": finding.because,
               "remark": finding.remark, "dispensation": finding.dispensation,
               "work": finding.work, "source": finding.source}
    for figure in figure_rows(trail, system):
        yield {"kind": "figure", "id": figure.key, "title": figure.name, "item": figure.thing,
               "text": figure.shown, "least": figure.least, "most": figure.most,
               "nominal": figure.nominal, "unit": figure.unit, "source": figure.source}


def _cell(value: str | float | None) -> str | float | None:
    if isinstance(value, str) and value.lstrip(" '\"").startswith(_FORMULA):
        return f"'{value}"
    return value
