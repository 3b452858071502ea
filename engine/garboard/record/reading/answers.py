"""Answers: by the id of the question, one answer or a list of them."""

from __future__ import annotations

import re
from typing import Any, Final

from garboard.record.answer import Answer
from garboard.record.leaves.identity import ID_PATTERN
from garboard.record.models.answer import Answer as AnswerModel
from garboard.record.reading.draft import Draft
from garboard.record.reading.fill import fill
from garboard.record.reading.structure import is_mapping
from garboard.record.shape import Shape, shape_of
from garboard.record.thing import DataPath, Thing

#: A question's id, with the id of its pack before it where two packs ask under one id.
QUESTION_PATTERN: Final = f"{ID_PATTERN}(/{ID_PATTERN})?"


def read_answers(draft: Draft, written: object, root: DataPath) -> None:
    """Read the answers of a record, which stand at ``root``."""
    if not is_mapping(written, draft, root):
        return
    shape = shape_of(AnswerModel)
    for question, given in written.items():
        path: DataPath = (*root, question)
        if re.fullmatch(QUESTION_PATTERN, question) is None:
            draft.notes.refuse("id-malformed", path, repr(question),
                               "the id of a question: lower-case letters, digits and hyphens",
                               key=True)
        several = given if isinstance(given, list) else [given]
        at = [(*path, position) for position in range(len(several))]
        read = [_answer(draft, shape, question, each, place) for each, place in
                zip(several, at if isinstance(given, list) else [path], strict=True)]
        draft.answers[question] = tuple(each for each in read if each is not None)
        _refuse_twice(draft, draft.answers[question])


def _answer(draft: Draft, shape: Shape, question: str, data: object,
            path: DataPath) -> Answer | None:
    if not is_mapping(data, draft, path):
        return None
    answer = Thing(f"answers.{question}", "answer", path)
    fill(draft, shape, {key: each for key, each in data.items() if key != "value"}
         | ({"value": ""} if "value" in data else {}), path, answer)
    held: dict[str, Any] = {name: fact.value for name, fact in answer.facts.items()}
    on, until = held.get("on"), held.get("until")
    if on is not None and until is not None and until < on:
        draft.notes.refuse("answer-dates-reversed", (*path, "until"), str(until),
                           f"{on} or later")
    held.setdefault("evidence", ())
    return Answer(question=question, value=data.get("value"), path=path, **held)


def _refuse_twice(draft: Draft, answers: tuple[Answer, ...]) -> None:
    seen: set[tuple[str | None, object]] = set()
    for answer in answers:
        key = (answer.about, answer.on)
        if key in seen:
            draft.notes.refuse("answer-twice", answer.path, answer.question,
                               "one answer for each thing and day")
        seen.add(key)
