"""What a change does to the rules: tightens, relaxes or only rewords them, found, not believed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final, Literal

from garboard.expressions import (
    ExpressionRefused,
    NameInfo,
    Vocabulary,
    parse,
    read_expression,
)
from garboard.expressions import tree as nodes
from garboard.packs.layers.direction import BOTH, DOWN, NEITHER, UP, Moves, against, strictness
from garboard.packs.layers.piece import RETIRE
from garboard.packs.layers.stack import Stack
from garboard.packs.limit import Limit
from garboard.packs.rule import SEVERITIES, Rule
from garboard.packs.wording import answer_info, limit_info

Effect = Literal["tightened", "relaxed", "retired", "reworded"]
#: Fields that only say something to people.
_WORDS: Final = ("title", "why", "recommendation", "left_to_a_person", "citation",
                 "translations")


class Weighing:
    """Weighs changes against the rules of a stack.

    With a vocabulary it is known which figures are never negative; without one, a limit that is
    multiplied with a figure works both ways as far as can be told.
    """

    def __init__(self, stack: Stack, vocabulary: Vocabulary | None) -> None:
        self._stack, self._vocabulary = stack, vocabulary
        self._limits = stack.limits
        self._infos = {name: limit_info(limit) for name, limit in self._limits.items()}
        self._answers: dict[str, NameInfo] = {each.id: answer_info(each)
                                              for each in stack.header.questions}

    @property
    def has_not_dispensable(self) -> bool:
        """Whether any rule in force cannot be dispensed with."""
        return any(rule.not_dispensable for rule in self._stack.rules())

    def effect(self, of: str, before: Any, after: Any) -> Effect:
        """What setting a field of a rule or of the head anew does; limits: see ``of_limit``."""
        if of == RETIRE:
            return "retired"
        if before == after or of in _WORDS:
            return "reworded"
        if of == "severity":
            worse = SEVERITIES.index(after) < SEVERITIES.index(before)
            return "tightened" if worse else "relaxed"
        if of == "covers":
            return "relaxed" if after == "whole" else "reworded"
        if of == "must_hold":
            return "tightened" if adds(before, after, "and") else "relaxed"
        if of == "applies_when":
            return "tightened" if adds(before, after, "or") else "relaxed"
        if of == "decision_rule":
            return "relaxed" if after == "simple acceptance" else "tightened"
        return "relaxed"

    def of_limit(self, before: Limit, after: Limit, *, not_dispensable: bool = False) -> Effect:
        """What another value of a limit does to the rules that use it.

        ``not_dispensable``: to those rules alone that cannot be dispensed with.
        """
        growth = _growth(before, after)
        strict = self._strict(before.name, not_dispensable=not_dispensable)
        if not growth or not strict:
            return "reworded"
        return "relaxed" if against(strict) & growth else "tightened"

    def can_tighten(self, before: Limit, after: Limit) -> bool:
        """Whether another value of a limit can turn a pass into a fail, as far as can be told."""
        return bool(self._strict(before.name) & _growth(before, after))

    def _strict(self, limit: str, *, not_dispensable: bool = False) -> Moves:
        strict: Moves = NEITHER.union(*(
            self._strictness(limit, rule) for rule in self._stack.rules()
            if rule.not_dispensable or not not_dispensable))
        return strict if not_dispensable else strict | self._gate(limit)

    def _strictness(self, limit: str, rule: Rule) -> Moves:
        if limit not in f"{rule.must_hold} {rule.applies_when}":
            return NEITHER
        requirement = self._tree(rule.must_hold, rule.about)
        condition = None if rule.applies_when is None else self._tree(rule.applies_when, rule.about)
        if requirement is None or (condition is None and rule.applies_when is not None):
            return BOTH
        return strictness(limit, requirement, condition, self._limits)

    def _gate(self, limit: str) -> Moves:
        text = self._stack.header.applies_when
        gate = None if text is None else self._tree(text, "record")
        if gate is None:
            return NEITHER
        return against(strictness(limit, gate, None, self._limits))

    def _tree(self, text: str, about: str) -> nodes.Expression | None:
        """The expression, with what each part measures where that can be told."""
        if self._vocabulary is not None:
            try:
                return read_expression(text, self._vocabulary, about, self._infos,
                                       self._answers).root
            except (ExpressionRefused, KeyError):
                pass
        try:
            return parse(text).root
        except ExpressionRefused:
            return None


def _growth(before: Limit, after: Limit) -> Moves:
    """Whether a limit goes up or down; texts go up where there are more of them."""
    old, new = before.amount, after.amount
    if isinstance(old, tuple) or isinstance(new, tuple):
        if not (isinstance(old, tuple) and isinstance(new, tuple)):
            return BOTH
        gone, come = set(old) - set(new), set(new) - set(old)
        return frozenset({*((DOWN,) if gone else ()), *((UP,) if come else ())})
    return frozenset({UP} if new > old else {DOWN} if new < old else ())


def adds(before: str | None, after: str | None, word: Literal["and", "or"]) -> bool:
    """Whether all that was said is said still, with more of it joined by ``and`` (or ``or``)."""
    if before is None or after is None:
        return False
    try:
        old, new = set(_parts(before, word)), set(_parts(after, word))
    except ExpressionRefused:
        return False
    return old <= new


def _parts(text: str, word: Literal["and", "or"]) -> Iterator[str]:
    root = parse(text).root
    parts = root.parts if isinstance(root, nodes.Logic) and root.word == word else (root,)
    for part in parts:
        yield " ".join(text[part.offset:part.offset + part.length].split())
