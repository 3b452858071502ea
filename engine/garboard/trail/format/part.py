"""What the models of the trail format have in common: strict, closed unless they say otherwise."""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field


class Part(BaseModel):
    """A part of a trail; nothing is converted, unknown keys are refused."""

    model_config = ConfigDict(strict=True, extra="forbid", allow_inf_nan=False)


class OpenPart(BaseModel):
    """A part whose further keys belong to another format."""

    model_config = ConfigDict(strict=True, extra="allow", allow_inf_nan=False)


Digest = Annotated[str, Field(pattern=r"^sha256:[0-9a-f]{64}$")]
Day = Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}$")]
Count = Annotated[int, Field(ge=0)]
