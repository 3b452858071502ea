"""The comparison of two assessments: whether they can be compared, and everything that moved."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from garboard.reports.comparison.aboard import Aboard
from garboard.reports.comparison.circuits import CircuitView, circuits
from garboard.reports.comparison.figures import Step, steps
from garboard.reports.comparison.outcomes import NEWLY_FAILING, WORDS, Moved, moved
from garboard.reports.harmless import harmless_name
from garboard.reports.summary import pack_name
from garboard.trail import Trail


@dataclass(frozen=True, slots=True)
class Comparison:
    """What is different between two assessments.

    ``incomparable`` says why they cannot be compared: then nothing else was looked at, unless it
    was asked for. ``remarks`` are to be borne in mind.
    """

    before: Trail
    after: Trail
    incomparable: tuple[str, ...]
    remarks: tuple[str, ...]
    findings: tuple[Moved, ...] = ()
    figures: tuple[Step, ...] = ()
    circuits: tuple[CircuitView, ...] = ()
    shown: bool = True

    def of(self, word: str) -> tuple[Moved, ...]:
        """The findings that became so."""
        return tuple(each for each in self.findings if each.word == word)

    def counts(self) -> dict[str, int]:
        """How many findings became what."""
        return {word: len(self.of(word)) for word in WORDS}

    @property
    def exit_code(self) -> int:
        """1: something newly fails; 2: they cannot be compared; 0: otherwise."""
        if self.incomparable:
            return 2
        return int(bool(self.of(NEWLY_FAILING)))


def comparison(before: Trail, after: Trail, one: Aboard, other: Aboard, *, anyway: bool = False,
               ) -> Comparison:
    """Two assessments held side by side, with the figures of their records.

    Those that are incomparable are not compared, unless ``anyway``.
    """
    reasons, remarks = tuple(_incomparable(before, after)), tuple(_remarks(before, after))
    if reasons and not anyway:
        return Comparison(before, after, reasons, remarks, shown=False)
    return Comparison(before, after, reasons, remarks, moved(before, after),
                      steps(one, other),
                      circuits(before, after, one, other))


def _incomparable(before: Trail, after: Trail) -> Iterator[str]:
    names = [_vessel(each) for each in (before, after)]
    if None in names:
        yield "the vessel is not named in both records, so it may be another"
    elif names[0] != names[1]:
        yield f"another vessel: {harmless_name(names[0])}, then {harmless_name(names[1])}"
    packs = [{each["pack"]: each for each in trail.packs} for trail in (before, after)]
    if set(packs[0]) != set(packs[1]):
        yield (f"other packs: {', '.join(map(pack_name, before.packs))}, then "
               f"{', '.join(map(pack_name, after.packs))}")
        return
    for name, pack in packs[0].items():
        other = packs[1][name]
        if pack["digest"] != other["digest"]:
            same = pack["version"] == other["version"]
            yield (f"another {harmless_name(name)}: {pack_name(pack)}, then {pack_name(other)}"
                   + (", of other content" if same else ""))
        if pack["decision_rule"] != other["decision_rule"]:
            yield (f"another decision rule in {harmless_name(name)}: {pack['decision_rule']}, then "
                   f"{other['decision_rule']}")


def _remarks(before: Trail, after: Trail) -> Iterator[str]:
    if before.date > after.date:
        yield (f"the first assessment is for {before.date}, the second for {after.date}: they may "
               "stand in the wrong order")
    for pack, other in zip(before.packs, after.packs, strict=False):
        if pack["applies"] is not True or other["applies"] is not True:
            for words, each in (("before", pack), ("after", other)):
                if each["applies"] is not True:
                    said = ("does not apply" if each["applies"] is False
                            else "may or may not apply")
                    yield (f"{words}, {pack_name(each)} {said} to the record: whether what it "
                           "looks at was better or worse then, it does not say; figures and "
                           "circuits are of both records")
    versions = [{name: each["version"] for name, each in trail.assessment["quantities"].items()}
                for trail in (before, after)]
    other_versions = [name for name in sorted(versions[0])
                      if versions[1].get(name, versions[0][name]) != versions[0][name]]
    if other_versions:
        yield ("findings rest on other versions of calculations: "
               f"{', '.join(map(harmless_name, other_versions))}")
    agreed: list[Any] = [each.assessment["dispensations"] for each in (before, after)]
    if agreed[0] != agreed[1]:
        yield f"dispensations differ: {len(agreed[0])} before, {len(agreed[1])} after"


def _vessel(trail: Trail) -> str | None:
    fact = trail.fact("vessel.name")
    return fact["value"] if fact is not None and isinstance(fact["value"], str) else None

