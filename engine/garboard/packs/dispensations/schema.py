"""The JSON Schema of a file of dispensations, generated from its models."""

from __future__ import annotations

from typing import Any

from garboard.packs.dispensations.file import FORMAT, DispensationFile
from garboard.packs.schema import DIALECT, tidied


def dispensations_schema() -> dict[str, Any]:
    """Schema of format ``dispensations/1``."""
    whole = DispensationFile.model_json_schema()
    parts = whole.pop("$defs")
    return {"$schema": DIALECT, "$id": "urn:garboard:dispensations:1",
            "title": f"Dispensations ({FORMAT})", **tidied(whole),
            "$defs": {name: tidied(parts[name]) for name in sorted(parts)}}
