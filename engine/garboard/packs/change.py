"""What a layer changes in the packs below it: one rule, one limit, or a word of the head."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Final, Literal

from pydantic import Field

from garboard.errors import Problem
from garboard.packs.citation import Citation
from garboard.packs.limit import Amount
from garboard.packs.model import Id, LimitName, Model, Text
from garboard.packs.rule import Expression, Severity
from garboard.packs.spot import Spot
from garboard.packs.translation import RuleTranslations

#: What can be set anew, by what is changed.
FIELDS: Final[Mapping[str, tuple[str, ...]]] = {
    "rule": ("title", "applies_when", "must_hold", "severity", "citation", "why", "recommendation",
             "covers", "left_to_a_person", "translations", "retire"),
    "limit": ("value", "citation"),
    "head": ("decision_rule", "dispensable_danger"),
}
_TARGETS: Final = ("rule", "limit")
_BESIDE: Final = ("reason", "author", "replaces")


class Change(Model):
    """A change to one rule or limit of a pack below, or to a word of its head."""

    rule: Id | None = Field(None, description="Id of the rule that is changed.")
    limit: LimitName | None = Field(None, description="Name of the limit that is changed.")
    retire: Literal[True] | None = Field(None, description=(
        "true: the rule is retired; it stays in every report, as not applicable."))
    title: Text | None = Field(None, description="The rule's title from here on.")
    applies_when: Expression | None = Field(None, description="The rule's condition from here on.")
    must_hold: Expression | None = Field(None, description="The rule's requirement from here on.")
    severity: Severity | None = Field(None, description="The rule's severity from here on.")
    why: Text | None = Field(None, description="What happens otherwise, from here on.")
    recommendation: Text | None = Field(None, description="What to do, from here on.")
    covers: Literal["whole", "part"] | None = Field(None, description=(
        "Whether the rule covers the whole of its source, from here on."))
    left_to_a_person: Text | None = Field(None, description=(
        "What the rule leaves to a person, from here on."))
    translations: RuleTranslations | None = Field(None, description=(
        "The rule's texts in further languages; a text that a layer sets anew loses those it had."))
    value: Amount | None = Field(None, description="The limit's value from here on.")
    citation: Citation | None = Field(None, description=(
        "Where the rule or the limit comes from, from here on."))
    decision_rule: Literal["guarded acceptance", "simple acceptance"] | None = Field(
        None, description="How an uncertain figure is held against a limit, from here on.")
    dispensable_danger: Literal["counts apart"] | None = Field(None, description=(
        "'counts apart': a dispensed danger counts apart, from here on."))
    reason: Text | None = Field(None, description=(
        "Why; required where the change relaxes or retires something, or lowers a severity."))
    author: Text | None = Field(None, description="Who decided on the change; required with it.")
    replaces: Annotated[tuple[Id, ...], Field(strict=False)] = Field((), description=(
        "The packs whose change of the same thing this one replaces."))

    @property
    def kind(self) -> Literal["rule", "limit", "head"]:
        return "rule" if self.rule is not None else "limit" if self.limit is not None else "head"

    @property
    def name(self) -> str:
        """Name of what is changed; empty for the head."""
        return self.rule or self.limit or ""

    def fields(self) -> dict[str, Any]:
        """What is set anew."""
        return {name: value for name in FIELDS[self.kind]
                if (value := getattr(self, name)) is not None}


def change_problems(change: Change, spot: Spot) -> Iterator[Problem]:
    """One thing is changed, in something it has; a rule is retired or changed, not both."""
    written = [key for key, _ in spot.entries() if key not in (*_TARGETS, *_BESIDE)]
    if change.rule is not None and change.limit is not None:
        yield Problem("change-of-several", spot.at("limit").place(key=True), found="limit",
                      expected="a rule or a limit; write two changes")
    for name in written:
        if name not in FIELDS[change.kind]:
            yield Problem("change-field", spot.at(name).place(key=True), found=name,
                          expected=", ".join(FIELDS[change.kind]))
    if not written:
        yield Problem("change-empty", spot.place(), found="nothing to change",
                      expected=", ".join(FIELDS[change.kind]))
    if change.retire and len(written) > 1:
        yield Problem("change-of-several", spot.at("retire").place(key=True), found="retire",
                      expected="no other change to a rule that is retired")
