"""Files in a pack's folder that are no part of the pack."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from garboard.errors import Place, Problem
from garboard.packs.files import pack_files

#: Folders and files beside the rules that belong to a pack without being sealed.
_BESIDE: Final = ("cases", "dispensations", "lessons", "schemas")
_TEXTS: Final = (".md", ".txt")


def stray_problems(pack: Path) -> Iterator[Problem]:
    """Every file that would be left out of the seal although it could be meant for it.

    Cases, dispensations, lessons, schemas for editors and texts for people (``README.md``,
    ``LICENSE.txt``) may stand there. A file or folder that leads out of the pack is one of them
    too.
    """
    if not pack.is_dir():
        return
    root, known = pack.resolve(), set(pack_files(pack))
    for each in sorted(pack.rglob("*")):
        inside = each.relative_to(pack)
        if not each.resolve().is_relative_to(root):
            yield Problem("pack-path-climbs", Place(str(each)), found=str(each.resolve()),
                          expected="a file inside the pack's folder")
        elif not each.is_dir() and each not in known and inside.parts[0] not in _BESIDE and not (
                len(inside.parts) == 1 and each.suffix in _TEXTS):
            yield Problem("seal-stray-file", Place(str(each)), found=inside.as_posix(),
                          expected="pack.yaml, files of rules, cases, dispensations, texts (.md)",
                          hint="take it out, or put its rules into a .yaml file of the pack")
