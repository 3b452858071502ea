"""What a finding shows for itself: the figures, what they had to be, and the distance."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from garboard.reports.harmless import harmless
from garboard.reports.margin import Margin, margin_of
from garboard.reports.names import operand_name
from garboard.reports.words import BASES, MIRRORED, ORIGINS, RELATIONS
from garboard.trail import Comparison, Finding, Operand, Trail
from garboard.values import Bounds, Unknown
from garboard.values.units import System, format_value

_DIGITS: Final = 4
_MOST_DIGITS: Final = 12


@dataclass(frozen=True, slots=True)
class Figure:
    """One line of figures: what was found, and what it is held against, both ready to be read.

    ``relation`` and ``limit`` are empty where the rule asks for more than a plain yes or no.
    ``basis`` says what uncertain figures rest on.
    """

    name: str
    value: str
    relation: str = ""
    limit: str = ""
    margin: Margin | None = None
    basis: str = ""


def figures_of(trail: Trail, finding: Finding, system: System) -> tuple[Figure, ...]:
    """The figures a finding rests on: the comparisons that decide, else all; then plain truths.

    Truths of the requirement count; where it was not looked at, those of the condition.
    """
    comparisons = trail.comparisons(finding)
    chosen = [each for each in comparisons if each.decides] or comparisons
    operands = trail.operands(finding)
    required = [each for each in operands if each.part == "requirement"] or operands
    return (*(_compared(trail, finding, each, system) for each in chosen),
            *(_truth(trail, finding, each, system) for each in required if each.kind == "truth"))


def _compared(trail: Trail, finding: Finding, comparison: Comparison, system: System) -> Figure:
    left, relation, right = comparison.left, comparison.relation, comparison.right
    if left.constant and not right.constant and relation in MIRRORED:
        left, relation, right = right, MIRRORED[relation], left
    shown, limit = _apart(left, right, system)
    return Figure(operand_name(left, finding["subject"]), shown + _origin(trail, left),
                  RELATIONS[relation], limit + _limit_words(trail, finding, right, limit),
                  margin_of(left.value, relation, right.value, left.dimension),
                  _basis(left, right))


def _limit_words(trail: Trail, finding: Finding, right: Operand, shown: str) -> str:
    """What a limit is, after its value: ``: prospective current``, `` (7 in): limit ...``."""
    name = operand_name(right, finding["subject"])
    limit = trail.pack_of(finding)["resolved"]["limits"].get(right.limit)
    if limit is not None:
        written = limit.get("written")
        beside = f" ({harmless(written)})" if isinstance(written, str) and written != shown else ""
        return f"{beside}: limit {name}"
    return f": {name}{_origin(trail, right)}" if name != shown else ""


def _truth(trail: Trail, finding: Finding, operand: Operand, system: System) -> Figure:
    """A plain truth, and what it must be where the rule asks for nothing else."""
    asked = {operand.text: "yes", f"not {operand.text}": "no"}.get(
        str(trail.rule_of(finding)["must_hold"]), "")
    return Figure(operand_name(operand, finding["subject"]),
                  shown_value(operand, system) + _origin(trail, operand),
                  "must be" if asked else "", asked)


def _origin(trail: Trail, operand: Operand) -> str:
    """Where a recorded figure is from: ``, from the nameplate``."""
    fact = trail.fact(operand.of[0]) if len(operand.of) == 1 else None
    origin = fact.get("from") if fact is not None else None
    return f", {ORIGINS.get(origin, harmless(origin))}" if origin else ""


def shown_value(operand: Operand, system: System, digits: int = _DIGITS) -> str:
    """The value of an operand for people; a nominal figure is named beside its bounds."""
    value = operand.value
    if isinstance(value, Unknown):
        return "not known"
    shown = harmless(format_value(value, operand.dimension, system, digits))
    if isinstance(value, Bounds) and value.nominal is not None:
        nominal = format_value(value.nominal, operand.dimension, system, digits)
        return f"{shown} (nominal {nominal})"
    return shown


def _apart(left: Operand, right: Operand, system: System) -> tuple[str, str]:
    """Both values with as many digits as it takes to tell them apart, if they differ."""
    for digits in range(_DIGITS, _MOST_DIGITS + 1):
        shown, limit = shown_value(left, system, digits), shown_value(right, system, digits)
        if shown != limit or not _numbers_differ(left.value, right.value):
            break
    return shown, limit


def _numbers_differ(one: object, other: object) -> bool:
    return isinstance(one, float) and isinstance(other, float) and one != other


def _basis(*operands: Operand) -> str:
    named = dict.fromkeys(basis for operand in operands for basis in _bases(operand.value))
    return " and ".join(BASES[basis] for basis in named)


def _bases(value: object) -> Iterator[str]:
    if isinstance(value, Bounds):
        yield from value.basis
