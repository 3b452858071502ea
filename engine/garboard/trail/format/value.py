"""Values in a trail: numbers, bounds, unknowns, texts, truths, dates, conductor sizes."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from garboard.trail.format.part import Day, Part

Reason = Literal["calculation error", "plugin unavailable", "conflict", "outside method",
                 "not determinable", "answer expired", "awaits answer", "not recorded",
                 "within uncertainty"]


class CausePart(Part):
    """One thing that stands between us and a figure."""

    reason: Reason = Field(description="Why it is not known.")
    path: str = Field(description=(
        "Data path of the fact that would resolve it ('pack-1.internal_resistance'); empty when no "
        "recorded fact would."))
    detail: str = Field(description="A short explanation for people; may be empty.")


class BoundsPart(Part):
    """A number known only between two ends, in its canonical unit."""

    lo: float | None = Field(description="Lower end; null when that side is open.")
    hi: float | None = Field(description="Upper end; null when that side is open.")
    nominal: float | None = Field(description="The nominal figure, where there is one.")
    basis: list[Literal["tolerance", "uncertainty", "assumption", "unrecorded"]] = Field(
        description="What the bounds rest on.")
    causes: list[CausePart] = Field(description=(
        "What would have to be known better for a limit between the ends to be decided."))


class UnknownPart(Part):
    """A value that is not known."""

    unknown: list[CausePart] = Field(min_length=1, description="Why, worst reason first.")


class DatePart(Part):
    """A date."""

    date: Day = Field(description="Year, month, day.")


class SizePart(Part):
    """A conductor size."""

    size: str = Field(description="Name of the size in its system: '2/0', '50'.")
    system: str = Field(description="AWG, SAE or mm2.")
    area_mm2: float = Field(description="Cross-section in mm².")
    written: str = Field(description="As it was written.")


Single = bool | float | str | BoundsPart | UnknownPart | DatePart | SizePart | None
Value = Single | list[Single]
