"""The function for a whole set of rules: a loop per subject, a row per rule and item."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final, NoReturn

from garboard.expressions import outcome, runtime
from garboard.expressions.check import Checked
from garboard.expressions.generate.body import Body, Constants
from garboard.expressions.generate.values import Values
from garboard.expressions.rule import RuleSource
from garboard.expressions.tracing import operand_nodes
from garboard.values import Bounds, Unknown, chosen, finite, member_of, quotient

#: groups of items, single things, answers, where rows go, notes of assumptions, what to do with an
#: item on which something failed
Rules = Callable[[Sequence[Sequence[Any]], Any, Any, Callable[[Any], None], list[object],
                  Callable[[int, Any], Any]], None]


@dataclass(frozen=True, slots=True)
class Group:
    """The rules about one subject, by their numbers."""

    about: str
    rules: tuple[int, ...]


#: What generated code calls, by the name it has there.
_USED: Final = {
    "Unknown": Unknown, "uncertain": (Unknown, Bounds), "chosen": chosen, "finite": finite,
    "member_of": member_of, "quotient": quotient, "date": date, "Failure": Exception,
    "passed": outcome.PASSED, "failed": outcome.FAILED, "open": outcome.NOT_ASSESSED,
    "excluded": outcome.NOT_APPLICABLE,
    **{each.__name__: each for each in (
        runtime.absent, runtime.compared, runtime.counted, runtime.exists, runtime.greatest,
        runtime.least, runtime.none_there, runtime.settled, runtime.several, runtime.square_root,
        runtime.summed, runtime.usable)},
}


def no_truth(value: object) -> NoReturn:
    """What is neither true nor false nor unknown is a failure."""
    raise TypeError(f"{value!r} is neither true nor false")


def rules_function(rules: Sequence[RuleSource], groups: Sequence[Group]) -> tuple[Rules, str]:
    """The function, and its source for whoever wants to read it."""
    constants = Constants()
    body = Body(constants, indent=1)
    for number, group in enumerate(groups):
        _loop(body, number, group, rules)
    names = {**_USED, "no_truth": no_truth, **constants.values}
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
            rows = _rows(body, {index: rules[index] for index in group.rules})
            body.line(f"out(({', '.join(rows[index] for index in group.rules)},))")
        with body.block("except Failure:"):
            body.line(f"out(failed_on({number}, item))")


def _rows(body: Body, rules: Mapping[int, RuleSource]) -> dict[int, str]:
    """Lines that leave the row of every rule under a name.

    Rules without a condition come first, so that what they read is known to the others; rules under
    one condition share it.
    """
    rows = {index: body.fresh() for index in rules}
    for index, rule in rules.items():
        if rule.applies_when is None:
            _decided(body, Values(body, rule.limits), rows[index], index, rule.must_hold, [])
    conditions: dict[str, list[tuple[int, list[str]]]] = {}
    for index, rule in rules.items():
        if rule.applies_when is not None:
            values = Values(body, rule.limits)
            condition = values.value(rule.applies_when.root)
            conditions.setdefault(condition, []).append((index, _names(values, rule.applies_when)))
    for condition, together in conditions.items():
        with body.block(f"if {condition} is True:"):
            for index, operands in together:
                _decided(body, Values(body, rules[index].limits), rows[index], index,
                         rules[index].must_hold, operands)
        with body.block(f"elif {condition} is False:"):
            for index, operands in together:
                body.line(f"{rows[index]} = ({index}, identity, excluded, None, "
                          f"{_tuple(operands)}, ())")
        with body.block("else:"):
            for index, operands in together:
                body.line(f"{rows[index]} = {_undecided(index, condition, _tuple(operands))}")
    return rows


def _decided(body: Body, values: Values, row: str, index: int, requirement: Checked,
             before: list[str]) -> None:
    truth = values.value(requirement.root)
    operands = _tuple([*before, *_names(values, requirement)])
    body.line(f"{row} = ({index}, identity, passed, None, {operands}, ()) if {truth} is True else "
              f"({index}, identity, failed, None, {operands}, ()) if {truth} is False else "
              f"{_undecided(index, truth, operands)}")


def _undecided(index: int, truth: str, operands: str) -> str:
    return (f"({index}, identity, open, {truth}, {operands}, ()) if {truth}.__class__ is Unknown "
            f"else no_truth({truth})")


def _names(values: Values, checked: Checked) -> list[str]:
    return [values.names[id(node)] for node in operand_nodes(checked.root)]


def _tuple(names: list[str]) -> str:
    return f"({', '.join(names)},)" if names else "()"
