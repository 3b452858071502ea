"""Digests: SHA-256 over canonical bytes."""

from __future__ import annotations

import hashlib

from garboard.trail.canonical import canonical_bytes

PREFIX = "sha256:"


def digest_of(data: object) -> str:
    """``sha256:`` and the hexadecimal SHA-256 of the canonical bytes of JSON data."""
    return digest_of_bytes(canonical_bytes(data))


def digest_of_bytes(canonical: bytes) -> str:
    """The same of bytes that are canonical already."""
    return PREFIX + hashlib.sha256(canonical).hexdigest()
