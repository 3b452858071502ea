"""A file of dispensations as it is written."""

from __future__ import annotations

from typing import Annotated, Final, Literal

from pydantic import Field

from garboard.packs.model import ID_PATTERN, Id, Model, Text

FORMAT: Final = "dispensations/1"
DAY_PATTERN: Final = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
Day = Annotated[str, Field(pattern=DAY_PATTERN)]


class WrittenDispensation(Model):
    """An agreed exception to one rule for one item."""

    id: Id | None = Field(None, description=(
        "What the exception is called; left out, it is called after pack, rule, item and day."))
    rule: str = Field(pattern=f"{ID_PATTERN[:-1]}(/{ID_PATTERN[1:-1]})?$", description=(
        "The rule: its id, with that of its pack before it ('house-rules/ground-tackle') where "
        "several packs have a rule of that id."))
    item: Id = Field(description="Id of the item in the record; there is one item for each.")
    reason: Text = Field(description="Why the exception is made.")
    approved_by: Text = Field(description="Who agreed to it.")
    from_: Day = Field(alias="from", description=(
        "First day, year-month-day; it is in force from the start of that day."))
    until: Day = Field(description="Last day; it is in force to the end of that day.")


class DispensationFile(Model):
    """Agreed exceptions, given with 'assess --dispensations'."""

    format: Literal["dispensations/1"] = Field(description="The format and its major version.")
    vessel: Text | None = Field(None, description=(
        "Name of the vessel the exceptions are for, as the record has it; for any other vessel "
        "none is in force. Left out, they are for whichever record they are given with."))
    dispensations: Annotated[tuple[WrittenDispensation, ...], Field(strict=False)] = Field(
        description="The exceptions, one for each rule and item.")
