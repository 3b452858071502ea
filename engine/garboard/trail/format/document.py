"""The whole trail document."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from garboard.trail.format.about_part import AboutPart
from garboard.trail.format.derivation_part import DerivationPart, IrregularityPart, QuantityPart
from garboard.trail.format.finding_part import DispensationPart, FindingPart
from garboard.trail.format.outcome_part import OutcomePart
from garboard.trail.format.pack_part import PackPart
from garboard.trail.format.part import Day, Digest, Part
from garboard.trail.format.record_part import RecordPart


class AssessmentPart(Part):
    """What the digest covers: everything needed to understand and to repeat the assessment."""

    date: Day = Field(description="The day the assessment is made for.")
    date_from: Literal["survey", "command line"] = Field(description="Where that day is from.")
    previous: Digest | None = Field(None, description=(
        "Digest of the trail of the vessel's previous assessment, where one was named."))
    record: RecordPart = Field(description="The record, as written and as read.")
    packs: list[PackPart] = Field(description="The packs that were applied, in their order.")
    dispensations: list[DispensationPart] = Field(description="Agreed exceptions.")
    findings: list[FindingPart] = Field(description=(
        "Every finding, in the order of packs, of rules in a pack, and of item ids."))
    derivations: dict[str, DerivationPart] = Field(description=(
        "Every computed figure, by item and name ('f0.prospective_current')."))
    quantities: dict[str, QuantityPart] = Field(description="The calculations that were used.")
    irregularities: list[IrregularityPart] = Field(description=(
        "What is odd about the wiring as recorded."))
    outcome: OutcomePart = Field(description="Computed from the findings: word, exit code, counts.")


class SignaturePart(Part):
    """One signature, with the key, the signer and the day it names; none of them is proven by it.
    """

    algorithm: Literal["Ed25519"] = Field(description="The method of signing.")
    public_key: str = Field(description="The 32 bytes of the public key, base64.")
    fingerprint: Digest = Field(description=(
        "SHA-256 of the public key: what to compare with what the signer gave."))
    signature: str = Field(description="The 64 bytes of the signature, base64.")
    signer: str = Field(description="Who signed, as stated.")
    signed_on: str = Field(description="When, as the signer states.")


class TrailDocument(Part):
    """The audit trail of one assessment: record, packs, findings and derivations in one file."""

    format: Literal["trail/1"] = Field(description="The format and its major version.")
    digest: Digest = Field(description=(
        "SHA-256 over the canonical bytes (RFC 8785, text in NFC) of 'assessment'."))
    assessment: AssessmentPart = Field(description="What the digest covers.")
    about: AboutPart = Field(description="What the digest does not cover.")
    signatures: list[SignaturePart] = Field([], description=(
        "Signatures on the canonical bytes of 'assessment', each by a key of its own."))
