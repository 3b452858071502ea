"""The working of a rule for an item, found by evaluating it once more, part by part."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from garboard.expressions.check import Checked
from garboard.expressions.decision import GUARDED, Decision
from garboard.expressions.evaluate import Evaluation, Surroundings
from garboard.expressions.program import Program, Subjects
from garboard.expressions.trace import key_of
from garboard.expressions.tree import (
    Day,
    Expression,
    Gathering,
    Listing,
    Number,
    Read,
    Text,
    Truth,
    children,
)
from garboard.expressions.working.deciding import Found, compared
from garboard.expressions.working.filled import filled
from garboard.expressions.working.model import Compared, Part, Step, Working
from garboard.values import System

_LITERALS = (Number, Text, Truth, Day, Listing)


def working(program: Program, rule: int, item: Mapping[str, Any], subjects: Subjects, *,
            decision: Decision = GUARDED, answers: Mapping[str, Any] | None = None,
            system: System = "metric") -> Working:
    """How the outcome of the rule number ``rule`` came about for ``item``.

    Takes what ``Program.run`` takes; numbers in the texts are shown in ``system``.
    """
    row = program.row(rule, item, subjects, decision, answers)
    around = program.surroundings(rule, item, subjects, answers)
    source = program.sources[rule]
    parts: list[tuple[Part, Checked]] = [("requirement", source.must_hold)]
    if source.applies_when is not None:
        parts.insert(0, ("condition", source.applies_when))
    steps: list[Step] = []
    comparisons: list[Compared] = []
    texts: dict[Part, str] = {}
    for place, (part, checked) in enumerate(parts):
        found, truth = _found(part, checked, around)
        last = truth is not True or place + 1 == len(parts)
        steps += found.steps(found, checked.root)
        comparisons += compared(found, checked.root, decides=last)
        texts[part] = filled(checked, found.values, system)
        if last:
            break
    return Working(row, texts.get("condition"), texts.get("requirement"), tuple(steps),
                   tuple(comparisons))


def _found(part: Part, checked: Checked, around: Surroundings) -> tuple[Found, Any]:
    walk = Evaluation(around)
    try:
        truth = walk.value(checked.root)
    except Exception:  # noqa: BLE001 - the row tells of it; what was found before is still shown
        truth = None
    return Found(part, checked, walk.values, walk.rounds, _Keyed(around)), truth


class _Keyed:
    """Steps of an expression, with the data key of whatever was read from the item itself."""

    def __init__(self, around: Surroundings) -> None:
        self.around = around

    def __call__(self, found: Found, node: Expression) -> tuple[Step, ...]:
        return tuple(self._steps(found, node))

    def _steps(self, found: Found, node: Expression) -> Iterator[Step]:
        if isinstance(node, _LITERALS):
            return
        if not isinstance(node, Gathering):
            for part in children(node):
                yield from self._steps(found, part)
        if id(node) not in found.values or node.type is None or node.type.kind in ("one", "many"):
            return
        yield Step(found.part, found.checked.written(node), node.offset, node.length,
                   node.type.kind, node.type.dimension, found.of(node), self._key(node))

    def _key(self, node: Expression) -> str | None:
        if not isinstance(node, Read) or node.root.startswith("loop "):
            return None
        return key_of(self.around.item if node.root == "item" else
                      self.around.roots[node.root], node.steps)
