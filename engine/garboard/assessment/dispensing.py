"""Dispensations on the findings of a record: which are in force, what they mark, what is odd."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any, Final, NamedTuple

from garboard.errors import DispensationsRefused, Place, Problem, did_you_mean
from garboard.packs import CheckedPack, Dispensation, Rule
from garboard.record import Record
from garboard.trail import counts_as_failed

Finding = dict[str, Any]
_ByItem = Mapping[tuple[str, str, str | None], Finding]
#: A dispensation for longer than this many days (three years) is worth a second look.
LONGEST_DAYS: Final = 1_096
_NOTHING: Final = "dispensation-matches-nothing"


class Dispensed(NamedTuple):
    """The dispensations in force that a finding is marked with, as data, and warnings."""

    in_trail: list[dict[str, Any]]
    warnings: list[Problem]


def mark_dispensed(findings: Sequence[Finding], dispensations: Sequence[Dispensation],
                   packs: Sequence[CheckedPack], record: Record, day: str) -> Dispensed:
    """Mark each finding that a dispensation is in force for; its outcome stays what it is.

    DispensationsRefused for a rule that is marked not dispensable, whatever the day, and where it
    is not clear which pack's rule is meant.
    """
    refused: list[Problem] = []
    done = Dispensed([], [])
    by_id = {(each["pack"], each["rule"], each["item"]): each for each in findings}
    for each in dispensations:
        pack = _pack_of(each, packs, refused, done.warnings)
        if pack is not None:
            _mark(each, pack, by_id, record, day, done)
    if refused:
        raise DispensationsRefused(refused)
    return done


def _pack_of(each: Dispensation, packs: Sequence[CheckedPack], refused: list[Problem],
             warnings: list[Problem]) -> CheckedPack | None:
    """The pack whose rule is meant, if there is one and it may be dispensed with."""
    having = [checked for checked in packs
              if each.pack in (None, checked.pack.name) and each.rule in _rules(checked)]
    if not having:
        known = {rule for checked in packs for rule in _rules(checked)}
        warnings.append(_warning(_NOTHING, each.rule_place, f"no rule {each.rule}",
                                 did_you_mean(each.rule, known)))
        return None
    if len(having) > 1:
        refused.append(Problem("dispensation-rule-unclear", each.rule_place, found=each.rule,
                               expected=", ".join(f"{one.pack.name}/{each.rule}"
                                                  for one in having)))
        return None
    if _rules(having[0])[each.rule].not_dispensable:
        refused.append(Problem("dispensation-refused", each.rule_place,
                               found=f"{having[0].pack.name}/{each.rule}"))
        return None
    return having[0]


def _rules(checked: CheckedPack) -> Mapping[str, Rule]:
    return {rule.id: rule for rule in checked.pack.rules}


def _mark(each: Dispensation, checked: CheckedPack, findings: _ByItem, record: Record, day: str,
          done: Dispensed) -> None:
    name = checked.pack.name
    odd = _oddity(each, name, findings, record, day)
    if odd is not None:
        done.warnings.append(odd)
        return
    days = (date.fromisoformat(each.last_day) - date.fromisoformat(each.first_day)).days
    if days > LONGEST_DAYS:
        done.warnings.append(_warning("dispensation-long", each.place,
                                      f"{each.rule} for {each.item}, {each.first_day} to "
                                      f"{each.last_day}: {days:,} days"))
    counts = counts_as_failed(_rules(checked)[each.rule].severity, checked.pack.as_data())
    findings[name, each.rule, each.item]["dispensation"] = each.identity(name)
    done.in_trail.append(each.as_data(name, counts=counts))


def _oddity(each: Dispensation, pack: str, findings: _ByItem, record: Record,
            day: str) -> Problem | None:
    """Why it has no effect, if it has none."""
    if each.vessel not in (None, record.things["vessel"].value("name")):
        return _warning(_NOTHING, each.place, f"a dispensation for the vessel {each.vessel}")
    if (pack, each.rule, each.item) not in findings:
        items = [item for of_pack, rule, item in findings
                 if (of_pack, rule) == (pack, each.rule) and item is not None]
        return _warning(_NOTHING, each.item_place, f"no finding of {each.rule} for {each.item}",
                        did_you_mean(each.item, items))
    if not each.in_force_on(day):
        return _warning("dispensation-not-in-force", each.place,
                        f"{each.rule} for {each.item}, {each.first_day} to {each.last_day}; the "
                        f"date is {day}")
    return None


def _warning(code: str, place: Place, found: str, hint: str = "") -> Problem:
    return Problem(code, place, found=found, hint=hint, level="warning")
