"""The JSON Schema: valid, as shipped, and complete."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any

from jsonschema import Draft202012Validator

from garboard.documents import shipped_folder
from garboard.record import RECORD_FORMAT
from garboard.record.schema import record_schema

SCHEMA = record_schema()


def objects(schema: Any, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every schema of an object with keys of its own, with where it stands."""
    if isinstance(schema, dict):
        if isinstance(schema.get("properties"), dict):
            yield path, schema
        for key, each in schema.items():
            yield from objects(each, f"{path}/{key}")
    elif isinstance(schema, list):
        for at, each in enumerate(schema):
            yield from objects(each, f"{path}/{at}")


def test_it_is_a_valid_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)


def test_the_shipped_file_is_the_one_the_models_give() -> None:
    """If this fails: python -m garboard.assembly.generated"""
    file = shipped_folder("schemas") / f"{RECORD_FORMAT.name}-{RECORD_FORMAT.newest}.json"
    assert json.loads(file.read_text(encoding="utf-8")) == SCHEMA


def test_no_object_takes_unknown_keys() -> None:
    found = dict(objects(SCHEMA))
    assert len(found) > 80
    assert [path for path, each in found.items() if each["additionalProperties"] is not False] == []


def test_every_key_is_described() -> None:
    bare = [f"{path}/{key}" for path, each in objects(SCHEMA)
            for key, value in each["properties"].items()
            if not value.get("description") and "$ref" not in value
            and key != "value"]
    assert bare == []


def test_every_definition_is_used_and_exists() -> None:
    used = set(re.findall(r'"\$ref": "#/\$defs/([a-z-]+)"', json.dumps(SCHEMA)))
    assert used == set(SCHEMA["$defs"])
