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


def read_pack_text(text: str, file: str = "<text>") -> Pack:
    """A pack of a single file from its text; it cannot build on others."""
    try:
        document = read_text(text, file, expect="mapping")
    except DocumentRefused as refused:
        raise PackRefused(refused.problems) from refused
    draft = draft_pack(Spot(document, (), document.data))
    below = draft.head.at("builds_on")
    alone = () if draft.refused or below.data is None else [Problem(
        "base-missing", below.place(key=True), found="a text without a folder",
        expected="a pack in a file, for packs to be found beside it")]
    return finished(draft, alone)


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
    return hashed(draft.pack())


def hashed(pack: Pack) -> Pack:
    """The pack, whose digest is computed now; PackRefused when it holds what cannot be hashed."""
    try:
        pack.digest  # noqa: B018 - computed and kept
    except ReadingError as wrong:
        raise PackRefused([wrong.problem().at(pack.spot().place())]) from wrong
    return pack
