"""A finding in a trail: the outcome of one rule for one item, with the values it rests on."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from garboard.trail.format.part import Count, Day, Part
from garboard.trail.format.value import CausePart, Reason, Value

Outcome = Literal["passed", "failed", "not assessed", "not applicable"]
FindingReason = Reason | Literal["condition false", "none aboard", "pack does not apply", "retired"]
Flag = Literal["covers part", "on assumption", "inside uncertainty"]


class FindingPart(Part):
    """The outcome of one rule for one item."""

    id: str = Field(description=(
        "pack/rule/item; the item is '*' where the record does not say which there are."))
    pack: str = Field(description="Name of the pack.")
    rule: str = Field(description="Name of the rule.")
    item: str | None = Field(description="Id of the item; null where there is none to name.")
    subject: str = Field(description="What kind of thing the item is.")
    outcome: Outcome = Field(description="What came out.")
    reason: FindingReason | None = Field(description=(
        "Why it was not assessed or does not apply; null otherwise."))
    flags: list[Flag] = Field(description="What to bear in mind about the outcome.")
    missing: list[CausePart] = Field(description=(
        "What would decide it, if it was not assessed; worst reason first."))
    operands: list[Value] = Field(description=(
        "The values of the rule's operands as far as they were needed; what they are stands in "
        "the pack's traces, those of the condition first."))
    of: list[list[str]] = Field(description=(
        "For each operand the keys of the figures and recorded facts it was read from."))
    holds: list[bool | None] = Field(description=(
        "For each statement of the rule whose operands are there: whether it holds; null: not "
        "known."))
    decides: list[Count] = Field(description=(
        "Which of the statements the outcome rests on, by their place in the pack's traces."))
    dispensation: str | None = Field(None, description="Id of the dispensation in force for it.")


class DispensationPart(Part):
    """An agreed exception to a rule for one item. It never changes the outcome."""

    id: str = Field(description="Name of the dispensation.")
    pack: str = Field(description="Name of the pack.")
    rule: str = Field(description="Name of the rule.")
    item: str = Field(description="Id of the item.")
    who: str = Field(description="Who agreed to it.")
    why: str = Field(description="Why.")
    first_day: Day = Field(description="In force from the start of this day.")
    last_day: Day = Field(description="In force to the end of this day.")
    counts_as_failed: bool = Field(description=(
        "Whether a failure still counts (a danger does unless the pack says otherwise)."))
