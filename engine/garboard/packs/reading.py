"""Packs from files."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from garboard.documents import read_document, read_text
from garboard.errors import DocumentRefused, PackRefused, Problem, ReadingError
from garboard.packs.draft import Draft, draft_pack
from garboard.packs.files import pack_files
from garboard.packs.pack import Pack
from garboard.packs.spot import Spot


def read_pack(path: str | Path) -> Pack:
    """The pack in a folder or file; PackRefused with every problem of its shape, each placed.

    Its expressions are not looked at; ``load_pack`` does both at once.
    """
    return finished(draft_files(Path(path)))


def read_pack_text(text: str, file: str = "<text>") -> Pack:
    """A pack of a single file from its text."""
    try:
        document = read_text(text, file, expect="mapping")
    except DocumentRefused as refused:
        raise PackRefused(refused.problems) from refused
    return finished(draft_pack(Spot(document, (), document.data)))


def draft_files(path: Path) -> Draft:
    """What can be read of the pack in a folder or file, with everything that is wrong with it.

    PackRefused when one of its files is not a readable document.
    """
    sheets: list[Spot] = []
    problems: list[Problem] = []
    for file in pack_files(path):
        try:
            document = read_document(file, expect="mapping")
        except DocumentRefused as refused:
            problems += refused.problems
        else:
            sheets.append(Spot(document, (), document.data))
    if problems:
        raise PackRefused(problems)
    return draft_pack(sheets[0], sheets[1:])


def finished(draft: Draft, further: Iterable[Problem] = ()) -> Pack:
    """The pack of a draft; PackRefused when anything is wrong with it."""
    draft.problems += further
    if draft.refused:
        raise PackRefused(draft.problems)
    pack = draft.pack()
    try:
        pack.digest  # noqa: B018 - computed now, so that what cannot be hashed is refused here
    except ReadingError as wrong:
        raise PackRefused([wrong.problem().at(pack.spot().place())]) from wrong
    return pack
