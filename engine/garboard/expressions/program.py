"""Rules compiled together: evaluated on the items of a record, a row per rule and item."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from garboard.expressions.decision import GUARDED, SIMPLE, Decision, decided, evaluated
from garboard.expressions.evaluate import Surroundings
from garboard.expressions.generate import Group, rules_function
from garboard.expressions.outcome import NOT_APPLICABLE, NOT_ASSESSED, Row
from garboard.expressions.rule import RuleSource
from garboard.expressions.trace import RuleTrace
from garboard.expressions.tracing import trace_of
from garboard.values import AWAITS_ANSWER, NOT_RECORDED, Unknown

#: Items of every subject: a list, ``None`` where the record has none, or why it is not known.
Subjects = Mapping[str, Sequence[Mapping[str, Any]] | Unknown | None]
_NO_ANSWERS: Final[Mapping[str, Any]] = {}


class Program:
    """Checked rules, ready to run. It holds nothing of any record.

    ``sources`` are the rules in the order given; a row names its rule by its place there.
    ``traces`` say what the operands of each rule's rows are; ``absent`` names the list that holds
    the things of each subject; ``python`` is the generated source.
    """

    def __init__(self, sources: Sequence[RuleSource]) -> None:
        self.sources: tuple[RuleSource, ...] = tuple(sources)
        self.traces: tuple[RuleTrace, ...] = tuple(
            trace_of(rule.applies_when, rule.must_hold) for rule in self.sources)
        by_subject: dict[str, list[int]] = {}
        for index, rule in enumerate(self.sources):
            by_subject.setdefault(rule.about, []).append(index)
        self.absent = {rule.about: rule.must_hold.absent for rule in self.sources}
        self._groups = tuple(Group(about, tuple(rules)) for about, rules in by_subject.items())
        self._rules, self.python = rules_function(self.sources, self._groups)

    def __reduce__(self) -> tuple[Any, ...]:
        return (Program, (self.sources,))

    def run(self, subjects: Subjects, decision: Decision = GUARDED,
            answers: Mapping[str, Any] = _NO_ANSWERS) -> list[Row]:
        """One row per rule and item, by subject in the order of the rules, then item, then rule.

        A subject without items gives one row per rule (see ``Row``). An answer that is missing
        from ``answers`` is awaited.
        """
        rows: list[Row] = []
        notes: list[object] = []
        around = _Around(self, subjects, answers)
        groups = []
        for group in self._groups:
            things = around.items_of(group.about)
            if isinstance(things, Unknown) or not things:
                rows += [_without_items(index, things) for index in group.rules]
                things = ()
            groups.append(things)
        start = len(rows)
        self._rules(groups, around.roots, around.answers, rows.extend, notes,
                    lambda number, item: self._one_by_one(number, item, around, notes))
        if notes or decision == SIMPLE:
            self._decide(rows, start, around, decision, assumptions=bool(notes))
        return rows

    def row(self, rule: int, item: Mapping[str, Any], subjects: Subjects,
            decision: Decision = GUARDED, answers: Mapping[str, Any] | None = None) -> Row:
        """The row of one rule for one item, found without the others."""
        around = self.surroundings(rule, item, subjects, answers)
        notes: list[object] = []
        row = evaluated(rule, self.sources[rule], around, notes=notes)
        return decided(row, self.sources[rule], around, decision, assumptions=bool(notes))

    def surroundings(self, rule: int, item: Mapping[str, Any], subjects: Subjects,
                     answers: Mapping[str, Any] | None = None) -> Surroundings:
        """What a rule sees when it looks at an item."""
        return _Around(self, subjects, answers or {}).of(item, rule)

    def _one_by_one(self, number: int, item: Mapping[str, Any], around: _Around,
                    notes: list[object]) -> list[Row]:
        """The rows of an item on which something failed: one failure leaves the others alone."""
        return [evaluated(index, self.sources[index], around.of(item, index), notes=notes)
                for index in self._groups[number].rules]

    def _decide(self, rows: list[Row], start: int, around: _Around, decision: Decision, *,
                assumptions: bool) -> None:
        items: dict[tuple[str, str | None], Mapping[str, Any]] = {}
        for group in self._groups:
            things = around.items_of(group.about)
            if not isinstance(things, Unknown):
                items.update(((group.about, item["id"]), item) for item in things or ())
        for place in range(start, len(rows)):
            row = rows[place]
            rule = self.sources[row[0]]
            rows[place] = decided(row, rule, around.of(items[rule.about, row[1]], row[0]), decision,
                                  assumptions=assumptions)


def compile_rules(sources: Sequence[RuleSource]) -> Program:
    """The program of some checked rules."""
    return Program(sources)


class _Answers(dict[str, Any]):
    """Answers by question; one that is missing is awaited."""

    def __missing__(self, question: str) -> Unknown:
        return Unknown.because(AWAITS_ANSWER, f"answer.{question}")


class _Around:
    """The record's side of a run: items, single things and answers."""

    def __init__(self, program: Program, subjects: Subjects, answers: Mapping[str, Any]) -> None:
        self._program, self._subjects = program, subjects
        self.answers = _Answers(answers)
        self.roots = _Roots(subjects)

    def items_of(self, about: str) -> Sequence[Mapping[str, Any]] | Unknown:
        """The items of a subject, or why there are none to look at."""
        things = self._subjects.get(about)
        if things is None:
            return Unknown.because(NOT_RECORDED, self._program.absent[about])
        return things

    def of(self, item: Mapping[str, Any], index: int) -> Surroundings:
        """What one rule sees of one item."""
        return Surroundings(item, self.roots, self.answers, self._program.sources[index].limits)


class _Roots(dict[str, Any]):
    """The things there is one of, by subject; unknown where the record has none."""

    def __init__(self, subjects: Subjects) -> None:
        super().__init__()
        self._subjects = subjects

    def __missing__(self, name: str) -> Any:
        things = self._subjects.get(name)
        if isinstance(things, Unknown):
            thing: Any = things
        else:
            thing = things[0] if things else Unknown.because(NOT_RECORDED, name)
        self[name] = thing
        return thing


def _without_items(index: int, things: Sequence[Mapping[str, Any]] | Unknown) -> Row:
    if isinstance(things, Unknown):
        return (index, None, NOT_ASSESSED, things, (), ())
    return (index, None, NOT_APPLICABLE, None, (), ())
