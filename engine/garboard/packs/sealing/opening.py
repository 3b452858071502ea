"""Opening a sealed pack: every byte of it is what was sealed, or it is refused by name."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from garboard.documents import check_signature, read_document, schema_problems
from garboard.errors import DocumentRefused, PackRefused, Problem, ReadingError
from garboard.packs.pack import Pack
from garboard.packs.resolved import pack_from_data
from garboard.packs.seal import FORMAT, Seal
from garboard.packs.sealing.schema import sealed_pack_schema
from garboard.packs.spot import Spot
from garboard.trail import canonical_bytes, digest_of


def open_sealed(file: Path) -> Pack:
    """The pack in a sealed file, with its ``seal``.

    PackRefused: the file is of another format or holds a key more (``sealed-format`` and the
    problems of the schema), a digest that is not that of its content (``sealed-digest-wrong``), any
    other spelling of the same data (``sealed-not-canonical``), or content that is no resolved pack.
    SignatureRefused where it is signed and the signature does not hold, or cannot be checked.
    """
    try:
        document = read_document(file, expect="mapping")
    except DocumentRefused as refused:
        raise PackRefused(refused.problems) from refused
    data: Any = document.data
    whole = Spot(document, (), data)
    if data.get("format") != FORMAT:
        raise PackRefused([Problem("sealed-format", whole.at("format").place(),
                                   found=str(data.get("format")), expected=FORMAT)])
    wrong = schema_problems(document, sealed_pack_schema())
    if wrong:
        raise PackRefused(wrong)
    try:
        digest, canonical = digest_of(data["pack"]), canonical_bytes(data)
    except ReadingError as refused:
        raise PackRefused([refused.problem().at(whole.at("pack").place())]) from refused
    if digest != data["digest"]:
        raise PackRefused([Problem("sealed-digest-wrong", whole.at("digest").place(),
                                   found=f"{data['digest']} in the file",
                                   expected=f"{digest}, the digest of what it holds",
                                   hint="ask for the file again")])
    if document.text.encode() != canonical + b"\n":
        raise PackRefused([Problem("sealed-not-canonical", whole.place(),
                                   expected="canonical JSON and a line feed",
                                   hint="ask for the file again; editors change spaces and line "
                                        "ends")])
    block, signature = data.get("signature"), None
    if block is not None:
        signature = check_signature(FORMAT, canonical_bytes(data["pack"]), block,
                                    whole.at("signature").place(key=True))
    return replace(pack_from_data(data["pack"], whole.at("pack")), seal=Seal(signature))
