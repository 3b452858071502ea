"""One requirement: what it is about, when it applies, what must hold, and what follows if not."""

from __future__ import annotations

import re
from typing import Annotated, Final, Literal

from pydantic import AfterValidator, Field

from garboard.packs.citation import Citation
from garboard.packs.model import Id, Model, Text
from garboard.packs.permissible import Permissible
from garboard.packs.translation import RuleTranslations

Severity = Literal["danger", "warning", "caution", "notice"]
#: Severities, worst first (signal words after ANSI Z535 and ISO 3864-2).
SEVERITIES: Final = ("danger", "warning", "caution", "notice")

_BREAK = re.compile(r"\s*\n\s*")


def on_one_line(text: str) -> str:
    """An expression with its line breaks as single spaces: how it is laid out does not matter."""
    return _BREAK.sub(" ", text.strip())


def true_or_none(flag: bool | None) -> bool | None:
    """A flag that says no is as if it were left out."""
    return flag or None


Expression = Annotated[str, Field(min_length=1), AfterValidator(on_one_line)]


class Rule(Model):
    """A requirement and everything a report says of it."""

    id: Id = Field(description=(
        "Unique in the pack: lower-case letters, digits and hyphens. A finding is known by it."))
    title: Text = Field(description="What must hold, in one line an owner understands.")
    about: Text = Field(description=(
        "The subject the rule looks at, one finding per item: vessel, place, battery, string, "
        "bank, management_system, run, conductor, device, switch, bus, source, load or record."))
    applies_when: Expression | None = Field(None, description=(
        "An expression that is true for the items the rule applies to; left out, it applies to "
        "all of them."))
    must_hold: Expression = Field(description=(
        "The expression that must be true. A number with a unit stands in 'limits', not here."))
    severity: Severity = Field(description=(
        "By consequence: 'danger' (will kill or seriously injure), 'warning' (could), 'caution' "
        "(minor or moderate injury, damage), 'notice' (no injury)."))
    citation: Citation = Field(description="Where the requirement comes from.")
    why: Text = Field(description="What happens otherwise, in words an owner understands.")
    recommendation: Text = Field(description="What to do when the rule fails.")
    covers: Literal["whole", "part"] = Field("whole", description=(
        "Whether the rule examines the whole of what its source requires, or a part of it."))
    permissible_changes: Annotated[tuple[Permissible, ...] | None, Field(strict=False)] = Field(
        None, description=(
            "Changes of the design that may be proposed when the rule fails, in the order in which "
            "they are tried. None makes a lead longer, a fuse bigger, or another value of one "
            "that is recorded."))
    not_dispensable: Annotated[bool | None, AfterValidator(true_or_none)] = Field(
        None, description=(
            "true: no dispensation is accepted for the rule, and no layer can relax or retire it. "
            "Only for a rule on a regulation."))
    left_to_a_person: Text | None = Field(None, description=(
        "What the rule does not examine and a person must; required when it covers a part, and "
        "shown wherever the rule passes."))
    translations: RuleTranslations | None = Field(None, description=(
        "The rule's texts in further languages, by language tag: 'de: {title: …, why: …}'."))


def cover_gap(raw: object) -> Literal["missing", "contradicts"] | None:
    """Whether a rule as written says what is left to a person exactly when it covers a part."""
    if not isinstance(raw, dict):
        return None
    part = raw.get("covers") == "part"
    stated = raw.get("left_to_a_person") is not None
    if part and not stated:
        return "missing"
    return "contradicts" if stated and not part else None
