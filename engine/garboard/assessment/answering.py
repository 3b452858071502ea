"""The answers of a record to the questions of a pack: checked, and in force on the day or not."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any, Final

from garboard.documents import Document, read_text, schema_problems
from garboard.errors import Place, Problem, RecordRefused, nearest
from garboard.packs import CheckedPack, Question
from garboard.packs.wording import answer_info
from garboard.record import Answer, Record
from garboard.values import ANSWER_EXPIRED, AWAITS_ANSWER, NOT_DETERMINABLE, Unknown

_SAID: Final = {"yes": True, "no": False}


@dataclass(frozen=True, slots=True)
class Answers:
    """By question: the value of the answer in force, or why there is none; and warnings."""

    values: Mapping[str, Any]
    warnings: tuple[Problem, ...]


@dataclass
class _Answering:
    record: Record
    day: date
    errors: list[Problem] = field(default_factory=list)
    warnings: list[Problem] = field(default_factory=list)

    def value(self, question: Question, given: Sequence[Answer]) -> Any:
        """The value of the answer that is in force, an unknown where there is none."""
        for each in given:
            self.errors += self._problems(question, each)
        in_force = [each for each in given if self._holds(question, each)]
        path = f"answer.{question.id}"
        if not in_force:
            past = [each for each in given if each.on is None or each.on <= self.day]
            if not past:
                return Unknown.because(AWAITS_ANSWER, path, question.ask)
            return Unknown.because(ANSWER_EXPIRED, path, question.ask)
        answer = max(in_force, key=lambda each: each.on or date.min)
        if question.evidence == "required" and not answer.evidence:
            self.warnings.append(Problem(
                "answer-without-evidence", self._place(answer), found=question.id,
                expected="evidence, with the id of a piece of it", level="warning"))
            return Unknown.because(AWAITS_ANSWER, path, f"{question.ask} Evidence is required.")
        if answer.value is None:
            return Unknown.because(NOT_DETERMINABLE, path, question.ask)
        return self._read(question, answer)

    def _holds(self, question: Question, answer: Answer) -> bool:
        last = None if answer.on is None else question.last_day(answer.on)
        return answer.holds_on(self.day) and (last is None or self.day <= last)

    def _problems(self, question: Question, answer: Answer) -> Iterator[Problem]:
        if answer.about is not None:
            yield Problem("answer-about-one", self._place(answer, "about"), found=answer.about,
                          expected="no 'about': the question is asked once")
        if question.holds_for is not None and answer.on is None:
            yield Problem("answer-day-missing", self._place(answer), found="no 'on'",
                          expected=f"its day, for it holds for {question.holds_for}")
        value = _said(question, answer.value)
        path = (*answer.path, "value")
        document = replace(self._document(), data=_nested(path, value))
        for problem in schema_problems(document, _reaching(path, question.answer)):
            place = problem.place
            if self.record.document is None:
                place = Place(path=place.path)
            yield problem.at(place)
        if answer_info(question).kind == "date" and isinstance(value, str) and _day(value) is None:
            yield Problem("date-unreadable", self._place(answer, "value"), found=value,
                          expected="year-month-day", hint="write it like 2026-04-18")

    def _read(self, question: Question, answer: Answer) -> Any:
        value = _said(question, answer.value)
        if answer_info(question).kind == "date" and isinstance(value, str):
            return _day(value)
        return value

    def _document(self) -> Document:
        return self.record.document or read_text(json.dumps(self.record.written), "<record>")

    def _place(self, answer: Answer, key: str | None = None) -> Place:
        path = answer.path if key is None else (*answer.path, key)
        if self.record.document is None:
            return Place(path=".".join(map(str, path)))
        return self.record.document.place(path)


def answers_of(checked: CheckedPack, record: Record, day: date) -> Answers:
    """The answers a pack's rules see on a day.

    A question may be answered under its id, or under that of the pack (or of one it builds on), a
    slash and its id; the second counts where there are both. RecordRefused when an answer is not
    what the question asks for, each problem at its place.
    """
    answering = _Answering(record, day)
    values = {question.id: answering.value(question, _given(checked, question.id, record))
              for question in checked.pack.header.questions}
    if answering.errors:
        raise RecordRefused(answering.errors)
    return Answers(values, tuple(answering.warnings))


def unasked(record: Record, packs: Iterable[CheckedPack]) -> Iterator[Problem]:
    """A warning for each answer that no pack asks for, where a question is nearly called so."""
    asked = {name for checked in packs for question in checked.pack.header.questions
             for name in _names(checked, question.id)}
    for name, answers in record.answers.items():
        guess = nearest(name, asked - set(record.answers))
        if name not in asked and guess is not None and answers:
            place = Place(path=f"answers.{name}")
            if record.document is not None:
                place = record.document.place(answers[0].path[:2], key=True)
            yield Problem("answer-not-asked", place, found=name,
                          hint=f"did you mean {guess!r}?", level="warning")


def _given(checked: CheckedPack, question: str, record: Record) -> Sequence[Answer]:
    found = [record.answers[name] for name in _names(checked, question) if name in record.answers]
    return found[0] if found else ()


def _names(checked: CheckedPack, question: str) -> Iterator[str]:
    """The names under which a question may be answered, the one that counts first."""
    pack = checked.pack
    layers = () if pack.layering is None else pack.layering.layers
    for name in (pack.name, *(each.pack for each in reversed(layers))):
        yield f"{name}/{question}"
    yield question


def _said(question: Question, value: Any) -> Any:
    """The value, where yes and no are asked for as true and false."""
    if answer_info(question).kind == "truth" and isinstance(value, str):
        return _SAID.get(value, value)
    return value


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text) if len(text) == len("2026-04-18") else None
    except ValueError:
        return None


def _nested(path: Sequence[str | int], value: Any) -> Any:
    for step in reversed(path):
        value = {step: value} if isinstance(step, str) else [*([None] * step), value]
    return value


def _reaching(path: Sequence[str | int], schema: Mapping[str, Any]) -> dict[str, Any]:
    """A schema for the whole that asks for something at one place only."""
    reaching: dict[str, Any] = {"$id": "urn:garboard:answer", **schema}
    for step in reversed(path):
        if isinstance(step, str):
            reaching = {"properties": {step: reaching}}
        else:
            reaching = {"prefixItems": [*([True] * step), reaching]}
    return reaching
