"""The JSON Schema of a record, made from the models."""

from __future__ import annotations

import re
from typing import Any

from garboard.record.format import RECORD_FORMAT
from garboard.record.leaves import Choice, LeafKind
from garboard.record.leaves.parts import PARTS
from garboard.record.leaves.remarks import REMARKS, SPREADS, mapping_keys
from garboard.record.models.answer import Answer
from garboard.record.models.base import Model
from garboard.record.models.record import InstallationRecord
from garboard.record.models.run import Through
from garboard.record.reading.answers import QUESTION_PATTERN
from garboard.record.shape import GroupSlot, LeafSlot, ListSlot, Shape, Slot, shape_of


def record_schema() -> dict[str, Any]:
    """The schema as data, in JSON Schema 2020-12.

    It accepts every record that the reader accepts and refuses unknown keys; ids, units and what
    spans several things are left to the reader.
    """
    return _Writer().schema()


class _Writer:
    """Walks the shapes of the models and collects a definition for each."""

    def __init__(self) -> None:
        self._models: dict[str, type[Model]] = {}
        self._definitions: dict[str, Any] = {}

    def schema(self) -> dict[str, Any]:
        root = self._object(shape_of(InstallationRecord))
        root["properties"]["format"] = {"description": "Name and version of this format",
                                        "const": RECORD_FORMAT.newest_name}
        self._define_remarks()
        return {
            "$schema": "https://json-schema.org/draft/2020-12/schema",
            "$id": f"urn:garboard:{RECORD_FORMAT.name}:{RECORD_FORMAT.newest}",
            "title": f"Installation record, version {RECORD_FORMAT.newest}",
            **root, "$defs": dict(sorted(self._definitions.items())),
        }

    def _object(self, shape: Shape) -> dict[str, Any]:
        return {"description": shape.meaning, "type": "object",
                "properties": {key: self._slot(slot) for key, slot in shape.slots.items()},
                "required": list(shape.required), "additionalProperties": False}

    def _slot(self, slot: Slot) -> dict[str, Any]:
        if isinstance(slot, LeafSlot):
            return {"description": slot.leaf.meaning, **self._leaf(slot.leaf)}
        if isinstance(slot, GroupSlot):
            group = self._reference(slot.shape)
            if slot.word is not None:
                return {"description": slot.meaning,
                        "anyOf": [*self._leaf(slot.word)["anyOf"], group]}
            return {"description": slot.meaning, **group}
        if isinstance(slot, ListSlot):
            return {"description": slot.meaning, **self._list(slot)}
        if slot.key == "answers":
            answer = self._reference(shape_of(Answer))
            return {"description": slot.meaning, "type": "object",
                    "propertyNames": {"pattern": f"^{QUESTION_PATTERN}$"},
                    "additionalProperties": {
                        "anyOf": [answer, {"type": "array", "items": answer}]}}
        return {"description": slot.meaning}

    def _list(self, slot: ListSlot) -> dict[str, Any]:
        items = {"type": "array", "items": self._reference(slot.shape)}
        if not slot.may_be_not_determinable:
            return items
        self._definitions["not-determinable"] = self._mapping(PARTS)
        return {"anyOf": [items, {"$ref": "#/$defs/not-determinable"}]}

    def _reference(self, shape: Shape) -> dict[str, Any]:
        name = _kebab(shape.model.__name__)
        if self._models.setdefault(name, shape.model) is not shape.model:
            raise ValueError(f"two models would be called {name}")
        if name not in self._definitions:
            self._definitions[name] = {}
            self._definitions[name] = self._object(shape)
            if shape.model is Through:
                self._definitions[name] |= {"minProperties": 1, "maxProperties": 1}
        return {"$ref": f"#/$defs/{name}"}

    def _leaf(self, leaf: LeafKind) -> dict[str, Any]:
        scalar = leaf.scalar_schema()
        if not leaf.has_mapping:
            return scalar
        return {"anyOf": [scalar, self._mapping_form(leaf)]}

    def _mapping_form(self, leaf: LeafKind) -> dict[str, Any]:
        """The mapping form: written out where it is the leaf's own, else one for all of a kind."""
        if leaf.extras or isinstance(leaf, Choice):
            return self._mapping(leaf)
        name = f"stated-{_kebab(type(leaf).__name__)}"
        self._definitions.setdefault(name, self._mapping(leaf, shared=True))
        return {"$ref": f"#/$defs/{name}"}

    def _mapping(self, leaf: LeafKind, *, shared: bool = False) -> dict[str, Any]:
        scalar = leaf.scalar_schema()
        if shared:
            scalar = {key: each for key, each in scalar.items() if key in ("type", "items")} or (
                scalar)
        properties: dict[str, Any] = {}
        for key in mapping_keys(leaf):
            if key == "value":
                properties[key] = scalar
            elif key in leaf.extras:
                properties[key] = {"description": leaf.extras[key].meaning,
                                   **self._leaf(leaf.extras[key])}
            else:
                properties[key] = {"$ref": f"#/$defs/remark-{key.replace('_', '-')}"}
        form: dict[str, Any] = {"type": "object", "properties": properties,
                                "additionalProperties": False}
        if "value" not in properties:
            return form | {"required": ["not_determinable"]}
        form["oneOf"] = [{"required": ["value"]}, {"required": ["not_determinable"]}]
        if leaf.spreads:
            form["dependentRequired"] = {key: ["value"] for key in SPREADS}
            form["not"] = {"required": list(SPREADS)}
        return form

    def _define_remarks(self) -> None:
        for key, leaf in REMARKS.items():
            self._definitions[f"remark-{key.replace('_', '-')}"] = {
                "description": leaf.meaning, **leaf.scalar_schema()}
        for key, words in (("plus_minus", "Tolerance, either way"),
                           ("uncertainty", "95 % expanded uncertainty, either way")):
            self._definitions[f"remark-{key.replace('_', '-')}"] = {
                "description": f"{words}: a share such as 10 %, or a measure with its unit",
                "type": "string", "pattern": "[0-9]"}


def _kebab(name: str) -> str:
    return re.sub(r"(?<=[a-z0-9])(?=[A-Z])", "-", name).lower()
