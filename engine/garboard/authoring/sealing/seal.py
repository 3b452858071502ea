"""Sealing a pack into one file."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from garboard.documents import SecretKey, read_secret_key, write_whole
from garboard.errors import CommandRefused, OutputRefused, PackRefused, Place, Problem
from garboard.packs import Pack, sealed_bytes
from garboard.packs.seal import ENDING
from garboard.packs.sealing import stray_problems


@dataclass(frozen=True, slots=True)
class Signing:
    """With which key a pack is signed, by whom and when, as the signer states it."""

    key: SecretKey
    signer: str
    signed_on: str


def signing_with(key: str | None, signer: str | None, signed_on: str | None) -> Signing | None:
    """How to sign, from what a command line gives; none where nothing is given.

    CommandRefused where only some of it is given or the day is none; SignatureRefused or
    DocumentRefused where the key cannot be used.
    """
    given = [each for each in (key, signer, signed_on) if each is not None]
    if not given:
        return None
    if key is None or signer is None or signed_on is None:
        raise CommandRefused([Problem("seal-unsigned", found=f"{len(given)} of the three",
                                      expected="--key, --signer and --signed-on")])
    try:
        date.fromisoformat(signed_on)
    except ValueError:
        raise CommandRefused([Problem("date-unreadable", found=signed_on,
                                      expected="YEAR-MONTH-DAY")]) from None
    return Signing(read_secret_key(Path(key)), signer, signed_on)


def seal_pack(pack: Pack, folder: Path, to: Path, signing: Signing | None = None,
              inputs: Iterable[Path] = ()) -> None:
    """Write the sealed file of a pack that was read from a folder or file.

    PackRefused where a file in the folder would be left out; OutputRefused where the name is not
    that of a sealed pack or of an input.
    """
    if not to.name.endswith(ENDING):
        raise OutputRefused([Problem("seal-ending", Place(str(to)), found=to.name,
                                     expected=f"a name that ends in {ENDING}",
                                     hint=f"{to.name.partition('.')[0]}{ENDING}")])
    if to.resolve() in [each.resolve() for each in (*inputs, *pack.files)]:
        raise OutputRefused([Problem("seal-over-input", Place(str(to)), found=str(to))])
    strays = list(stray_problems(folder))
    if strays:
        raise PackRefused(strays)
    raw = sealed_bytes(pack) if signing is None else sealed_bytes(
        pack, signing.key, signer=signing.signer, signed_on=signing.signed_on)
    write_whole(to, raw)
