"""Sealing a pack: the bytes of its sealed file."""

from __future__ import annotations

from garboard.documents import SecretKey, sign
from garboard.packs.pack import Pack
from garboard.packs.seal import FORMAT
from garboard.trail import encoded_object


def sealed_bytes(pack: Pack, key: SecretKey | None = None, *, signer: str = "",
                 signed_on: str = "") -> bytes:
    """The sealed file of a pack: canonical bytes (RFC 8785) and a line feed.

    It holds the resolved form of the pack and the digest of that, which is the digest that trails
    and pack lists name. With a ``key`` the bytes of the resolved form are signed; SignatureRefused
    where signer or day is not stated.
    """
    content: dict[str, object] = {"format": FORMAT, "digest": pack.digest, "pack": pack.resolved}
    if key is not None:
        content["signature"] = sign(FORMAT, pack.resolved.canonical, key, signer=signer,
                                    signed_on=signed_on).as_data()
    return encoded_object(content).canonical + b"\n"
