"""Something only a person can answer on the spot."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from pydantic import Field

from garboard.packs.model import Id, Model, Text


class Question(Model):
    """A question of a pack, with the JSON Schema its answer must satisfy."""

    id: Id = Field(description="Unique in the pack: lower-case letters, digits and hyphens.")
    ask: Text = Field(description="The question, put to whoever stands aboard.")
    how_to_look: Text | None = Field(None, description="Where to look and how, aboard.")
    answer: Mapping[str, Any] = Field(description="A JSON Schema that the answer must satisfy.")
