"""A pack in a trail: which one, as what it was resolved, and what its rules were traced for."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field

from garboard.trail.format.part import Count, Digest, OpenPart, Part
from garboard.trail.format.value import CausePart

Severity = Literal["danger", "warning", "caution", "notice"]
DecisionRule = Literal["guarded acceptance", "simple acceptance"]
Relation = Literal["<", "<=", ">", ">=", "==", "!=", "in", "not in"]


class CitationPart(OpenPart):
    """Where a requirement comes from."""

    basis: str = Field(description=(
        "In which capacity the source is cited: regulation, standard, standard as reprinted, "
        "comparison, practice, house."))
    source: str | None = Field(None, description="The document.")
    edition: str | None = Field(None, description="Its edition or date.")
    clause: str | None = Field(None, description="The clause.")
    says: str | None = Field(None, description="What it says, in other words.")
    status: str | None = Field(None, description="Whether that was read, reprinted or from memory.")


class RulePart(OpenPart):
    """A rule as resolved. Further keys belong to the pack format."""

    id: str = Field(description="Name of the rule, unique in its pack.")
    title: str = Field(description="What must hold, in one line.")
    about: str = Field(description="The subject it looks at.")
    severity: Severity = Field(description="By consequence.")
    must_hold: str = Field(description="The expression that must be true.")
    applies_when: str | None = Field(None, description="The condition; none: it always applies.")
    citation: CitationPart = Field(description="Where the requirement comes from.")
    why: str = Field(description="What happens otherwise.")
    recommendation: str = Field(description="What to do when it fails.")
    covers: Literal["whole", "part"] = Field("whole", description=(
        "Whether all of what the source requires is examined, or a part."))
    left_to_a_person: str | None = Field(None, description="What a person has to examine.")


class ConditionPart(OpenPart):
    """A condition over the findings of the whole record."""

    says: str = Field(description="The condition in words.")
    outcome: str = Field(description="Which findings are counted.")
    severity: list[Severity] = Field(description="Only those of these severities; none: of any.")
    rules: list[str] = Field(description="Only those of these rules; none: of any.")
    at_least: Count = Field(description="How many there must be.")


class AcceptancePart(OpenPart):
    """On what the pack accepts, refers or declines."""

    must_have_passed: list[str] = Field(description="Rules that must have passed.")
    declined_when: list[ConditionPart] = Field(description="One of them is enough to decline.")
    referred_when: list[ConditionPart] = Field(description="One of them is enough to refer.")


class ResolvedPart(OpenPart):
    """The whole pack as it was applied. Further keys belong to the pack format."""

    rules: list[RulePart] = Field(description="The rules, in the pack's order.")
    limits: dict[str, Any] = Field(description="The limits by name, each with its citation.")
    acceptance: AcceptancePart | None = Field(None, description=(
        "On what the pack accepts, refers or declines, where it says so."))
    cautions: list[str] = Field(description="What the reader must bear in mind.")
    not_examined: list[str] = Field(description="What the pack does not look at.")


class OperandPart(Part):
    """What stands at one place of the operands of a rule's findings."""

    text: str = Field(description="The operand as it stands in the rule.")
    part: Literal["condition", "requirement"] = Field(description="In which part it stands.")
    kind: str = Field(description="number, count, truth, text, texts, date, ...")
    dimension: str | None = Field(description="Dimension of a number.")
    unit: str | None = Field(description="Canonical unit of a number.")
    constant: bool = Field(description="Whether it is the same for every item.")
    limit: str | None = Field(description="The limit it is, if it is one.")


class StatementPart(Part):
    """A statement of a rule: a comparison of two operands, or one operand that is true or false."""

    left: Count = Field(description="Place of the left side, or of the truth, among the operands.")
    relation: Relation | None = Field(description="The relation; null for a plain truth.")
    right: Count | None = Field(description="Place of the right side; null for a plain truth.")


class TracePart(Part):
    """What the values in the findings of a rule are, said once for all of them."""

    operands: list[OperandPart] = Field(description="The operands, in the order of the rule.")
    statements: list[StatementPart] = Field(description="The statements, in the same order.")


class RelaxationPart(Part):
    """A rule or limit of a pack below that a layer relaxed or retired."""

    what: str = Field(description="The rule or limit.")
    change: Literal["relaxed", "retired"] = Field(description="What was done to it.")
    by: str = Field(description="Which layer did it, with its version.")
    author: str | None = Field(None, description="Who decided on it.")
    why: str = Field(description="The reason it gives.")
    before: str | None = Field(None, description="What it was, where a word or two say it.")
    after: str | None = Field(None, description="What it is now, where a word or two say it.")


class SignaturePart(Part):
    """A signature, with the key, the signer and the day it names."""

    algorithm: Literal["Ed25519"] = Field(description="The method of signing.")
    public_key: str = Field(description="The public key, base64.")
    fingerprint: Digest = Field(description="SHA-256 of the public key.")
    signature: str = Field(description="The signature, base64.")
    signer: str = Field(description="Who signed, as stated.")
    signed_on: str = Field(description="When, as the signer states.")


class PackPart(Part):
    """One pack that was applied."""

    pack: str = Field(description="Name of the pack.")
    version: str = Field(description="Its version.")
    title: str = Field(description="Its title.")
    digest: Digest = Field(description="SHA-256 over the canonical bytes of 'resolved'.")
    status: Literal["working copy", "sealed"] = Field(description="Whether it came sealed.")
    signature: SignaturePart | None = Field(None, description=(
        "The signature of a pack that came sealed and signed, on the canonical bytes of "
        "'resolved'; it was checked."))
    decision_rule: DecisionRule = Field(description=(
        "How an uncertain figure was held against a limit."))
    applies: bool | None = Field(description="Whether the pack applies; null: not known.")
    missing: list[CausePart] = Field([], description="Why it is not known whether it applies.")
    relaxations: list[RelaxationPart] = Field([], description=(
        "What layers relaxed or retired; every report lists it first."))
    resolved: ResolvedPart = Field(description="The whole pack as it was applied.")
    traces: dict[str, TracePart] = Field(description=(
        "By rule: what its findings' operands are, and which statements are made of them."))
