"""What a finding shows for itself: the figures, what they had to be, and the distance."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from garboard.reports.harmless import harmless
from garboard.reports.margin import Margin, margin_of
from garboard.reports.names import operand_name
from garboard.reports.words import BASES, MIRRORED, ORIGINS, RELATIONS
from garboard.trail import FAILED, Finding, Operand, Statement, Trail
from garboard.values import Bounds, Unknown
from garboard.values.units import System, format_value

_DIGITS: Final = 4
_MOST_DIGITS: Final = 12


@dataclass(frozen=True, slots=True)
class Figure:
    """One line of figures: what was found, and what it is held against, both ready to be read.

    ``relation`` and ``limit`` are empty where the rule asks for more than a plain yes or no.
    ``basis`` says what uncertain figures rest on. ``sides`` are the values themselves, in canonical
    units, with the relation between them.
    """

    name: str
    value: str
    relation: str = ""
    limit: str = ""
    margin: Margin | None = None
    basis: str = ""
    sides: tuple[object, str, object] | None = field(default=None, compare=False)

    @property
    def words(self) -> str:
        """``rating: 250 A, must be at least 300 A``."""
        demand = f", {self.relation} {self.limit}" if self.relation else ""
        return f"{self.name}: {self.value}{demand}"


def figures_of(trail: Trail, finding: Finding, system: System) -> tuple[Figure, ...]:
    """The figures of the statements a finding rests on; where none is named, of all of them.

    Those of the requirement count; where it was not looked at, those of the condition.
    """
    statements = trail.statements(finding)
    required = [each for each in statements if each.left.part == "requirement"] or statements
    chosen = [each for each in required if each.decides] or required
    return tuple(_figure(trail, finding, each, system) for each in chosen)


def _figure(trail: Trail, finding: Finding, statement: Statement, system: System) -> Figure:
    left, relation, right = statement.left, statement.relation, statement.right
    if right is None or relation is None:
        return _truth(trail, finding, left, system)
    if left.constant and not right.constant and relation in MIRRORED:
        left, relation, right = right, MIRRORED[relation], left
    shown, limit = _apart(left, right, system)
    return Figure(operand_name(left, finding["subject"]), shown + _origin(trail, left),
                  RELATIONS[relation], limit + _limit_words(trail, finding, right, limit),
                  margin_of(left.value, relation, right.value, left.dimension),
                  _basis(left, right), (left.value, relation, right.value))


def spare_words(trail: Trail, finding: Finding, system: System) -> str:
    """What a finding has to spare, where it rests on one comparison of figures; else empty."""
    margins = [figure.margin for figure in figures_of(trail, finding, system)
               if figure.margin is not None]
    return margins[0].words(system) if len(margins) == 1 else ""


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
    """A plain truth; a failed finding that rests on it would have it the other way round."""
    asked = "" if finding["outcome"] != FAILED else "no" if operand.value is True else "yes"
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
