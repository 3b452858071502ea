"""The findings of one pack on one record, as far as cases look at them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any

from garboard.assessment import answers_of, assess, assessment_day
from garboard.expressions import (
    FAILED,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    PASSED,
    Row,
    RuleTrace,
    deciding,
    reason_of,
)
from garboard.network import build_network
from garboard.packs import CheckedPack, Dispensation
from garboard.quantities import Figures, Registry
from garboard.record import read_record
from garboard.trail import PACK_DOES_NOT_APPLY
from garboard.values import Bounds, Unknown

#: Reasons for which a fact that could be written down is missing.
MISSING = ("not recorded", "not determinable", "awaits answer", "answer expired")


@dataclass(frozen=True, slots=True)
class Seen:
    """One finding: rule, item, outcome, reason, and the kinds of outcome it shows.

    ``dispensed``: whether a dispensation is in force for it, where that was looked at.
    """

    rule: str
    item: str | None
    outcome: str
    reason: str | None
    kinds: frozenset[str] = frozenset()
    dispensed: bool | None = None


@dataclass(frozen=True, slots=True)
class Sight:
    """Everything that came of a record: findings by rule and item, and the figures behind them.

    ``accepted`` is the word of the pack's acceptance, where that was looked at.
    """

    found: Mapping[tuple[str, str | None], Seen]
    figures: Figures
    failures: tuple[str, ...] = field(default=())
    accepted: str | None = None


def seen_in(record: Mapping[str, Any], checked: CheckedPack, registry: Registry,
            on: str | None = None) -> Sight:
    """The findings of a pack on the data of a record; RecordRefused when it is none.

    ``on`` is the day (year-month-day), that of the survey if none is given.
    """
    read = read_record(record)
    figures = Figures(read, build_network(read), registry)
    day = read.things["survey"].value("date") if on is None else date.fromisoformat(on)
    answers = answers_of(checked, read, day).values if isinstance(day, date) else {}
    applies = checked.applies(figures.subjects, answers)
    if applies is not True:
        seen = [Seen(rule.id, None, NOT_ASSESSED, applies.reason) if isinstance(applies, Unknown)
                else Seen(rule.id, None, NOT_APPLICABLE, PACK_DOES_NOT_APPLY,
                          frozenset({NOT_APPLICABLE}))
                for rule in checked.pack.rules]
    else:
        rows = checked.program.run(figures.subjects, checked.pack.header.decision_rule, answers)
        seen = [_seen(checked, row) for row in rows]
    return Sight({(each.rule, each.item): each for each in seen}, figures,
                 tuple(f"{each.key}: {each.raised}" for each in figures.failures))


def seen_with(sight: Sight, record: Mapping[str, Any], checked: CheckedPack, registry: Registry,
              on: str | None, dispensations: Sequence[Dispensation]) -> Sight:
    """The same, with what only a whole assessment tells: exceptions in force, and acceptance."""
    read = read_record(record)
    trail = assess(read, [checked], registry, assessment_day(read, on), {},
                   dispensations=dispensations).trail
    dispensed = {(each["rule"], each["item"]): each["dispensation"] is not None
                 for each in trail.findings}
    (outcome,) = trail.outcome["packs"]
    return replace(
        sight, accepted=outcome["acceptance"]["word"] if outcome.get("acceptance") else None,
        found={key: replace(each, dispensed=dispensed.get(key, False))
               for key, each in sight.found.items()})


def _seen(checked: CheckedPack, row: Row) -> Seen:
    trace = checked.program.traces[row[0]]
    reason = reason_of(row)
    kinds = set()
    if row[2] != NOT_ASSESSED:
        kinds.add(row[2])
    elif reason in MISSING:
        kinds.add("fact missing")
    if row[2] in (PASSED, FAILED) and _at_limit(trace, row):
        kinds.add("at the limit")
    return Seen(checked.pack.rules[row[0]].id, row[1], row[2], reason, frozenset(kinds))


def _at_limit(trace: RuleTrace, row: Row) -> bool:
    """Whether a comparison the outcome rests on has its two sides exactly alike."""
    for number in deciding(trace, row):
        atom = trace.atoms[number]
        if atom.operator not in ("<=", "<", ">=", ">") or atom.right is None:
            continue
        left, right = row[4][atom.left], row[4][atom.right]
        above = atom.operator in ("<=", "<")
        if _is_number(left) and _is_number(right) and _end(left, above) == _end(right, not above):
            return True
    return False


def _is_number(value: object) -> bool:
    return isinstance(value, (int, float, Bounds)) and not isinstance(value, bool)


def _end(value: Any, upper: bool) -> Any:
    if isinstance(value, Bounds):
        return value.hi if upper else value.lo
    return value
