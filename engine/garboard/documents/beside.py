"""Files that a record names, read from a folder and from nowhere else."""

from __future__ import annotations

from pathlib import Path, PurePosixPath
from typing import Final

from garboard.errors import ReadingError

#: The largest file that is read, in bytes.
LARGEST: Final = 60_000_000


def read_beside(folder: Path, name: str) -> bytes:
    """The bytes of the file of that name in a folder.

    ReadingError: ``photo-missing`` when there is none, ``photo-unfit`` when the name leads out of
    the folder or the file is too large.
    """
    path = PurePosixPath(name)
    if not name or path.is_absolute() or ".." in path.parts or "\\" in name or "\0" in name:
        raise ReadingError("photo-unfit", name or "no file name", "a file in the folder")
    file = folder / name
    if not file.is_file():
        raise ReadingError("photo-missing", name)
    if not file.resolve().is_relative_to(folder.resolve()):
        raise ReadingError("photo-unfit", name, "a file in the folder, not a link out of it")
    if file.stat().st_size > LARGEST:
        raise ReadingError("photo-unfit", f"{file.stat().st_size} bytes", f"at most {LARGEST}")
    try:
        return file.read_bytes()
    except OSError as wrong:
        raise ReadingError("photo-missing", f"{name}: {wrong.strerror}") from wrong
