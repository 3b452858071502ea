"""Problems against a JSON Schema: codes and places; nothing is fetched, nothing loops."""

from __future__ import annotations

from typing import Any

import pytest

from garboard.documents import Limits, read_text, schema_problems

SCHEMA: dict[str, Any] = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "type": "object",
    "required": ["format", "vessel"],
    "additionalProperties": False,
    "properties": {
        "format": {"const": "thing/1"},
        "vessel": {"type": "object", "required": ["name"],
                   "properties": {"name": {"type": "string", "maxLength": 12}}},
        "fuel": {"enum": ["diesel", "petrol", "none"]},
        "cells": {"type": "integer", "minimum": 1, "maximum": 500},
        "share": {"exclusiveMinimum": 0, "exclusiveMaximum": 1, "type": "number"},
        "ids": {"type": "array", "minItems": 2, "uniqueItems": True,
                "items": {"type": "string", "pattern": "^[a-z-]+$"}},
        "leaf": {"anyOf": [{"type": "string"}, {"type": "object", "required": ["value"],
                                                "properties": {"value": {"type": "string"}}}]},
    },
}
BASE = "format: thing/1\nvessel: {name: x}\n"
CASES = {
    "good": (BASE + "fuel: diesel\ncells: 8\nids: [a, b-c]\nleaf: {value: x}", []),
    "a missing key": ("format: thing/1", [("schema-required", 1, 1)]),
    "a missing key inside": ("format: thing/1\nvessel: {}", [("schema-required", 2, 1)]),
    "two missing keys": ("fuel: none", [("schema-required", 1, 1), ("schema-required", 1, 1)]),
    "an unknown key": (BASE + "fule: diesel", [("schema-unknown-key", 3, 1)]),
    "two unknown keys": (BASE + "x: 1\ny: 2",
                         [("schema-unknown-key", 3, 1), ("schema-unknown-key", 4, 1)]),
    "a wrong type": (BASE + "cells: eight", [("schema-type", 3, 8)]),
    "a flag for a number": (BASE + "cells: true", [("schema-type", 3, 8)]),
    "a list at the top": ("- a", [("schema-type", 1, 1)]),
    "no such choice": (BASE + "fuel: desel", [("schema-choice", 3, 7)]),
    "another constant": ("format: thing/2\nvessel: {name: x}", [("schema-choice", 1, 9)]),
    "too small": (BASE + "cells: 0", [("schema-range", 3, 8)]),
    "at the open end": (BASE + "share: 1.0", [("schema-range", 3, 8)]),
    "too long": ("format: thing/1\nvessel: {name: abcdefghijklm}", [("schema-size", 2, 16)]),
    "too few": (BASE + "ids: [a]", [("schema-size", 3, 6)]),
    "a pattern": (BASE + "ids: [a, B]", [("schema-pattern", 3, 10)]),
    "twice the same": (BASE + "ids: [a, a]", [("schema-other", 3, 6)]),
    "none of the forms": (BASE + "leaf: {value: 3}", [("schema-type", 3, 15)]),
}


@pytest.mark.parametrize(("text", "wanted"), CASES.values(), ids=CASES.keys())
def test_problems(text: str, wanted: list[tuple[str, int, int]]) -> None:
    problems = schema_problems(read_text(text), SCHEMA)
    assert [(p.code, p.place.line, p.place.column) for p in problems] == wanted


def test_names_and_hints() -> None:
    [problem] = schema_problems(read_text(BASE + "fule: diesel"), SCHEMA)
    assert problem.place.path == "fule"
    assert "fuel" in problem.hint
    [problem] = schema_problems(read_text(BASE + "fuel: desel"), SCHEMA)
    assert "diesel" in problem.hint
    [problem] = schema_problems(read_text("format: thing/1\nvessel: {}"), SCHEMA)
    assert problem.place.path == "vessel.name"


@pytest.mark.parametrize("schema", [
    {"type": "nonsense"}, {"$ref": "https://example.invalid/schema.json"}, {"$ref": "#/nowhere"},
    {"$ref": "#"}, {"pattern": "("}, {"properties": []}], ids=str)
def test_broken_schemas(schema: dict[str, Any]) -> None:
    [problem] = schema_problems(read_text('"abc"'), schema)
    assert problem.code == "schema-broken"


def test_the_list_of_problems_has_a_limit() -> None:
    document = read_text("[" + "x, " * 50 + "]")
    problems = schema_problems(document, {"items": {"type": "number"}}, Limits(problems=6))
    assert len(problems) == 7
    assert problems[-1].code == "document-problems"
