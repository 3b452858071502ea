"""The JSON Schema of the pack format: in step with the models, described, and as strict."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest

from garboard.documents import read_text, schema_problems, shipped_folder
from garboard.packs import pack_files, pack_schema
from packs.bad_shapes import BAD_SHAPES, GOOD, LIMITS, RULE
from packs.test_pack_resolved import FULL

SHIPPED = shipped_folder("rulepacks")

#: What a JSON Schema cannot see: it needs more than one place, or a unit. So are keys that are
#: missing only because of what another key says.
BEYOND_SCHEMA = {"rule-twice", "question-twice", "schema-broken", "covers-contradicts",
                 "unit-comma", "unit-unknown", "pack-empty"}


def of_a_rule_file() -> dict[str, Any]:
    """The schema of a file beside the head."""
    schema = pack_schema()
    return {"$schema": schema["$schema"], "$defs": schema["$defs"], "$ref": "#/$defs/RuleFile"}


def test_the_shipped_schema_is_the_one_of_the_models() -> None:
    shipped = (shipped_folder("schemas") / "rule-pack-1.json").read_text(encoding="utf-8")
    assert shipped == json.dumps(pack_schema(), indent=2, ensure_ascii=False) + "\n"


@pytest.mark.parametrize("text", [GOOD, FULL])
def test_good_packs_satisfy_the_schema(text: str) -> None:
    assert schema_problems(read_text(text), pack_schema()) == []


def test_a_rule_file_satisfies_its_part_of_the_schema() -> None:
    assert schema_problems(read_text(RULE + LIMITS), of_a_rule_file()) == []
    assert schema_problems(read_text(GOOD), of_a_rule_file()) != []


@pytest.mark.parametrize("pack", sorted(each.name for each in SHIPPED.iterdir() if each.is_dir()))
def test_every_file_of_a_shipped_pack_satisfies_the_schema(pack: str) -> None:
    head, *others = pack_files(SHIPPED / pack)
    assert schema_problems(read_text(head.read_text()), pack_schema()) == []
    for file in others:
        assert schema_problems(read_text(file.read_text()), of_a_rule_file()) == []


SEEN_BY_SCHEMA = [
    (name, text) for name, text, expected in BAD_SHAPES
    if not {code for code, *_ in expected} <= BEYOND_SCHEMA and not any(
        part in text for part in ("covers: part", "says: Do.", "source: A law"))]


@pytest.mark.parametrize("text", [each[1] for each in SEEN_BY_SCHEMA],
                         ids=[each[0] for each in SEEN_BY_SCHEMA])
def test_an_editor_sees_what_the_reader_refuses(text: str) -> None:
    assert schema_problems(read_text(text), pack_schema()) != []


def test_most_of_what_the_reader_refuses_is_seen_by_an_editor() -> None:
    assert len(SEEN_BY_SCHEMA) >= 50


def properties(schema: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every property of a schema with its path."""
    if isinstance(schema, dict):
        for name, each in schema.get("properties", {}).items():
            yield f"{path}.{name}", each
        for key, each in schema.items():
            yield from properties(each, f"{path}.{key}")


def test_every_key_is_described() -> None:
    found = list(properties(pack_schema()))
    assert len(found) >= 40
    assert [path for path, each in found if len(each.get("description", "")) < 10] == []
