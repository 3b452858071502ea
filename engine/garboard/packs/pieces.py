"""The head, one rule or one limit from what is written: the piece, or what is wrong with it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, TypeVar

from pydantic import BaseModel, ValidationError

from garboard.documents import read_text, schema_problems
from garboard.errors import Problem, ReadingError
from garboard.packs.change import Change, change_problems
from garboard.packs.citation import citation_gaps, lacks_status
from garboard.packs.header import Header
from garboard.packs.limit import Limit, WrittenLimit, read_limit
from garboard.packs.model import LIMIT_NAME_PATTERN
from garboard.packs.permissible import permissible_problems
from garboard.packs.rule import Rule, cover_gap
from garboard.packs.shape import empty_keys, missing_key, shape_problems
from garboard.packs.spot import Spot
from garboard.packs.translation import translation_problems

#: The keys of a file that hold the pack's content, beside those of the head.
PARTS: Final = ("changes", "limits", "rules")
_M = TypeVar("_M", bound=BaseModel)


def header_piece(head: Spot) -> tuple[Header | None, list[Problem]]:
    """The head of a pack, without its content."""
    entries = dict(head.entries())
    own = {name: each.data for name, each in entries.items() if name not in PARTS}
    header, problems = _piece(Header, Spot(head.document, head.path, own), PARTS)
    if header is not None and header.builds_on == ():
        problems.append(Problem("value-empty", entries["builds_on"].place(key=True),
                                found="an empty builds_on"))
    if header is not None and "questions" in entries:
        for question, each in zip(header.questions, entries["questions"].items(), strict=True):
            problems += translation_problems(question, each)
    return header, [*problems, *_question_problems(entries)]


def rule_piece(spot: Spot) -> tuple[Rule | None, list[Problem]]:
    """A rule; what it says about its cover and its citation is held together too."""
    rule, problems = _piece(Rule, spot)
    problems += _citation_problems(spot.at("citation"))
    if rule is not None and rule.not_dispensable and rule.citation.basis != "regulation":
        problems.append(Problem(
            "not-dispensable-basis", spot.at("not_dispensable").place(key=True),
            found=f"a citation whose basis is {rule.citation.basis}", expected="regulation"))
    if rule is not None:
        problems += permissible_problems(rule.about, rule.permissible_changes or (), spot)
        problems += translation_problems(rule, spot)
    problems += cover_problems(spot.data, spot)
    return rule, problems


def cover_problems(rule: object, spot: Spot) -> Iterator[Problem]:
    """A rule says what is left to a person exactly when it covers a part (as data or as read)."""
    gap = cover_gap(rule.as_data() if isinstance(rule, Rule) else rule)
    if gap == "missing":
        yield missing_key(spot, "left_to_a_person")
    elif gap == "contradicts":
        yield Problem(
            "covers-contradicts", spot.at("left_to_a_person").place(key=True),
            found="left_to_a_person", expected="covers: part beside it")


def limit_piece(name: str, spot: Spot) -> tuple[Limit | None, list[Problem]]:
    """A limit with its amount in the canonical unit."""
    written, problems = _piece(WrittenLimit, spot)
    problems += _citation_problems(spot.at("citation"))
    if not re.fullmatch(LIMIT_NAME_PATTERN, name):
        problems.append(Problem("limit-name", spot.place(key=True), found=name,
                                expected="lower-case words joined by underscores"))
    if written is None:
        return None, problems
    try:
        return read_limit(name, written), problems
    except ReadingError as wrong:
        value = spot.at("value")
        indent = len(str(value.data)) - len(str(value.data).lstrip())
        return None, [*problems, wrong.problem().at(value.place(offset=wrong.offset + indent))]


def change_piece(spot: Spot) -> tuple[Change | None, list[Problem]]:
    """A change to a pack below."""
    change, problems = _piece(Change, spot)
    problems += _citation_problems(spot.at("citation"))
    if change is not None:
        problems += change_problems(change, spot)
    return change, problems


def used_twice(code: str, names: list[Spot]) -> Iterator[Problem]:
    """Every spot that holds a name another spot holds too, each naming the others."""
    places: dict[str, list[Spot]] = {}
    for spot in names:
        if isinstance(spot.data, str):
            places.setdefault(spot.data.strip(), []).append(spot)
    for name, spots in places.items():
        for spot in spots if len(spots) > 1 else ():
            others = ", ".join(str(other.place()) for other in spots if other is not spot)
            yield Problem(code, spot.place(), found=name, hint=f"also at {others}")


def _piece(model: type[_M], spot: Spot, also_known: tuple[str, ...] = (),
           ) -> tuple[_M | None, list[Problem]]:
    problems = list(empty_keys(spot))
    try:
        return model.model_validate(spot.data), problems
    except ValidationError as wrong:
        return None, [*problems, *shape_problems(wrong, spot, model, also_known)]


def _citation_problems(citation: Spot) -> list[Problem]:
    problems = [missing_key(citation, name) for name in citation_gaps(citation.data)]
    if lacks_status(citation.data):
        problems.append(Problem("citation-status", citation.place(), level="warning",
                                expected="status: read, reprinted or from memory"))
    return problems


def _question_problems(entries: dict[str, Spot]) -> Iterator[Problem]:
    questions = list(entries["questions"].items()) if "questions" in entries else []
    yield from used_twice("question-twice", [question.at("id") for question in questions])
    anything = read_text("{}")
    for answer in (question.at("answer") for question in questions):
        if isinstance(answer.data, dict):
            yield from (problem.at(answer.place())
                        for problem in schema_problems(anything, answer.data)
                        if problem.code == "schema-broken")
