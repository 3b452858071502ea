"""The expressions of a pack, each held against the vocabulary, every complaint at its place."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from garboard.errors import Problem, did_you_mean
from garboard.expressions import (
    FUNCTIONS,
    Checked,
    ExpressionRefused,
    NameInfo,
    Vocabulary,
    parse,
    read_expression,
)
from garboard.expressions.tree import Path
from garboard.packs.limit import Limit
from garboard.packs.model import LIMIT_NAME_PATTERN
from garboard.packs.question import Question
from garboard.packs.spot import Spot, shown
from garboard.record import SUBJECTS


@dataclass(frozen=True, slots=True)
class Wording:
    """The expressions of a pack: its own condition, and condition and requirement of each rule.

    A rule something is wrong with stands as ``None``; what is wrong is among the problems.
    """

    gate: Checked | None
    rules: tuple[tuple[Checked | None, Checked] | None, ...]
    problems: tuple[Problem, ...]

    @property
    def read(self) -> tuple[tuple[Checked | None, Checked], ...]:
        """The rules nothing is wrong with."""
        return tuple(rule for rule in self.rules if rule is not None)


def wording_of(head: Spot, rules: Iterable[Spot], limits: Mapping[str, tuple[Spot, Limit | None]],
               questions: Iterable[Question], vocabulary: Vocabulary) -> Wording:
    """Every expression of a pack held against the vocabulary.

    A limit that could not be read stands as ``None``: an expression that uses it is left alone,
    since the complaint about the limit says it all.
    """
    infos = {name: None if limit is None else limit_info(limit)
             for name, (_, limit) in limits.items()}
    reader = _Reader(vocabulary, infos, {each.id: answer_info(each) for each in questions})
    for name, (spot, _) in limits.items():
        reader.name(name, spot)
    gate = reader.expression(head.at("applies_when"), "record")
    return Wording(gate, tuple(reader.rule(rule) for rule in rules), tuple(reader.problems))


@dataclass
class _Reader:
    vocabulary: Vocabulary
    limits: Mapping[str, NameInfo | None]
    answers: Mapping[str, NameInfo]
    problems: list[Problem] = field(default_factory=list)

    def rule(self, rule: Spot) -> tuple[Checked | None, Checked] | None:
        about = rule.at("about")
        if not isinstance(about.data, str):
            return None
        subject, subjects = about.data.strip(), self._subjects()
        if subject not in subjects:
            self.problems.append(Problem(
                "about-unknown", about.place(), found=shown(subject),
                expected=", ".join(subjects), hint=did_you_mean(subject, subjects)))
            return None
        before = len(self.problems)
        condition = self.expression(rule.at("applies_when"), subject)
        requirement = self.expression(rule.at("must_hold"), subject)
        if requirement is None or len(self.problems) > before:
            return None
        return condition, requirement

    def expression(self, text: Spot, about: str) -> Checked | None:
        """A single expression; ``None`` when it is not there, not a text, or wrong."""
        if not isinstance(text.data, str) or self._rests_on_a_broken_limit(text.data):
            return None
        known = {name: info for name, info in self.limits.items() if info is not None}
        try:
            return read_expression(text.data, self.vocabulary, about, known, self.answers)
        except ExpressionRefused as refused:
            for each in refused.problems:
                place = text.place(offset=each.offset)
                self.problems.append(each.problem(replace(place, length=each.length)))
            return None

    def name(self, name: str, spot: Spot) -> None:
        """A limit's name must not mean something else in an expression already."""
        if name in self.vocabulary.subjects or name in FUNCTIONS or not _is_plain_name(name):
            self.problems.append(Problem("limit-name-taken", spot.place(key=True), found=name,
                                         hint=f"call it {name}_limit"))

    def _subjects(self) -> tuple[str, ...]:
        """What a rule can be about: all subjects but those that are parts of others."""
        return tuple(sorted(name for name in self.vocabulary.subjects
                            if name not in SUBJECTS or SUBJECTS[name].part_of is None))

    def _rests_on_a_broken_limit(self, text: str) -> bool:
        return any(info is None and re.search(rf"\b{re.escape(name)}\b", text)
                   for name, info in self.limits.items())


def _is_plain_name(name: str) -> bool:
    """Whether an expression reads the name as a name (``answer`` leads to answers)."""
    if not re.fullmatch(LIMIT_NAME_PATTERN, name):
        return True  # complained about already
    try:
        root = parse(name).root
    except ExpressionRefused:
        return False
    return isinstance(root, Path) and name != "answer"


def limit_info(limit: Limit) -> NameInfo:
    """What an expression knows of a limit."""
    if limit.kind == "number":
        return NameInfo("number", limit.dimension)
    choices = limit.amount if isinstance(limit.amount, tuple) else None
    return NameInfo(limit.kind, choices=choices)


def answer_info(question: Question) -> NameInfo:
    """What an expression knows of an answer, going by its schema; null says it cannot be told."""
    choices, kind = question.answer.get("enum"), question.answer.get("type")
    if isinstance(choices, list):
        choices = [each for each in choices if each is not None]
    if choices and isinstance(choices, list) and all(isinstance(each, str) for each in choices):
        return NameInfo("text", choices=tuple(choices))
    if isinstance(kind, list):
        kinds = [each for each in kind if each != "null"]
        kind = kinds[0] if len(kinds) == 1 else None
    if kind == "string":
        return NameInfo("date" if question.answer.get("format") == "date" else "text")
    return NameInfo("truth" if kind == "boolean" else "count" if kind == "integer" else "opaque")
