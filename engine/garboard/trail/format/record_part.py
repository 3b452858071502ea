"""The record in a trail: as it was written, and every fact as it was read."""

from __future__ import annotations

from typing import Any

from pydantic import Field

from garboard.trail.format.part import Digest, OpenPart, Part
from garboard.trail.format.value import Value


class FactPart(OpenPart):
    """One recorded fact as read. Further keys are what the record format allows beside a value."""

    value: Value = Field(description="The value, in its canonical unit.")
    unit: str | None = Field(None, description="Canonical unit of the value, where it has one.")
    origin: str | None = Field(None, alias="from", description=(
        "Where the value is from: measured, nameplate, datasheet, owner, estimated."))
    method: str | None = Field(None, description="How it was found.")
    evidence: Any = Field(None, description="Evidence named in the record.")
    note: str | None = Field(None, description="A note beside the value.")


class RecordPart(Part):
    """The installation record that was assessed."""

    format: str = Field(description="Format of the record, with its major version.")
    digest: Digest = Field(description="SHA-256 over the canonical bytes of 'written'.")
    written: dict[str, Any] = Field(description="The record's data as they were written.")
    read: dict[str, FactPart] = Field(description=(
        "Every fact that was read, by data path ('pack-1.capacity'), in canonical units."))
