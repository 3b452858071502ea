"""What came out as a whole: a word, an exit code, and counts whose denominators are named."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from garboard.trail.format.part import Count, Part

Word = Literal["meets the pack's rules as recorded", "does not meet", "could not be assessed",
               "does not apply"]


class BySeverityPart(Part):
    """A count for each severity."""

    danger: Count = Field(description="Findings of rules at danger.")
    warning: Count = Field(description="Findings of rules at warning.")
    caution: Count = Field(description="Findings of rules at caution.")
    notice: Count = Field(description="Findings of rules at notice.")


class CountsPart(Part):
    """How many findings of each kind; 'applying' = passed + failed + not assessed."""

    findings: Count = Field(description="All findings.")
    applying: Count = Field(description="Findings of rules that apply to their item.")
    passed: Count = Field(description="Passed.")
    failed: Count = Field(description="Failed, dispensed ones included.")
    not_assessed: Count = Field(description="Not assessed.")
    not_applicable: Count = Field(description="Not applicable.")
    dispensed: Count = Field(description="Failed, but set aside by a dispensation.")
    calculation_errors: Count = Field(description="Not assessed because a calculation failed.")
    failed_by_severity: BySeverityPart = Field(description="Failed, dispensed ones included.")
    not_assessed_by_severity: BySeverityPart = Field(description="Not assessed.")


class DecisionPart(Part):
    """One reason for a word, and the findings it rests on."""

    says: str = Field(description="The condition, in words.")
    findings: list[str] = Field(description="Ids of the findings that decided it.")


class AcceptanceOutcomePart(Part):
    """Whether the installation is accepted by a pack that says on what."""

    word: Literal["accepted", "referred", "declined"] = Field(description="The word.")
    decided_by: list[DecisionPart] = Field(description="What decided it.")


class PackOutcomePart(Part):
    """What came out for one pack."""

    pack: str = Field(description="Name of the pack.")
    version: str = Field(description="Its version.")
    word: Word = Field(description="The overall word for this pack.")
    counts: CountsPart = Field(description="Its findings.")
    acceptance: AcceptanceOutcomePart | None = Field(None, description=(
        "Whether the pack accepts the installation, where it says on what."))


class OutcomePart(Part):
    """What came out as a whole."""

    word: Word = Field(description="The overall word.")
    exit_code: Literal[0, 1, 2, 4] = Field(description=(
        "4: a calculation failed; 1: a rule failed; 2: nothing failed but something at danger or "
        "warning was not assessed, or nothing was looked at; 0: otherwise."))
    counts: CountsPart = Field(description="All findings.")
    packs: list[PackOutcomePart] = Field(description="The same for each pack, in their order.")
