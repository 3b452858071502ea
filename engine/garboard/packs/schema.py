"""The JSON Schema of the pack format, generated from its models."""

from __future__ import annotations

from typing import Annotated, Any, Final

from pydantic import Field

from garboard.packs.change import Change
from garboard.packs.header import FORMAT, Header
from garboard.packs.limit import WrittenLimit
from garboard.packs.model import LimitName, Model
from garboard.packs.rule import Rule

DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
Limits = Annotated[dict[LimitName, WrittenLimit], Field(default_factory=dict, description=(
    "The numbers that rules compare with, each under a name that stands in expressions."))]
Rules = Annotated[list[Rule], Field(default_factory=list, description=(
    "The rules, one per requirement."))]


Changes = Annotated[list[Change], Field(default_factory=list, description=(
    "What is changed in the packs this one builds on."))]


class RuleFile(Model):
    """A file beside the head of a pack, or in its folder 'rules': limits and rules by topic."""

    changes: Changes
    limits: Limits
    rules: Rules


class PackFile(Header):
    """The head of a pack (pack.yaml), or a whole pack in one file."""

    changes: Changes
    limits: Limits
    rules: Rules


def pack_schema() -> dict[str, Any]:
    """The schema of pack.yaml; that of the files beside it is ``#/$defs/RuleFile``."""
    head = PackFile.model_json_schema()
    others = RuleFile.model_json_schema()
    shared = others.pop("$defs")
    definitions = {**head.pop("$defs"), **shared, "RuleFile": others}
    others["minProperties"] = 1
    return {
        "$schema": DIALECT, "$id": "urn:garboard:rule-pack:1", "title": f"Rule pack ({FORMAT})",
        **tidied(head),
        "$defs": {name: tidied(definitions[name]) for name in sorted(definitions)},
    }


def tidied(schema: Any) -> Any:
    """A schema without titles made from names, and without null where a key may be left out."""
    if isinstance(schema, list):
        return [tidied(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    kept = {key: tidied(value) for key, value in schema.items()
            if not (key == "title" and isinstance(value, str))
            and not (key == "default" and value in (None, {}, [], ()))}
    choices = [each for each in kept.get("anyOf", ()) if each != {"type": "null"}]
    if len(choices) == 1:
        del kept["anyOf"]
        kept = {**choices[0], **kept}
    if "patternProperties" in kept:
        kept["additionalProperties"] = False
    return kept
