"""The JSON Schema of the tables of figures that calculations read."""

from __future__ import annotations

from typing import Any

from garboard.quantities.declaration import STATUSES


def table_schema() -> dict[str, Any]:
    """Schema of format ``table/1``."""
    text = {"type": "string", "minLength": 1}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Table of figures",
        "description": "Figures by row and column, with one citation and one status.",
        "type": "object",
        "required": ["format", "table", "title", "citation", "rows_are", "columns_are",
                     "values_are", "columns", "rows"],
        "additionalProperties": False,
        "properties": {
            "format": {"const": "table/1", "description": "The format and its major version."},
            "table": {"type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$",
                      "description": "Name of the table, and of its file."},
            "title": {**text, "description": "What the figures are, in one line."},
            "note": {**text, "description": "What else must be known about them."},
            "citation": {
                "type": "object", "required": ["source", "status"],
                "additionalProperties": False,
                "description": "Where the figures are from, and how sure they are.",
                "properties": {
                    "source": {**text, "description": "The document and its clause or table."},
                    "status": {"enum": list(STATUSES),
                               "description": "How far the figures were confirmed."}}},
            "rows_are": {**text, "description": "What a row stands for."},
            "columns_are": {**text, "description": "What a column stands for."},
            "values_are": {**text, "description": "What a figure is, with its unit."},
            "columns": {"type": "array", "minItems": 1, "uniqueItems": True,
                        "items": {"type": ["string", "number"]},
                        "description": "The columns, in order."},
            "rows": {"type": "object", "minProperties": 1,
                     "additionalProperties": {"type": "array", "items": {"type": "number"}},
                     "description": "One figure per column, by row."},
        },
    }
