"""The JSON Schema of a sealed pack."""

from __future__ import annotations

from typing import Any

from garboard.documents import signature_schema
from garboard.packs.schema import DIALECT
from garboard.packs.seal import FORMAT


def sealed_pack_schema() -> dict[str, Any]:
    """Schema of format ``sealed-pack/1``; what 'pack' holds is checked by reading it."""
    return {
        "$schema": DIALECT, "$id": "urn:garboard:sealed-pack:1",
        "title": f"Sealed pack ({FORMAT})",
        "description": ("A pack with the packs below it resolved into one. The file is canonical "
                        "JSON (RFC 8785) with a line feed at its end: no byte of it can change."),
        "type": "object", "additionalProperties": False,
        "required": ["format", "digest", "pack"],
        "properties": {
            "format": {"const": FORMAT, "description": "The format and its major version."},
            "digest": {"type": "string", "pattern": "^sha256:[0-9a-f]{64}$", "description": (
                "SHA-256 of the canonical bytes of 'pack'; trails and pack lists name it.")},
            "pack": {
                "type": "object", "required": ["format", "pack", "version", "title", "limits",
                                               "rules"],
                "description": "The resolved form of the pack, as every trail embeds it.",
                "properties": {
                    "format": {"const": "rule-pack/1", "description": "The format of the pack."},
                    "pack": {"type": "string", "description": "Name of the pack."},
                    "version": {"type": "string", "description": "Its version."},
                    "title": {"type": "string", "description": "Its title."},
                    "limits": {"type": "object", "description": (
                        "By name: as written, in the canonical unit, and the citation.")},
                    "rules": {"type": "array", "items": {"type": "object"}, "description": (
                        "The rules, those that a layer retired included.")},
                    "layers": {"type": "array", "items": {"type": "object"}, "description": (
                        "The packs below, the lowest first, by name, version and digest.")},
                    "set_by": {"type": "object", "description": (
                        "Which layer set which part of the head, of a limit, of a rule.")},
                    "relaxations": {"type": "array", "items": {"type": "object"}, "description": (
                        "What layers relaxed or retired, by whom and why.")}}},
            "signature": signature_schema()},
    }
