"""Ed25519 keys in files: the secret key that signs, the public key that everyone may have.

Files are PEM: PKCS #8 for the secret key, SubjectPublicKeyInfo (RFC 8410) for the public one. The
library ``cryptography`` does the work and is imported only here and in ``signature``.
"""

from __future__ import annotations

import hashlib
import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Final

from garboard.documents.limits import Limits
from garboard.documents.reading import read_bytes
from garboard.documents.writing import write_whole
from garboard.errors import NOWHERE, Place, Problem, SignatureRefused

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

#: A key file is a few lines; anything larger is another file.
_LIMITS: Final = Limits(size_bytes=10_000)
_OTHERS: Final = stat.S_IRWXG | stat.S_IRWXO


@dataclass(frozen=True, slots=True)
class PublicKey:
    """A public key by its 32 bytes."""

    raw: bytes

    @property
    def fingerprint(self) -> str:
        """``sha256:`` and the hexadecimal SHA-256 of the 32 bytes."""
        return "sha256:" + hashlib.sha256(self.raw).hexdigest()


@dataclass(frozen=True, slots=True, eq=False)
class SecretKey:
    """A secret key; it shows nothing of itself when printed."""

    _key: Ed25519PrivateKey = field(repr=False)

    @property
    def public(self) -> PublicKey:
        return PublicKey(self._key.public_key().public_bytes_raw())

    def sign(self, message: bytes) -> bytes:
        """The 64 bytes of the signature of a message."""
        return self._key.sign(message)


@contextmanager
def signing_library() -> Iterator[None]:
    """Around what imports ``cryptography``: SignatureRefused with a hint where it is not there."""
    try:
        yield
    except ImportError as missing:
        raise SignatureRefused([Problem(
            "signing-not-installed", NOWHERE, found=str(missing), expected="cryptography",
            hint="pip install 'garboard[signing]'")]) from missing


def new_key_pair(secret: Path, public: Path) -> PublicKey:
    """Make a key pair and write both files; the secret one can be read by its owner alone.

    SignatureRefused where a file of either name is there already; OutputRefused where it cannot be
    written.
    """
    with signing_library():
        from cryptography.hazmat.primitives import serialization as forms
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    taken = [Problem("key-exists", Place(str(file)), hint="choose another name")
             for file in (secret, public) if os.path.lexists(file)]
    if taken:
        raise SignatureRefused(taken)
    key = Ed25519PrivateKey.generate()
    write_whole(secret, key.private_bytes(forms.Encoding.PEM, forms.PrivateFormat.PKCS8,
                                          forms.NoEncryption()), secret=True)
    write_whole(public, key.public_key().public_bytes(
        forms.Encoding.PEM, forms.PublicFormat.SubjectPublicKeyInfo))
    return SecretKey(key).public


def read_secret_key(file: Path) -> SecretKey:
    """The secret key in a file.

    DocumentRefused where there is no readable file; SignatureRefused where it is no Ed25519 key, or
    others than its owner may read it.
    """
    with signing_library():
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
        from cryptography.hazmat.primitives.serialization import load_pem_private_key
    raw = read_bytes(file, _LIMITS)
    mode = stat.S_IMODE(file.stat().st_mode)
    if os.name == "posix" and mode & _OTHERS:
        raise SignatureRefused([Problem(
            "key-open-to-others", Place(str(file)), found=f"permissions {mode:o}",
            expected="permissions 600", hint=f"chmod 600 {file}")])
    with _key_problems(file, "a secret key"):
        key = load_pem_private_key(raw, None)
    if not isinstance(key, Ed25519PrivateKey):
        raise _no_key(file, "a key of another kind", "a secret key")
    return SecretKey(key)


def read_public_key(file: Path) -> PublicKey:
    """The public key in a file; DocumentRefused or SignatureRefused where there is none."""
    with signing_library():
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
        from cryptography.hazmat.primitives.serialization import load_pem_public_key
    raw = read_bytes(file, _LIMITS)
    with _key_problems(file, "a public key"):
        key = load_pem_public_key(raw)
    if not isinstance(key, Ed25519PublicKey):
        raise _no_key(file, "a key of another kind", "a public key")
    return PublicKey(key.public_bytes_raw())


@contextmanager
def _key_problems(file: Path, expected: str) -> Iterator[None]:
    """What the library raises for a file that is no key, as a problem; it says nothing of it."""
    from cryptography.exceptions import UnsupportedAlgorithm

    try:
        yield
    except (ValueError, TypeError, UnsupportedAlgorithm):
        raise _no_key(file, "another text", expected) from None


def _no_key(file: Path, found: str, expected: str) -> SignatureRefused:
    return SignatureRefused([Problem("key-unreadable", Place(str(file)), found=found,
                                     expected=f"{expected}, Ed25519, in PEM, without password")])
