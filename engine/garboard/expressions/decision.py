"""How bounds decide: the decision rule of a pack, and what rests on an assumption.

Under either rule bounds that lie wholly on one side of a limit decide. Where they straddle it,
guarded acceptance leaves the rule not assessed; under simple acceptance the nominal figure decides,
where there is one.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Final, Literal

from garboard.expressions.evaluate import Adapt, Evaluation, Surroundings
from garboard.expressions.outcome import (
    FAILED,
    INSIDE_UNCERTAINTY,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    ON_ASSUMPTION,
    PASSED,
    Row,
)
from garboard.expressions.rule import RuleSource
from garboard.expressions.tracing import operand_nodes
from garboard.values import CALCULATION_ERROR, Bounds, Unknown

GUARDED: Final = "guarded acceptance"
SIMPLE: Final = "simple acceptance"
Decision = Literal["guarded acceptance", "simple acceptance"]
DECISIONS: Final = (GUARDED, SIMPLE)


def collapsed(value: Any) -> Any:
    """Bounds as their nominal figure, where they have one."""
    return value.collapsed() if isinstance(value, Bounds) else value


def doubted(value: Any) -> Any:
    """Bounds that rest on an assumption as if the assumption were not made."""
    return Unknown(value.causes) if isinstance(value, Bounds) and value.assumed else value


def evaluated(index: int, rule: RuleSource, around: Surroundings, adapt: Adapt | None = None,
              notes: list[object] | None = None) -> Row:
    """The row of one rule for one item, without flags; a failure becomes a calculation error."""
    identity = around.item["id"]
    walk = Evaluation(around, adapt, notes=[] if notes is None else notes)
    operands: list[object] = []
    try:
        for part in rule.parts:
            truth = walk.value(part.root)
            operands += [walk.values[id(node)] for node in operand_nodes(part.root)]
            if isinstance(truth, Unknown):
                return (index, identity, NOT_ASSESSED, truth, tuple(operands), ())
            if not isinstance(truth, bool):
                raise TypeError(f"{truth!r} is neither true nor false")
            if part is rule.applies_when and not truth:
                return (index, identity, NOT_APPLICABLE, None, tuple(operands), ())
    except Exception as error:  # noqa: BLE001 - whatever a plugin raises becomes a finding
        raised = Unknown.because(CALCULATION_ERROR, detail=f"{type(error).__name__}: {error}")
        return (index, identity, NOT_ASSESSED, raised, (), ())
    return (index, identity, PASSED if truth else FAILED, None, tuple(operands), ())


def decided(row: Row, rule: RuleSource, around: Surroundings, decision: Decision, *,
            assumptions: bool) -> Row:
    """The row as the decision rule has it, with its flags.

    ``assumptions`` says whether bounds that rest on one were read at all; if not, the row is not
    looked at again for it.
    """
    flags: list[str] = []
    adapt: Adapt | None = None
    if decision == SIMPLE and row[2] == NOT_ASSESSED and not _is_error(row):
        again = evaluated(row[0], rule, around, collapsed)
        if again[2] != NOT_ASSESSED:
            row, adapt = (*again[:4], _as_read(again, rule, around), ()), collapsed
            flags.append(INSIDE_UNCERTAINTY)
    if assumptions and row[2] != NOT_ASSESSED and (
            rule.hides or any(isinstance(each, Bounds) and each.assumed for each in row[4])):
        without = evaluated(row[0], rule, around, doubted if adapt is None else
                            _in_turn(doubted, adapt))
        if without[2] != row[2]:
            flags.append(ON_ASSUMPTION)
    return (*row[:5], tuple(sorted(flags))) if flags else row


def _as_read(row: Row, rule: RuleSource, around: Surroundings) -> tuple[object, ...]:
    """The operands of a row with their bounds, not their nominal figures."""
    walk = Evaluation(around)
    operands: list[object] = []
    for part in rule.parts:
        if len(operands) < len(row[4]):
            walk.value(part.root)
            operands += [walk.values[id(node)] for node in operand_nodes(part.root)]
    return tuple(operands)


def _is_error(row: Row) -> bool:
    return isinstance(row[3], Unknown) and row[3].is_error


def _in_turn(first: Callable[[Any], Any], then: Callable[[Any], Any]) -> Adapt:
    return lambda value: then(first(value))
