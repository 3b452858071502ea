"""A record to be filled in, with the questions of packs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from garboard.documents import write_whole
from garboard.errors import OutputRefused, Place, Problem
from garboard.packs import CheckedPack
from garboard.packs.question import Question
from garboard.record.sheet import SheetQuestion, survey_sheet


def write_blank_record(file: Path, packs: Iterable[CheckedPack]) -> None:
    """Write the survey sheet, with what the packs ask; OutputRefused when the file is there."""
    if file.exists() or file.is_symlink():
        raise OutputRefused([Problem("record-exists", Place(str(file)), found=str(file))])
    questions = {question.id: question for pack in packs for question in pack.pack.header.questions}
    write_whole(file, survey_sheet([_asked(each) for each in questions.values()]).encode())


def _asked(question: Question) -> SheetQuestion:
    return SheetQuestion(question.id, question.ask, question.how_to_look or "",
                         _answer_words(question.answer), question.evidence == "required")


def _answer_words(schema: Mapping[str, Any]) -> str:
    """What an answer is, by its JSON Schema: the choices, or the kind of value."""
    if isinstance(choices := schema.get("enum"), list | tuple):
        quoted = [f'"{each}"' for each in choices]
        return f"one of {', '.join(quoted)}"
    kind = {"boolean": "yes or no", "integer": "a whole number", "number": "a number",
            "string": "in words"}.get(str(schema.get("type")), "as the pack describes it")
    said = schema.get("description")
    return f"{kind}; {said}" if isinstance(said, str) else kind
