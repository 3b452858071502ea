"""Dispensations from a file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from pydantic import ValidationError

from garboard.documents import read_document
from garboard.errors import DispensationsRefused, Problem
from garboard.packs.dispensations.dispensation import Dispensation
from garboard.packs.dispensations.file import FORMAT, DispensationFile, WrittenDispensation
from garboard.packs.shape import empty_keys, shape_problems
from garboard.packs.spot import Spot, shown


def read_dispensations(file: str | Path) -> tuple[Dispensation, ...]:
    """The dispensations in a file, in their order.

    DispensationsRefused with every problem at its place: a wrong shape, a day that is none, a last
    day before the first, two for one rule and item whose days overlap, a name used twice.
    """
    document = read_document(file, expect="mapping")
    whole = Spot(document, (), document.data)
    problems = list(empty_keys(whole))
    try:
        read = DispensationFile.model_validate(document.data)
    except ValidationError as wrong:
        raise DispensationsRefused([
            *problems, *map(_named, shape_problems(wrong, whole, DispensationFile))]) from wrong
    found, odd = dispensations_at(whole.at("dispensations"), read.vessel)
    if problems or odd:
        raise DispensationsRefused([*problems, *odd])
    return found


def dispensations_at(spot: Spot, vessel: str | None = None,
                     ) -> tuple[tuple[Dispensation, ...], list[Problem]]:
    """The dispensations of a list whose shape is right, and what is wrong with their days."""
    spots = tuple(spot.items())
    found = tuple(_dispensation(WrittenDispensation.model_validate(each.data), vessel, each)
                  for each in spots)
    problems = [problem for each, here in zip(found, spots, strict=True)
                for problem in _day_problems(each, here)]
    return found, problems or [*_overlaps(found), *_names_twice(found)]


def _named(problem: Problem) -> Problem:
    """The format and the days in words of this format, not of a pack's."""
    path = problem.place.path or ""
    if path == "format" and problem.code == "pack-format":
        return Problem("dispensations-format", problem.place, problem.found, FORMAT)
    if problem.code == "id-malformed" and path.endswith((".from", ".until")):
        return Problem("date-unreadable", problem.place, problem.found, "year-month-day",
                       "write it like 2026-04-18")
    return problem


def _dispensation(each: WrittenDispensation, vessel: str | None, spot: Spot) -> Dispensation:
    pack, slash, rule = each.rule.partition("/")
    return Dispensation(
        rule=rule if slash else pack, pack=pack if slash else None, item=each.item,
        who=each.approved_by, why=each.reason, first_day=each.from_, last_day=each.until,
        name=each.id, vessel=vessel, place=spot.place(), rule_place=spot.at("rule").place(),
        item_place=spot.at("item").place())


def _day_problems(each: Dispensation, spot: Spot) -> Iterator[Problem]:
    readable = True
    for key, day in (("from", each.first_day), ("until", each.last_day)):
        try:
            date.fromisoformat(day)
        except ValueError:
            readable = False
            yield Problem("date-unreadable", spot.at(key).place(), found=shown(day),
                          expected="a day of the calendar")
    if readable and each.last_day < each.first_day:
        yield Problem("dispensation-days-reversed", spot.at("until").place(),
                      found=each.last_day, expected=f"{each.first_day} or later")


def _overlaps(found: Sequence[Dispensation]) -> Iterator[Problem]:
    for number, one in enumerate(found):
        for other in found[number + 1:]:
            same = one.rule == other.rule and one.item == other.item and (
                one.pack == other.pack or None in (one.pack, other.pack))
            if same and one.first_day <= other.last_day and other.first_day <= one.last_day:
                for here, there in ((one, other), (other, one)):
                    yield Problem("dispensation-overlaps", here.place,
                                  found=f"{here.rule} for {here.item}, {here.first_day} to "
                                        f"{here.last_day}", hint=f"also at {there.place}")


def _names_twice(found: Sequence[Dispensation]) -> Iterator[Problem]:
    for one in found:
        others = [each for each in found if each is not one and each.name == one.name]
        if one.name is not None and others:
            yield Problem("dispensation-twice", one.place, found=one.name,
                          hint=f"also at {', '.join(str(each.place) for each in others)}")
