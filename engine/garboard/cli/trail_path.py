"""Where each record's trail goes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from garboard.errors import CommandRefused, Place, Problem

ENDING = ".trail.json"


def trail_paths(records: Sequence[str], asked: str | None,
                inputs: Sequence[str]) -> tuple[Path, ...]:
    """One path per record; CommandRefused when one would overwrite an input or another trail."""
    if asked is None or Path(asked).is_dir():
        paths = [Path(asked or "") / (name + ENDING) for name in _names(records)]
    elif len(records) == 1:
        paths = [Path(asked)]
    else:
        raise CommandRefused([Problem(
            "trail-for-several", Place(file=asked), found=f"{len(records)} records, one file",
            hint="name a folder that exists, or leave --trail out")])
    taken = {_real(each): each for each in inputs}
    for record, path in zip(records, paths, strict=True):
        if _real(path) in taken:
            raise CommandRefused([Problem(
                "trail-over-input", Place(file=str(path)),
                found=f"the trail of {record} would overwrite {taken[_real(path)]}",
                hint="name another file with --trail")])
        taken[_real(path)] = f"the trail of {record}"
    return tuple(paths)


def _names(records: Sequence[str]) -> list[str]:
    """A name for each record: its own, and the folder's as well where several have that name."""
    names = [Path(record).stem for record in records]
    often = Counter(names)
    return [f"{Path(record).resolve().parent.name}-{name}" if often[name] > 1 else name
            for record, name in zip(records, names, strict=True)]


def keep_apart(target: str, *inputs: str) -> None:
    """CommandRefused when a file to write is one of the files that are read."""
    for each in inputs:
        if _real(each) == _real(target):
            raise CommandRefused([Problem("output-over-input", Place(file=target),
                                          found=f"the same file as {each}",
                                          hint="name another file to write")])


def _real(path: str | Path) -> Path:
    return Path(path).resolve()
