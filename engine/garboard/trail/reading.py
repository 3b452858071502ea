"""Reading a trail back: its format, its shape, its digest, and whether its parts agree."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, Final

from garboard.documents import Document, Limits, read_document
from garboard.errors import Problem, ReadingError, TrailRefused
from garboard.trail.canonical import canonical_bytes
from garboard.trail.consistency import disagreements
from garboard.trail.digest import digest_of_bytes
from garboard.trail.trail import Trail
from garboard.trail.upgrades import STEPS, Step, brought_up

#: A trail holds a record, its packs and every finding; it may be far larger than any of them.
TRAIL_LIMITS: Final = Limits(size_bytes=200_000_000)

_TRAIL_FORMAT: Final = re.compile(r"trail/([1-9][0-9]*)\Z")


def read_trail(source: Document | Path | str, steps: Sequence[Step] = STEPS) -> Trail:
    """The trail in a document or file; one of an older format is brought up to the newest.

    The digest is held against the file as it is, before anything is brought up by the ``steps``.
    Raises DocumentRefused for a file that is no JSON, and TrailRefused with all problems in order:
    ``trail-format-unknown``, ``trail-format-newer``, ``trail-damaged`` (its shape is wrong),
    ``trail-digest-wrong`` (it was changed after it was made) or ``trail-inconsistent``.
    """
    document = source if isinstance(source, Document) else read_document(source, TRAIL_LIMITS)
    data, version = _of_known_format(document, len(steps) + 1)
    problems: list[Problem] = []
    canonical = _canonical(document, data, problems)
    if version <= len(steps):
        if problems:
            raise TrailRefused(problems)
        data = _newest(document, data, version, steps)
    problems += _shape_problems(document, data)
    if not problems:
        problems = [Problem(each.code, document.place(each.path), each.found, each.expected)
                    for each in disagreements(data["assessment"])]
    if problems:
        raise TrailRefused(problems)
    return Trail(data, canonical,
                 brought_up_from=f"trail/{version}" if version <= len(steps) else None)


def _newest(document: Document, data: Mapping[str, Any], version: int, steps: Sequence[Step],
            ) -> dict[str, Any]:
    try:
        return brought_up(data, version, steps)
    except (KeyError, TypeError, ValueError, AttributeError, IndexError) as wrong:
        raise TrailRefused([Problem(
            "trail-damaged", document.place(), f"{type(wrong).__name__}: {wrong}",
            f"a whole trail of the format trail/{version}")]) from wrong


def _of_known_format(document: Document, newest: int) -> tuple[dict[str, Any], int]:
    data = document.data
    named = data.get("format") if isinstance(data, dict) else None
    version = _TRAIL_FORMAT.match(named) if isinstance(named, str) else None
    if version is None or not isinstance(data, dict):
        raise TrailRefused([Problem("trail-format-unknown", document.place(["format"]),
                                    _shown(named), f"trail/{newest}")])
    if int(version[1]) > newest:
        raise TrailRefused([Problem(
            "trail-format-newer", document.place(["format"]), version[0],
            f"trail/{newest} or older",
            "use the version of the program that wrote it, or a newer one")])
    return data, int(version[1])


def _canonical(document: Document, data: Mapping[str, Any], problems: list[Problem]) -> bytes:
    """The canonical bytes of the assessment; adds a problem when the digest is not theirs."""
    try:
        canonical = canonical_bytes(data.get("assessment"))
    except ReadingError as error:
        problems.append(error.problem().at(document.place(["assessment"])))
        return b""
    computed = digest_of_bytes(canonical)
    if computed != data.get("digest"):
        problems.append(Problem(
            "trail-digest-wrong", document.place(["digest"]), _shown(data.get("digest")),
            f"{computed}, the digest of 'assessment'",
            "the file was changed after it was made; ask its maker for the original"))
    return canonical


def _shape_problems(document: Document, data: object) -> Iterator[Problem]:
    from pydantic import ValidationError

    from garboard.trail.format import TrailDocument

    try:
        TrailDocument.model_validate(data)
    except ValidationError as error:
        said: set[tuple[str | int, ...]] = set()
        for each in error.errors(include_url=False, include_context=False):
            path = _data_path(data, each["loc"], missing=each["type"] == "missing")
            if path not in said:
                said.add(path)
                found = "nothing" if each["type"] == "missing" else _shown(each["input"])
                yield Problem("trail-damaged", document.place(path), found, each["msg"])


def _data_path(data: object, steps: Sequence[str | int], *, missing: bool,
               ) -> tuple[str | int, ...]:
    """The path of an error in the data; steps that only name a choice of models are left out."""
    path: list[str | int] = []
    for step in steps:
        held: Mapping[str | int, object] = {}
        if isinstance(data, dict):
            held = data
        elif isinstance(data, list):
            held = dict(enumerate(data))
        if step in held:
            data = held[step]
            path.append(step)
    if missing:
        path.append(steps[-1])
    return tuple(path)


def _shown(thing: object) -> str:
    text = repr(thing)
    return text if len(text) <= 60 else f"{text[:60]} ..."
