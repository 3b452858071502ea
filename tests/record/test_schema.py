"""The JSON Schema: valid, as shipped, and complete."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from garboard.documents import shipped_folder
from garboard.record.schema import FILE_NAME, record_schema, schema_text, write_schema

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
    """If this fails: python -m garboard.record.schema"""
    assert (shipped_folder("schemas") / FILE_NAME).read_text(encoding="utf-8") == schema_text()


def test_it_is_written_whole_into_a_folder(tmp_path: Path) -> None:
    file = write_schema(tmp_path)
    assert file == tmp_path / "installation-record-1.json"
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
    used = {line.split('"')[3].removeprefix("#/$defs/") for line in schema_text().splitlines()
            if '"$ref"' in line}
    assert used == set(SCHEMA["$defs"])
