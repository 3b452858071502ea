"""The JSON Schema of the trail format, generated from its models."""

from __future__ import annotations

from typing import Any, Final

from garboard.trail.making import FORMAT

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"


def trail_schema() -> dict[str, Any]:
    """The schema of a trail document."""
    from garboard.trail.format import TrailDocument

    schema = TrailDocument.model_json_schema()
    parts = schema.pop("$defs")
    return {"$schema": DIALECT, "title": f"Audit trail ({FORMAT})", **_tidied(schema),
            "$defs": {name: _tidied(parts[name]) for name in sorted(parts)}}


def _tidied(schema: Any) -> Any:
    """A schema without the titles that only repeat a name."""
    if isinstance(schema, list):
        return [_tidied(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    return {key: _tidied(value) for key, value in schema.items()
            if not (key == "title" and isinstance(value, str))}
