"""Signatures on a trail: beside what the digest covers, so that several people can sign one file.

Signed are the canonical bytes of the assessment, as a thing of the kind that the trail's format
names. A trail that was brought up from an older format is checked as it was made.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from garboard.documents import (
    SecretKey,
    check_signature,
    read_document,
    read_signature,
    sign,
)
from garboard.errors import Place, Problem, SignatureRefused
from garboard.trail.canonical import canonical_bytes
from garboard.trail.making import FORMAT
from garboard.trail.reading import TRAIL_LIMITS, read_trail
from garboard.trail.trail import Trail


@dataclass(frozen=True, slots=True)
class CheckedSignature:
    """One signature on a trail: who and when as stated, by which key, and what is wrong with it."""

    signer: str
    signed_on: str
    fingerprint: str
    problem: Problem | None = None


def sign_trail(file: Path | str, key: SecretKey, *, signer: str, signed_on: str) -> bytes:
    """The bytes of the trail in a file with one signature more.

    TrailRefused for a file that is no sound trail; SignatureRefused (``signed-already``) when the
    key has signed it, or when signer or day is not stated.
    """
    document = read_document(file, TRAIL_LIMITS)
    trail = read_trail(document)
    for each in signatures_on(trail):
        if each.fingerprint == key.public.fingerprint:
            raise SignatureRefused([Problem(
                "signed-already", Place(str(file)), found=f"{each.signer}, {each.signed_on}",
                expected="a key that has not signed it")])
    signature = sign(_kind(trail), trail.canonical, key, signer=signer, signed_on=signed_on)
    data = document.data
    assert isinstance(data, dict)
    signed = {**data, "signatures": [*data.get("signatures", ()), signature.as_data()]}
    return canonical_bytes(signed) + b"\n"


def signatures_on(trail: Trail) -> tuple[CheckedSignature, ...]:
    """Every signature on a trail, each checked against the key that it names."""
    return tuple(_checked(trail, number, block)
                 for number, block in enumerate(trail.document.get("signatures", ())))


def _checked(trail: Trail, number: int, block: object) -> CheckedSignature:
    place = Place(path=f"signatures[{number}]")
    try:
        stated = read_signature(block, place)
    except SignatureRefused as refused:
        return CheckedSignature("not readable", "", "", refused.problems[0])
    problem = None
    try:
        check_signature(_kind(trail), trail.canonical, block, place)
    except SignatureRefused as refused:
        problem = refused.problems[0]
    return CheckedSignature(stated.signer, stated.signed_on, stated.public_key.fingerprint,
                            problem)


def _kind(trail: Trail) -> str:
    return trail.brought_up_from or FORMAT
