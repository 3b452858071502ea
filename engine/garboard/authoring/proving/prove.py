"""Cases run one after the other: what each expects held against what comes out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from garboard.authoring.proving.changes import changed
from garboard.authoring.proving.figure import read_wanted, said
from garboard.authoring.proving.seen import Seen, Sight, seen_in, seen_with
from garboard.errors import PackRefused, Problem, ReadingError, Refused, did_you_mean, in_order
from garboard.expressions import Vocabulary
from garboard.packs import CheckedPack
from garboard.packs.cases import Case, CaseBook, Expected
from garboard.packs.spot import Spot
from garboard.quantities import Registry


@dataclass(frozen=True, slots=True)
class Proof:
    """What came of a case.

    ``shown`` are the expected findings that came out; ``refused`` says that the case itself could
    not be run, ``failures`` are calculations that failed in it.
    """

    case: Case
    differences: tuple[Problem, ...]
    shown: tuple[Seen, ...] = ()
    refused: bool = False
    failures: tuple[str, ...] = ()

    @property
    def holds(self) -> bool:
        return not self.differences


@dataclass(frozen=True, slots=True)
class Proving:
    """What cases are run with."""

    checked: CheckedPack
    registry: Registry
    vocabulary: Vocabulary

    def proof(self, case: Case) -> Proof:
        """Run one case."""
        try:
            sight = self._seen(case)
        except Refused as refused:
            return Proof(case, refused.problems, refused=True)
        differences = [*_findings(case, sight), *self._quantities(case, sight)]
        refused_too = any(each.code.startswith("case-figure-un") for each in differences)
        shown = tuple(seen for each in case.expected if (seen := _met(each, sight)) is not None)
        return Proof(case, in_order(differences), shown, refused_too, sight.failures)

    def _seen(self, case: Case) -> Sight:
        record: Mapping[str, Any] = changed(case)
        try:
            sight = seen_in(record, self.checked, self.registry, case.on)
            return sight if not case.whole else seen_with(
                sight, record, self.checked, self.registry, case.on, case.dispensations)
        except Refused as refused:
            place = case.spot.at("case").place()
            raise PackRefused([
                Problem("case-record-refused", replace(place, path=each.place.path),
                        found=f"{each.code}: {each.found}", expected=each.expected,
                        hint=each.hint)
                for each in refused.problems if each.level == "error"]) from None

    def _quantities(self, case: Case, sight: Sight) -> Iterator[Problem]:
        for path, text in case.quantities.items():
            spot = case.spot.at("quantities", path)
            item, _, name = path.partition(".")
            thing = sight.figures.items.get(item)
            names = {} if thing is None else self.vocabulary.subjects[thing.subject]
            if thing is None or name not in names:
                yield Problem("case-figure-unknown", spot.place(key=True), found=path,
                              hint=did_you_mean(name, names) if thing is not None
                              else did_you_mean(item, sight.figures.items))
                continue
            try:
                wanted = read_wanted(text, names[name])
            except ReadingError as wrong:
                yield Problem("case-figure-unreadable", spot.place(), found=text,
                              expected=wrong.expected, hint=wrong.hint)
                continue
            value = thing[name]
            if not wanted.met_by(value):
                yield Problem("case-figure-differs", spot.place(),
                              found=said(value, names[name].dimension), expected=text)


def prove(book: CaseBook, proving: Proving) -> Iterator[Proof]:
    """Run cases in their order."""
    return map(proving.proof, book.cases)


def _met(expected: Expected, sight: Sight) -> Seen | None:
    seen = sight.found.get((expected.rule, expected.item))
    return seen if seen is not None and seen.outcome == expected.outcome and (
        expected.reason in (None, seen.reason)) and (
        expected.dispensed in (None, seen.dispensed)) else None


def _findings(case: Case, sight: Sight) -> Iterator[Problem]:
    wanted = {(each.rule, each.item) for each in case.expected}
    for each in case.expected:
        if _met(each, sight) is None:
            yield _differs(each, sight)
    if case.accepted not in (None, sight.accepted):
        yield Problem("case-acceptance-differs", case.spot.at("accepted").place(),
                      found=str(sight.accepted), expected=str(case.accepted))
    if case.nothing_else:
        for key, seen in sorted(sight.found.items(), key=lambda pair: (pair[0][0],
                                                                       pair[0][1] or "")):
            if seen.rule in case.rules and key not in wanted:
                yield Problem("case-finding-more", case.spot.at("nothing_else").place(),
                              found=f"{seen.rule} of {seen.item or 'all'}: {_words(seen)}")


def _differs(each: Expected, sight: Sight) -> Problem:
    seen = sight.found.get((each.rule, each.item))
    if seen is None:
        items = [item or "*" for rule, item in sight.found if rule == each.rule]
        return Problem("case-finding-missing", _at(each, "item").place(),
                       found=f"findings of {each.rule} for {', '.join(items)}",
                       expected=f"one for {each.item or '*'}",
                       hint=did_you_mean(each.item or "*", items))
    reason = "" if each.reason is None else f", {each.reason}"
    part = ("outcome" if seen.outcome != each.outcome else
            "reason" if each.reason not in (None, seen.reason) else "dispensed")
    if part == "dispensed":
        said = "a dispensation is in force" if seen.dispensed else "no dispensation is in force"
        return Problem("case-finding-differs", _at(each, part).place(), found=said,
                       expected=f"{each.rule} of {each.item or 'all'}: dispensed "
                                f"{'yes' if each.dispensed else 'no'}")
    return Problem("case-finding-differs", _at(each, part).place(), found=_words(seen),
                   expected=f"{each.rule} of {each.item or 'all'}: {each.outcome}{reason}")


def _at(each: Expected, part: str) -> Spot:
    return each.spot.at(part)


def _words(seen: Seen) -> str:
    return seen.outcome if seen.reason is None else f"{seen.outcome}, {seen.reason}"
