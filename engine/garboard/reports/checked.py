"""What a check of a trail says: its digest, who signed it as stated, and what that proves."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any, Final

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.sheet import Sheet
from garboard.reports.summary import date_words, pack_name, result_words
from garboard.trail import CheckedSignature, Trail, signatures_on

FORMAT: Final = "trail-check/1"
#: What is proven and what is not, whatever comes out.
PROVES: Final = (
    "The digest is right: the assessment says what it said when the digest was made. What stands "
    "beside it (the program, the machine, lines in files) is not covered.",
    "A sound signature proves that whoever held the key signed this file with that name and day. "
    "It does not prove whose key it is: compare the fingerprint with the one the signer gave you.",
    "Name and day are as the signer states them.",
    "None of this proves anything about the boat: the file was signed, not the installation.",
)


@dataclass(frozen=True, slots=True)
class Checked:
    """The signatures on a trail, and the fingerprints of keys that were asked for and are missing.
    """

    trail: Trail
    signatures: tuple[CheckedSignature, ...]
    missing: tuple[str, ...]

    @property
    def sound(self) -> bool:
        """Whether every signature is sound and none that was asked for is missing."""
        return not self.missing and all(each.problem is None for each in self.signatures)


def checked(trail: Trail, wanted: Sequence[str] = ()) -> Checked:
    """The check of a trail that was read, digest and all; ``wanted`` are fingerprints of keys."""
    signatures = signatures_on(trail)
    sound = {each.fingerprint for each in signatures if each.problem is None}
    return Checked(trail, signatures, tuple(each for each in wanted if each not in sound))


def signature_words(each: CheckedSignature) -> str:
    """A signature on one line."""
    if each.problem is not None:
        return f"not sound: {each.problem.title.lower()}; it names {harmless_name(each.signer)}"
    return (f"{harmless_name(each.signer)}, {harmless_name(each.signed_on)}, as stated; key "
            f"{each.fingerprint}")


def check_text(result: Checked, file: str, width: int, colour: bool) -> str:
    """The check for a terminal."""
    sheet, trail = Sheet(width, colour), result.trail
    sheet.title("CHECK OF A TRAIL", f"garboard {trail.about['garboard']}")
    sheet.field("File", harmless(file))
    sheet.field("Says", f"{harmless_name(trail.vessel or 'vessel not named')}, "
                        f"{date_words(trail)}, {', '.join(map(pack_name, trail.packs))}: "
                        f"{result_words(trail)}")
    sheet.field("Digest", f"right: {trail.digest}", style="passed")
    for each in result.signatures:
        sheet.field("Signed", signature_words(each),
                    style="passed" if each.problem is None else "failed")
    if not result.signatures:
        sheet.field("Signed", "by nobody")
    for fingerprint in result.missing:
        sheet.field("Missing", f"a sound signature by the key {harmless_name(fingerprint)}",
                    style="failed")
    sheet.heading("WHAT THIS PROVES AND WHAT NOT")
    for text in PROVES:
        sheet.bullet("•", text)
    return str(sheet)


def check_json(result: Checked, file: str) -> str:
    """The check for other programs."""
    return json.dumps({
        "format": FORMAT, "file": file, "trail": result.trail.digest, "sound": result.sound,
        "signatures": [_signature(each) for each in result.signatures],
        "missing": list(result.missing), "proves": list(PROVES)}, indent=1)


def _signature(each: CheckedSignature) -> dict[str, Any]:
    problem = each.problem
    return {**asdict(each), "problem": None if problem is None else problem.as_data()}
