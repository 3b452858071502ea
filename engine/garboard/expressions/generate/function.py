"""The function for a whole set of rules: a loop per subject, a row per rule and item."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from garboard.expressions import outcome, runtime
from garboard.expressions.check import Checked
from garboard.expressions.generate.body import Body, Constants
from garboard.expressions.generate.values import Values
from garboard.expressions.rule import RuleSource
from garboard.expressions.trace import operand_nodes
from garboard.values import Unknown, chosen, finite, member_of, quotient

#: groups of items, single things, answers, where rows go, notes of assumptions, what to do with an
#: item on which something failed
Rules = Callable[[Sequence[Sequence[Any]], Any, Any, Callable[[Any], None], list[object],
                  Callable[[int, Any], Any]], None]


@dataclass(frozen=True, slots=True)
class Group:
    """The rules about one subject, by their numbers."""

    about: str
    rules: tuple[int, ...]


_USED: Final = {
    "Unknown": Unknown, "chosen": chosen, "finite": finite, "member_of": member_of,
    "quotient": quotient, "date": date, "none_there": runtime.none_there,
    "several": runtime.several, "exists": runtime.exists, "usable": runtime.usable,
    "counted": runtime.counted, "summed": runtime.summed, "least": runtime.least,
    "greatest": runtime.greatest, "square_root": runtime.square_root, "settled": runtime.settled,
    "absent": runtime.absent,
}


def undecided(index: int, identity: str, truth: object, operands: tuple[object, ...]) -> object:
    """The row of a rule whose truth is not known; TypeError when it is no truth at all."""
    if isinstance(truth, Unknown):
        return (index, identity, outcome.NOT_ASSESSED, truth, operands, ())
    raise TypeError(f"{truth!r} is neither true nor false")


def rules_function(rules: Sequence[RuleSource], groups: Sequence[Group]) -> tuple[Rules, str]:
    """The function, and its source for whoever wants to read it."""
    constants = Constants()
    body = Body(constants, indent=1)
    for number, group in enumerate(groups):
        _loop(body, number, group, rules)
    names = {**_USED, "undecided": undecided, "passed": outcome.PASSED, "failed": outcome.FAILED,
             "excluded": outcome.NOT_APPLICABLE, "Failure": Exception, **constants.values}
    # handed in as defaults, constants are as quick to reach as local names
    handed = ", ".join(f"{name}={name}" for name in names)
    header = f"def rules(groups, roots, answers, out, notes, failed_on, {handed}):"
    source = "\n".join((header, *body.lines, " pass", ""))
    namespace: dict[str, Any] = {"__builtins__": {"float": float, "int": int, "str": str,
                                                  "bool": bool, "tuple": tuple, "len": len,
                                                  "abs": abs}, **names}
    exec(compile(source, "<rules>", "exec"), namespace)
    function: Rules = namespace["rules"]
    return function, source


def _loop(body: Body, number: int, group: Group, rules: Sequence[RuleSource]) -> None:
    identity = body.constants.name("id")
    with body.block(f"for item in groups[{number}]:"):
        body.line(f"identity = item[{identity}]")
        with body.block("try:"):
            rows = [_row(body, index, rules[index]) for index in group.rules]
            body.line(f"out(({', '.join(rows)},))")
        with body.block("except Failure:"):
            body.line(f"out(failed_on({number}, item))")


def _row(body: Body, index: int, rule: RuleSource) -> str:
    """Lines that leave the row of a rule under a name."""
    row = body.fresh()
    values = Values(body, rule.limits)
    if rule.applies_when is None:
        _decided(body, values, row, index, rule.must_hold, [])
        return row
    condition = values.value(rule.applies_when.root)
    operands = _names(values, rule.applies_when)
    with body.block(f"if {condition} is True:"):
        _decided(body, values, row, index, rule.must_hold, operands)
    with body.block(f"elif {condition} is False:"):
        body.line(f"{row} = ({index}, identity, excluded, None, {_tuple(operands)}, ())")
    with body.block("else:"):
        body.line(f"{row} = undecided({index}, identity, {condition}, {_tuple(operands)})")
    return row


def _decided(body: Body, values: Values, row: str, index: int, requirement: Checked,
             before: list[str]) -> None:
    truth = values.value(requirement.root)
    operands = _tuple([*before, *_names(values, requirement)])
    body.line(f"{row} = ({index}, identity, passed, None, {operands}, ()) if {truth} is True else "
              f"({index}, identity, failed, None, {operands}, ()) if {truth} is False else "
              f"undecided({index}, identity, {truth}, {operands})")


def _names(values: Values, checked: Checked) -> list[str]:
    return [values.names[id(node)] for node in operand_nodes(checked.root)]


def _tuple(names: list[str]) -> str:
    return f"({', '.join(names)},)" if names else "()"
