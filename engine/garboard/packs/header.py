"""What stands at the top of a pack: its name, version, scope, and what goes into every output."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Final, Literal

from pydantic import Field

from garboard.packs.acceptance import Acceptance
from garboard.packs.base import Base
from garboard.packs.model import VERSION_PATTERN, Id, Model, Text
from garboard.packs.question import Question
from garboard.packs.rule import Expression

FORMAT: Final = "rule-pack/1"
DecisionRule = Literal["guarded acceptance", "simple acceptance"]

#: A YAML list read into a tuple: the list is converted, what stands in it is not.
Sentences = Annotated[tuple[Text, ...], Field(strict=False)]


class Need(Model):
    """A plugin the pack needs, with the name and unit of each of its quantities that is used."""

    plugin: Text = Field(description="Name of the plugin; 'garboard' is the built-in one.")
    api: int = Field(ge=1, description="Version of the plugin interface the pack was written for.")
    quantities: Mapping[str, Text] = Field(default_factory=dict, description=(
        "The quantities of the plugin that the pack uses, each with its unit ('device.heat: W')."))


class Header(Model):
    """Everything in pack.yaml but its limits and rules."""

    format: Literal["rule-pack/1"] = Field(description="The format and its major version.")
    pack: Id = Field(description="Name of the pack: lower-case letters, digits and hyphens.")
    version: str = Field(pattern=VERSION_PATTERN, description=(
        "Semantic version of three numbers, such as 0.1.0."))
    title: Text = Field(description="Title in one line.")
    builds_on: Annotated[tuple[Base, ...], Field(strict=False)] | None = Field(
        None, json_schema_extra={"minItems": 1}, description=(
            "The packs this one builds on; their limits and rules hold here too, but for "
            "'changes'."))
    applies_when: Expression | None = Field(None, description=(
        "An expression about 'record' that is true when the pack applies at all; left out, it "
        "always does."))
    decision_rule: DecisionRule = Field("guarded acceptance", description=(
        "How an uncertain figure is held against a limit: 'guarded acceptance' (all of it must "
        "be inside) or 'simple acceptance' (the nominal figure decides)."))
    dispensable_danger: Literal["counts apart"] | None = Field(None, description=(
        "'counts apart': a failure at danger that a dispensation is in force for counts apart, "
        "like any other. Left out, it counts as failed all the same."))
    acceptance: Acceptance | None = Field(None, description=(
        "On which findings an installation is accepted, referred or declined."))
    not_examined: Sentences = Field((), description=(
        "What the pack does not look at; the sentences go into every output."))
    cautions: Sentences = Field((), description=(
        "What the reader must bear in mind; the sentences go into every output."))
    needs: Annotated[tuple[Need, ...], Field(strict=False)] = Field((), description=(
        "The plugins the pack needs."))
    questions: Annotated[tuple[Question, ...], Field(strict=False)] = Field((), description=(
        "What only a person can answer aboard. Answers stand in the record; a rule reads one as "
        "'answer.' and the id of its question."))
