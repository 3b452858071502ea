"""The history of a vessel: trails that name the one before, and whether the chain is whole.

| what is said of a trail | when |
|---|---|
| first | it names none before it |
| follows | the one it names is among the files |
| gap | the one it names is not among them |
| fork | another names the same one |
| second first | it names none, but another one does not either |
| other vessel, earlier | the one it names is of another vessel, or of a later day |
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from garboard.reports.checked import signature_words
from garboard.reports.counts import plural
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.sheet import Sheet
from garboard.reports.summary import pack_name
from garboard.trail import Trail, signatures_on

FORMAT: Final = "history/1"
#: What is not proven, whatever the chain says.
LIMITS: Final = (
    "A chain says which assessment was made knowing which; it does not say that there were no "
    "others, or that none was left out at the end.",
    "Names and dates are those of the records. Nothing here says when a file was really written.",
    "A digest and a signature prove the file, not the boat: that it was not changed since, and who "
    "held the key. Whether the record is true aboard, they cannot know.",
)


@dataclass(frozen=True, slots=True)
class Link:
    """One trail in its place, with what is wrong with its place; nothing where it follows.

    ``copies`` are further files that hold the same trail.
    """

    file: str
    trail: Trail
    problems: tuple[str, ...]
    copies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class History:
    """The trails in order, each behind the one it names."""

    links: tuple[Link, ...]

    @property
    def whole(self) -> bool:
        """Whether they are one chain, from the first to the last, without a gap or fork."""
        return bool(self.links) and not any(each.problems for each in self.links)


def history_of(trails: Sequence[tuple[str, Trail]]) -> History:
    """The chain that trails form, each given with its file; the same trail twice counts once."""
    known: dict[str, tuple[str, Trail]] = {}
    copies: dict[str, list[str]] = {}
    for file, trail in trails:
        if trail.digest in known:
            copies.setdefault(trail.digest, []).append(file)
        known.setdefault(trail.digest, (file, trail))
    ordered = sorted(known.values(), key=lambda each: (_depth(each[1], known), each[1].date,
                                                       each[1].digest))
    followed: dict[str | None, list[str]] = {}
    for _, trail in ordered:
        followed.setdefault(trail.previous, []).append(trail.digest)
    return History(tuple(Link(file, trail, tuple(_problems(trail, known, followed)),
                              tuple(copies.get(trail.digest, ())))
                         for file, trail in ordered))


def _depth(trail: Trail, known: Mapping[str, tuple[str, Trail]]) -> int:
    """How many known trails lie before it. A digest covers the one it names: no circle can be."""
    depth = 0
    while trail.previous is not None and trail.previous in known:
        trail, depth = known[trail.previous][1], depth + 1
    return depth


def _problems(trail: Trail, known: Mapping[str, tuple[str, Trail]],
              followed: Mapping[str | None, list[str]]) -> Iterator[str]:
    if trail.previous is None:
        if len(followed[None]) > 1:
            yield "names no previous assessment, and neither does another: where it belongs is open"
        return
    if len(followed[trail.previous]) > 1:
        yield "another assessment names the same previous one: the history forks here"
    if trail.previous not in known:
        yield f"the assessment it names is not among these files: {trail.previous}"
        return
    before = known[trail.previous][1]
    if before.vessel is None or before.vessel != trail.vessel:
        yield (f"the one before is of another vessel: {harmless_name(before.vessel or 'not named')}"
               f", then {harmless_name(trail.vessel or 'not named')}")
    if before.date > trail.date:
        yield f"the one before is of a later day: {before.date}, then {trail.date}"


def history_json(history: History) -> str:
    """The chain for other programs."""
    return json.dumps({
        "format": FORMAT, "whole": history.whole,
        "assessments": [{**_entry(each), "problems": list(each.problems)}
                        for each in history.links],
        "does_not_prove": list(LIMITS)}, indent=1)


def _entry(link: Link) -> dict[str, Any]:
    trail = link.trail
    return {"file": link.file, "copies": list(link.copies), "trail": trail.digest,
            "previous": trail.previous,
            "signatures": [{"signer": one.signer, "signed_on": one.signed_on,
                            "fingerprint": one.fingerprint, "sound": one.problem is None}
                           for one in signatures_on(trail)],
            "vessel": trail.vessel, "date": trail.date, "word": trail.word,
            "packs": [f"{each['pack']} {each['version']}" for each in trail.packs]}


def history_text(history: History, width: int, colour: bool) -> str:
    """The chain for a terminal."""
    sheet = Sheet(width, colour)
    count = plural(len(history.links), "assessment")
    sheet.title("HISTORY OF A VESSEL", count)
    sheet.field("Chain", f"whole: {count}, each naming the one before it" if history.whole
                else "not whole; see below", style="passed" if history.whole else "failed")
    for number, each in enumerate(history.links, 1):
        trail = each.trail
        sheet.blank()
        sheet.bullet(f"{number}.", f"{trail.date}  {harmless_name(trail.vessel or 'not named')}: "
                                   f"{trail.word}", style="strong")
        sheet.field("rules", ", ".join(map(pack_name, trail.packs)), 3)
        sheet.field("file", harmless(each.file), 3)
        for copy in each.copies:
            sheet.field("the same in", harmless(copy), 3)
        sheet.field("digest", trail.digest, 3)
        sheet.field("previous", trail.previous or "none is named", 3)
        for signature in signatures_on(trail):
            sheet.field("signed", signature_words(signature), 3)
        for problem in each.problems:
            sheet.bullet("!", problem, 3, "failed")
    sheet.heading("WHAT THIS DOES NOT PROVE")
    for text in LIMITS:
        sheet.bullet("•", text)
    return str(sheet)
