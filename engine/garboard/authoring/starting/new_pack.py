"""Writing a new pack: a template with the pack's name in it, and the schemas for editors."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from garboard.documents import shipped_folder, write_whole
from garboard.errors import CommandRefused, OutputRefused, Place, Problem
from garboard.packs import known_packs
from garboard.packs.model import ID_PATTERN

_TEMPLATE: Final = Path(__file__).parent / "template"
_NAME: Final = "NAME-OF-PACK"
#: The schemas that the files of the template name in their first line.
SCHEMAS: Final = ("rule-pack-1.json", "case-1.json", "installation-record-1.json")


def new_pack(name: str, into: Path) -> tuple[Path, ...]:
    """Write a pack of that name as a folder in another, and say which files it has.

    CommandRefused for a name no pack can have, or that a shipped one has; OutputRefused when the
    folder is there already or cannot be written.
    """
    if not re.fullmatch(ID_PATTERN, name):
        raise CommandRefused([Problem(
            "pack-name-unfit", found=name,
            expected="lower-case letters, digits and hyphens, such as house-rules")])
    if name in known_packs([shipped_folder("rulepacks")]):
        raise CommandRefused([Problem(
            "pack-name-unfit", found=name, expected="a name that no shipped pack has",
            hint=f"a layer on it has a name of its own, and says builds_on: {name}")])
    folder = into / name
    if folder.exists() or folder.is_symlink():
        raise OutputRefused([Problem("pack-exists", Place(str(folder)), found=str(folder))])
    files = {file.relative_to(_TEMPLATE): file.read_text("utf-8").replace(_NAME, name).encode()
             for file in sorted(_TEMPLATE.rglob("*")) if file.is_file()}
    for schema in SCHEMAS:
        files[Path("schemas") / schema] = (shipped_folder("schemas") / schema).read_bytes()
    for path, content in files.items():
        _make(folder / path.parent)
        write_whole(folder / path, content)
    return tuple(folder / path for path in files)


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as wrong:
        raise OutputRefused([Problem("pack-not-written", Place(str(folder)),
                                     found=wrong.strerror or str(wrong))]) from wrong
