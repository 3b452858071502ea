"""A pack list: which packs an office works with, each pinned by name, version and digest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath, PureWindowsPath
from typing import Any, Final

from garboard.documents import read_document, schema_problems
from garboard.errors import DocumentRefused, PackRefused, Problem, did_you_mean
from garboard.packs.model import ID_PATTERN, VERSION_PATTERN
from garboard.packs.pack import Pack
from garboard.packs.schema import DIALECT
from garboard.packs.spot import Spot

FORMAT: Final = "pack-list/1"
_DIGEST: Final = "^sha256:[0-9a-f]{64}$"


@dataclass(frozen=True, slots=True)
class Pin:
    """One pack of the list; ``place`` is where it lies, when the list says so."""

    pack: str
    version: str
    digest: str
    place: Path | None
    signed_by: str | None
    spot: Spot

    @property
    def name(self) -> str | Path:
        """What to look the pack up by."""
        return self.pack if self.place is None else self.place


@dataclass(frozen=True, slots=True)
class PackList:
    """The pins of a list, in their order."""

    file: str
    pins: tuple[Pin, ...]

    def check(self, packs: Sequence[Pack]) -> None:
        """PackRefused, with every difference, where one of the packs is not as it is pinned."""
        problems = [problem for pack in packs for problem in self._problems(pack)]
        if problems:
            raise PackRefused(problems)

    def _problems(self, pack: Pack) -> Iterator[Problem]:
        pin = next((each for each in self.pins if each.pack == pack.name), None)
        if pin is None:
            known = [each.pack for each in self.pins]
            yield Problem("pack-not-pinned", pack.spot().at("pack").place(), found=pack.name,
                          expected=f"one of {', '.join(known)}, as in {self.file}",
                          hint=did_you_mean(pack.name, known))
            return
        at, what = pin.spot, f"{pack.name} {pack.version}"
        if pack.version != pin.version:
            yield Problem("pinned-version-differs", at.at("version").place(), found=what,
                          expected=pin.version)
        elif pack.digest != pin.digest:
            yield Problem("pinned-digest-differs", at.at("digest").place(),
                          found=f"{what}, {pack.digest}", expected=pin.digest,
                          hint="the pack is not the one that was pinned, though it says the same "
                               "version")
        if pin.signed_by is not None:
            yield from _signature_problems(pack, pin.signed_by, at.at("signed_by"))


def read_pack_list(file: str | Path) -> PackList:
    """The pack list in a file; PackRefused with every problem at its place."""
    try:
        document = read_document(file, expect="mapping")
    except DocumentRefused as refused:
        raise PackRefused(refused.problems) from refused
    whole = Spot(document, (), document.data)
    said = whole.at("format")
    if said.data != FORMAT:
        raise PackRefused([Problem("pack-list-format", said.place(), found=str(said.data),
                                   expected=FORMAT)])
    problems = schema_problems(document, pack_list_schema())
    if problems:
        raise PackRefused(problems)
    folder = Path(file).parent
    spots = list(whole.at("packs").items())
    for number, spot in enumerate(spots):
        problems += _place_problems(spot.at("file"), folder)
        name = spot.at("pack")
        problems += [Problem("pack-pinned-twice", name.place(), found=str(name.data),
                             hint=f"also at {other.at('pack').place()}")
                     for place, other in enumerate(spots)
                     if place != number and other.at("pack").data == name.data]
    if problems:
        raise PackRefused(problems)
    return PackList(str(file), tuple(_pin(spot, folder) for spot in spots))


def pack_list_schema() -> dict[str, Any]:
    """Schema of format ``pack-list/1``."""
    digest = {"type": "string", "pattern": _DIGEST}
    return {
        "$schema": DIALECT, "$id": "urn:garboard:pack-list:1", "title": f"Pack list ({FORMAT})",
        "description": "The packs that are assessed against, each pinned to what it holds.",
        "type": "object", "additionalProperties": False, "required": ["format", "packs"],
        "properties": {
            "format": {"const": FORMAT, "description": "The format and its major version."},
            "title": {"type": "string", "minLength": 1, "description": "What the list is for."},
            "packs": {
                "type": "array", "minItems": 1, "description": "The packs.",
                "items": {
                    "type": "object", "additionalProperties": False,
                    "required": ["pack", "version", "digest"],
                    "description": "A pack, pinned.",
                    "properties": {
                        "pack": {"type": "string", "pattern": ID_PATTERN,
                                 "description": "Name of the pack."},
                        "version": {"type": "string", "pattern": VERSION_PATTERN,
                                    "description": "Its version."},
                        "digest": {**digest, "description": (
                            "Its digest, as garboard pack seal and pack show print it.")},
                        "file": {"type": "string", "minLength": 1, "description": (
                            "Where it lies, as seen from the folder of the list and inside it; "
                            "left out, it is one of the shipped packs.")},
                        "signed_by": {**digest, "description": (
                            "Fingerprint of the key that must have signed it; left out, it need "
                            "not be signed.")}}}}},
    }


def _pin(spot: Spot, folder: Path) -> Pin:
    text: dict[str, str] = spot.data  # type: ignore[assignment]  # the schema was held
    return Pin(text["pack"], text["version"], text["digest"],
               folder / text["file"] if "file" in text else None, text.get("signed_by"), spot)


def _place_problems(spot: Spot, folder: Path) -> Iterator[Problem]:
    """A place that leads out of the folder of the list, by its name or by a link."""
    if not isinstance(spot.data, str):
        return
    written = PurePosixPath(spot.data.replace("\\", "/"))
    if (written.is_absolute() or PureWindowsPath(spot.data).drive or ".." in written.parts
            or not (folder / written).resolve().is_relative_to(folder.resolve())):
        yield Problem("pack-path-climbs", spot.place(), found=spot.data,
                      expected="a file or folder inside the folder of the list")


def _signature_problems(pack: Pack, fingerprint: str, spot: Spot) -> Iterator[Problem]:
    signature = None if pack.seal is None else pack.seal.signature
    if signature is None:
        yield Problem("signature-missing", spot.place(), found=f"{pack.name} is not signed",
                      expected=f"a sealed pack signed by {fingerprint}")
    elif signature.public_key.fingerprint != fingerprint:
        yield Problem("signature-by-another-key", spot.place(),
                      found=f"{signature.public_key.fingerprint}, {signature.signer}",
                      expected=fingerprint)
