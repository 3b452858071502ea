"""Signatures on bytes, as data that stands beside what is signed.

Signed is a statement: what kind of thing it is, the SHA-256 of its bytes, the signer and the day as
the signer states them, and the public key. So none of these can be changed without breaking the
signature, and the signature of one kind of thing is none of another. The statement is canonical
JSON (RFC 8785). A signature proves who held the key, not who that is: compare the fingerprint.
"""

from __future__ import annotations

import base64
import binascii
import hashlib
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final
from unicodedata import normalize

from garboard.documents.keys import PublicKey, SecretKey, signing_library
from garboard.errors import NOWHERE, Place, Problem, SignatureRefused

ALGORITHM: Final = "Ed25519"
_KEYS: Final = ("algorithm", "public_key", "fingerprint", "signature", "signer", "signed_on")
#: Texts that people state: one line, something in it, no control characters.
_STATED: Final = re.compile(r"[^\x00-\x1f\x7f\u2028\u2029\ud800-\udfff]*\S"
                            r"[^\x00-\x1f\x7f\u2028\u2029\ud800-\udfff]*")
_LONGEST: Final = 200
_KEY_BYTES: Final = 32
_SIGNATURE_BYTES: Final = 64


@dataclass(frozen=True, slots=True)
class Signature:
    """A signature with its key, its signer and its day; who and when are as the signer states."""

    public_key: PublicKey
    signature: bytes
    signer: str
    signed_on: str

    def as_data(self) -> dict[str, str]:
        return {"algorithm": ALGORITHM, "public_key": _text(self.public_key.raw),
                "fingerprint": self.public_key.fingerprint, "signature": _text(self.signature),
                "signer": self.signer, "signed_on": self.signed_on}


def sign(kind: str, message: bytes, key: SecretKey, *, signer: str, signed_on: str) -> Signature:
    """Sign the bytes of a thing of a kind (such as its format, ``sealed-pack/1``).

    SignatureRefused (``signer-unstated``) where signer or day is no text of one line.
    """
    signer, signed_on = normalize("NFC", signer.strip()), normalize("NFC", signed_on.strip())
    for name, text in (("signer", signer), ("day", signed_on)):
        if not _is_stated(text):
            raise SignatureRefused([Problem("signer-unstated", NOWHERE, found=f"{name} {text!r}",
                                            expected="one line of text")])
    unsigned = Signature(key.public, b"", signer, signed_on)
    return Signature(key.public, key.sign(_statement(kind, message, unsigned)), signer, signed_on)


def check_signature(kind: str, message: bytes, block: object, place: Place = NOWHERE,
                    key: PublicKey | None = None) -> Signature:
    """The signature that a block of data holds, when it is one of these bytes.

    ``key`` is the key it must be by; without one, it must hold for the key it names. Raises
    SignatureRefused (``signature-missing`` for a block that is ``None``, ``signature-malformed``,
    ``signature-by-another-key``, ``signature-wrong``).
    """
    with signing_library():
        from cryptography.exceptions import InvalidSignature
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
    if block is None:
        raise SignatureRefused([Problem(
            "signature-missing", place,
            expected="a signature" if key is None else f"a signature by {key.fingerprint}")])
    signature = read_signature(block, place)
    if key is not None and signature.public_key != key:
        raise SignatureRefused([Problem(
            "signature-by-another-key", place,
            found=f"{signature.public_key.fingerprint}, {signature.signer}",
            expected=key.fingerprint)])
    try:
        Ed25519PublicKey.from_public_bytes(signature.public_key.raw).verify(
            signature.signature, _statement(kind, message, signature))
    except (InvalidSignature, ValueError):
        raise SignatureRefused([Problem(
            "signature-wrong", place, found=f"signed by {signature.public_key.fingerprint}",
            hint="ask the signer for the file again")]) from None
    return signature


def read_signature(block: object, place: Place = NOWHERE) -> Signature:
    """The signature in a block, not checked; SignatureRefused (``signature-malformed``)."""
    found = _malformed(block)
    if found is None:
        assert isinstance(block, Mapping)
        return Signature(PublicKey(_bytes(block["public_key"])), _bytes(block["signature"]),
                         block["signer"], block["signed_on"])
    raise SignatureRefused([Problem("signature-malformed", place, found=found,
                                    expected=f"{', '.join(_KEYS)}, of {ALGORITHM}")])


def signature_schema() -> dict[str, Any]:
    """The JSON Schema of the block."""
    text = {"type": "string", "minLength": 1}
    described = {
        "algorithm": {"const": ALGORITHM, "description": "The method of signing."},
        "public_key": {**text, "description": "The 32 bytes of the public key, base64."},
        "fingerprint": {"type": "string", "pattern": "^sha256:[0-9a-f]{64}$", "description": (
            "SHA-256 of the public key: what to compare with what the signer gave.")},
        "signature": {**text, "description": "The 64 bytes of the signature, base64."},
        "signer": {**text, "maxLength": _LONGEST, "description": "Who signed, as stated."},
        "signed_on": {**text, "maxLength": _LONGEST, "description": "When, as the signer states."}}
    return {"type": "object", "additionalProperties": False, "required": list(_KEYS),
            "description": "A signature, with the key, the signer and the day it names.",
            "properties": described}


def _statement(kind: str, message: bytes, signature: Signature) -> bytes:
    """What is signed; canonical, for all keys are ASCII and all texts NFC without controls."""
    return json.dumps({
        "digest": "sha256:" + hashlib.sha256(message).hexdigest(), "format": "signature/1",
        "kind": kind, "public_key": _text(signature.public_key.raw),
        "signed_on": signature.signed_on, "signer": signature.signer,
    }, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode()


def _malformed(block: object) -> str | None:
    if not isinstance(block, Mapping) or set(block) != set(_KEYS):
        return "other keys"
    if not all(isinstance(value, str) for value in block.values()):
        return "values that are no texts"
    if block["algorithm"] != ALGORITHM:
        return f"algorithm {block['algorithm']}"
    raw = _bytes(block["public_key"])
    if len(raw) != _KEY_BYTES or len(_bytes(block["signature"])) != _SIGNATURE_BYTES:
        return "a key or signature of another length"
    if block["fingerprint"] != PublicKey(raw).fingerprint:
        return "a fingerprint that is not the key's"
    stated = (block["signer"], block["signed_on"])
    return None if all(map(_is_stated, stated)) else "signer or day that is not one line of text"


def _is_stated(text: str) -> bool:
    return (len(text) <= _LONGEST and text == normalize("NFC", text.strip())
            and _STATED.fullmatch(text) is not None)


def _text(raw: bytes) -> str:
    return base64.b64encode(raw).decode()


def _bytes(text: str) -> bytes:
    """The bytes of a base64 text in its one canonical spelling; none at all where it is none."""
    try:
        raw = base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        return b""
    return raw if _text(raw) == text else b""
