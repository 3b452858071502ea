"""What came of making an assessment again: identical, equal within tolerance, or different, where.

Both sides are trails: the one that was kept, and the one this program makes of it.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from garboard.reports.counts import plural
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.many import and_more
from garboard.trail import NOTHING, Difference, Trail, differences
from garboard.trail.differences import TOLERANCE

IDENTICAL: Final = "identical"
EQUAL: Final = "equal within tolerance"
DIFFERENT: Final = "different"
FORMAT: Final = "replay/1"
_MOST: Final = 12
_OUTSIDE: Final = ("garboard", "python", "platform")
#: Parts whose differences are named otherwise or only follow from others.
_NOT_FIRST: Final = ("quantities", "outcome")


@dataclass(frozen=True, slots=True)
class Change:
    """Something whose version is another now; an empty text says that it is not there."""

    name: str
    before: str
    after: str

    def as_data(self) -> dict[str, str | None]:
        return {"name": self.name, "before": self.before or None, "after": self.after or None}

    def words(self) -> str:
        return (f"{harmless_name(self.name)}: {harmless_name(self.before or 'not there')} then, "
                f"{harmless_name(self.after or 'not there')} now")


@dataclass(frozen=True, slots=True)
class Replayed:
    """The kept trail and the one made again, with everything in which they differ.

    ``program`` is what differs outside the digest: program, Python, machine, plugins.
    """

    kept: Trail
    again: Trail
    word: str
    differences: tuple[Difference, ...]
    quantities: tuple[Change, ...]
    program: tuple[Change, ...]

    @property
    def exit_code(self) -> int:
        """0 unless it is different."""
        return int(self.word == DIFFERENT)


def replayed(kept: Trail, again: Trail) -> Replayed:
    """Hold a trail against the one made of it again."""
    found = tuple(differences(kept.assessment, again.assessment))
    if any(not each.near for each in found):
        word = DIFFERENT
    elif found:
        word = EQUAL
    else:
        word = IDENTICAL
    return Replayed(kept, again, word, found, tuple(_quantities(kept, again)),
                    tuple(_program(kept.about, again.about)))


def _quantities(kept: Trail, again: Trail) -> Iterator[Change]:
    """Quantities of another version or origin, described otherwise, or on one side only."""
    before, after = kept.assessment["quantities"], again.assessment["quantities"]
    for name in sorted({*before, *after}):
        if before.get(name) != after.get(name):
            one, other = _version(before.get(name)), _version(after.get(name))
            yield Change(name, one, f"{other}, described otherwise" if one == other else other)


def _version(quantity: Mapping[str, Any] | None) -> str:
    return "" if quantity is None else f"version {quantity['version']} ({quantity['origin']})"


def _program(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[Change]:
    for key in _OUTSIDE:
        one, other = str(before.get(key) or ""), str(after.get(key) or "")
        if one != other:
            yield Change(key, one, other)
    mine, theirs = (_plugins(each) for each in (before, after))
    for name in sorted({*mine, *theirs}):
        if mine.get(name) != theirs.get(name):
            yield Change(f"plugin {name}", mine.get(name, ""), theirs.get(name, ""))


def _plugins(about: Mapping[str, Any]) -> dict[str, str]:
    return {each["name"]: f"version {each['version']}, file {str(each.get('digest'))[:12]}"
            for each in about["plugins"]}


def replay_json(result: Replayed) -> str:
    """The result for other programs, with all differences."""
    return json.dumps({
        "format": FORMAT, "trail": result.kept.digest, "again": result.again.digest,
        "result": result.word, "tolerance": TOLERANCE,
        "brought_up_from": result.kept.brought_up_from,
        "quantities": [each.as_data() for each in result.quantities],
        "program": [each.as_data() for each in result.program],
        "differences": [
            {"path": each.path, "within_tolerance": each.near,
             **{side: value for side, value in (("before", each.before), ("after", each.after))
                if value is not NOTHING}} for each in result.differences],
    }, indent=1)


def replay_text(result: Replayed) -> str:
    """The result for people."""
    return "\n".join(_lines(result))


def _lines(result: Replayed) -> Iterator[str]:
    kept = result.kept
    packs = ", ".join(f"{harmless_name(each['pack'])} {harmless_name(each['version'])}"
                      for each in kept.packs)
    yield f"Replay of {kept.digest}"
    yield f"  assessment of {kept.date}, with {packs} as the trail holds them"
    if kept.brought_up_from:
        yield f"  brought up from the older format {kept.brought_up_from}"
    yield ""
    yield f"Result: {result.word}"
    yield f"  {_meaning(result)}"
    if result.program:
        yield "\nMade with other programs, which does not count as a difference:"
        yield from (f"  {each.words()}" for each in result.program)
    if result.quantities:
        yield "\nCalculations that are not those of the trail:"
        yield from (f"  {each.words()}" for each in result.quantities)
    moved = [each for each in result.differences
             if each.part == "findings" and each.path.endswith(("].outcome", '"]'))]
    if moved:
        yield "\nFindings that come out otherwise:"
        yield from (f"  {_finding(each)}" for each in moved[:_MOST])
        if len(moved) > _MOST:
            yield f"  {and_more(len(moved) - _MOST).replace(' (all stand in the trail)', '')}"
    if result.differences:
        counted = Counter(each.part for each in result.differences)
        yield "\nDifferences: " + ", ".join(f"{count} in {part}" for part, count in counted.items())
        first = [each for each in result.differences if each.part not in _NOT_FIRST]
        for each in (first or list(result.differences))[:_MOST]:
            near = "  (within tolerance)" if each.near else ""
            yield f"  {harmless(each.path)}{near}"
            yield f"      then {_shown(each.before)}"
            yield f"      now  {_shown(each.after)}"
        if len(result.differences) > _MOST:
            yield f"  {plural(len(result.differences), 'difference')} in all; --json gives each"


def _meaning(result: Replayed) -> str:
    if result.word == IDENTICAL:
        return ("This program makes the same assessment of it: every finding, every figure.\n"
                "  That says that the file follows from its record and packs, not that the record\n"
                "  is true of the boat.")
    if result.word == EQUAL:
        return (f"Every finding comes out the same; numbers differ by at most {TOLERANCE:g} of "
                "their size.")
    if all(each.part == "quantities" for each in result.differences):
        return ("Every finding and every figure comes out the same, but calculations are described "
                "otherwise.")
    return "This program makes another assessment of the same record and packs."


def _finding(each: Difference) -> str:
    name = each.path.removeprefix('findings["').partition('"]')[0]
    before, after = (value["outcome"] if isinstance(value, Mapping) else value
                     for value in (each.before, each.after))
    return f"{harmless_name(name)}: {_word(before)} then, {_word(after)} now"


def _word(value: object) -> str:
    return "not there" if value is NOTHING else harmless_name(value)


def _shown(value: object) -> str:
    return harmless(value if isinstance(value, str) or value is NOTHING
                    else json.dumps(value, ensure_ascii=False), 120)
