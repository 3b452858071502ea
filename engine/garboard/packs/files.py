"""Which files a pack consists of, and which pack is meant by a name or a path."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final

from garboard.errors import PackRefused, Place, Problem, did_you_mean
from garboard.packs.seal import ENDING

HEAD: Final = "pack.yaml"
RULES_FOLDER: Final = "rules"
_YAML: Final = (".yaml", ".yml")
#: How a pack is called on a disk, where it is not a folder: sealed, or a single file.
_ENDINGS: Final = (ENDING, ".yaml")


def find_pack(name_or_path: str | Path, search: Sequence[Path] = ()) -> Path:
    """The folder or file of a pack.

    A bare name (no separator, no ``.yaml``) is looked up in the ``search`` folders, in their
    order, before it is tried as a path; write ``./name`` for a folder that has a pack's name. Of a
    pack that lies there sealed and as a folder, the sealed one is meant. The head of a pack stands
    for its folder.
    PackRefused ``pack-not-found`` names the nearest and lists what is known.
    """
    text = str(name_or_path)
    if text and _is_name(text):
        for folder in search:
            for candidate in places_of(folder, text):
                if _is_pack(candidate):
                    return candidate
    path = Path(name_or_path)
    if _is_pack(path):
        return path.parent if path.name == HEAD else path
    if text and _is_folder(path):
        raise PackRefused([Problem(
            "pack-head-missing", Place(text), found=f"a folder without {HEAD}",
            expected=f"{HEAD} in the folder")])
    known = known_packs(search)
    listed = f"known packs: {', '.join(known)}" if known else "no pack is shipped here"
    guess = did_you_mean(text, known)
    raise PackRefused([Problem("pack-not-found", Place(text), found=text,
                               expected="the name of a known pack, a folder or a file",
                               hint=f"{guess} {listed}".strip())])


def known_packs(search: Sequence[Path]) -> tuple[str, ...]:
    """The names of the packs in the search folders, sorted."""
    found = {each.name.removesuffix(ENDING).removesuffix(".yaml")
             for folder in search if folder.is_dir() for each in folder.iterdir()
             if _is_pack(each)}
    return tuple(sorted(found))


def pack_files(pack: Path) -> tuple[Path, ...]:
    """The files of a pack: its head first, then rules and limits sorted by their place in the pack.

    A file is taken from beside the head and from the folder ``rules``. PackRefused when one leads
    out of the pack, or when a YAML file stands where it would be overlooked.
    """
    if pack.name == HEAD and pack.is_file():
        pack = pack.parent
    if not pack.is_dir():
        return (pack,)
    try:
        others = sorted(_candidates(pack), key=lambda file: file.relative_to(pack).as_posix())
        problems = [*_strays(pack, (pack / HEAD, *others))]
    except OSError as wrong:
        raise PackRefused([Problem("pack-unreadable", Place(str(pack)),
                                   found=wrong.strerror or str(wrong))]) from wrong
    if problems:
        raise PackRefused(problems)
    return (pack / HEAD, *others)


def _candidates(pack: Path) -> Iterator[Path]:
    for folder in (pack, pack / RULES_FOLDER):
        if folder.is_dir():
            yield from (file for file in folder.iterdir() if file.suffix.lower() in _YAML
                        and file != pack / HEAD and not file.is_dir())


def _strays(pack: Path, files: Sequence[Path]) -> Iterator[Problem]:
    root = pack.resolve()
    for file in files:
        if not file.resolve().is_relative_to(root):
            yield Problem("pack-path-climbs", Place(str(file)), found=str(file.resolve()),
                          expected="a file inside the pack's folder")
        if file.suffix != ".yaml":
            yield Problem("pack-file-overlooked", Place(str(file)), found=file.name,
                          expected="a name that ends in .yaml")
    rules = pack / RULES_FOLDER
    for nested in sorted(rules.glob("*/**/*")) if rules.is_dir() else ():
        if nested.suffix.lower() in _YAML:
            yield Problem("pack-file-overlooked", Place(str(nested)),
                          found=nested.relative_to(pack).as_posix(),
                          expected=f"a file directly in {RULES_FOLDER}/")


def places_of(folder: Path, name: str) -> tuple[Path, ...]:
    """Where a pack of that name may lie in a folder, in the order in which it is looked for."""
    return (folder / f"{name}{ENDING}", folder / name, folder / f"{name}.yaml")


def is_sealed(path: Path) -> bool:
    """Whether a path is that of a sealed pack, by its name."""
    return path.name.endswith(ENDING) and not path.is_dir()


def _is_name(text: str) -> bool:
    return "/" not in text and "\\" not in text and not text.startswith(".") \
        and not text.endswith((*_YAML, ENDING))


def _is_pack(path: Path) -> bool:
    try:
        if path.is_dir():
            return (path / HEAD).is_file()
        return path.is_file() and path.name.endswith(_ENDINGS)
    except OSError:  # a name no file can have, or a folder one may not look into
        return False


def _is_folder(path: Path) -> bool:
    try:
        return path.is_dir()
    except OSError:
        return False
