"""Writing a file whole or not at all."""

from __future__ import annotations

import errno
import os
import secrets
import stat
from pathlib import Path

from garboard.errors import OutputRefused, Place, Problem, did_you_mean

_FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_FORBIDDEN = (errno.EACCES, errno.EPERM, errno.EROFS)
#: A folder that cannot be synchronised does not make the file in it less whole.
_NO_FOLDER_SYNC = (errno.EINVAL, errno.ENOTSUP, errno.EBADF, *_FORBIDDEN)

_OWNER_ALONE = 0o600


def write_whole(file: Path, data: bytes, *, secret: bool = False) -> None:
    """Put ``data`` under the name ``file``: all of it, or leave what was there untouched.

    The bytes go to a temporary file in the same folder (``.garboard-...part``), reach the disk, and
    only then take the name. Of several writers at once the last one wins, whole. A link is followed
    and a replaced file keeps its permissions. A writer that is killed leaves only the temporary
    file. A ``secret`` file can be read by its owner alone from its first byte on. Raises
    OutputRefused (codes ``output-...``).
    """
    try:
        target = Path(os.path.realpath(file))
        mode = _mode_of(target, file)
        part = target.with_name(f".garboard-{os.getpid()}-{secrets.token_hex(8)}.part")
        descriptor = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL,
                             _OWNER_ALONE if secret else 0o666)
        try:
            _fill(descriptor, data, _OWNER_ALONE if secret else mode)
            part.replace(target)
        except BaseException:
            part.unlink(missing_ok=True)
            raise
        _sync_folder(target.parent)
    except (OSError, ValueError) as error:
        raise OutputRefused([_problem(error, file, len(data))]) from None


def _mode_of(target: Path, file: Path) -> int | None:
    """The permissions of the file that will be replaced; only a regular file may be."""
    try:
        mode = target.stat().st_mode
    except FileNotFoundError:
        return None
    place = Place(str(file))
    if stat.S_ISDIR(mode):
        raise OutputRefused([Problem("output-folder", place, "a folder", "the name of a file",
                                     "add a file name behind the folder")])
    if not stat.S_ISREG(mode):
        raise OutputRefused([Problem("output-special", place, "a device, pipe or socket",
                                     "the name of a file on a disk")])
    return stat.S_IMODE(mode)


def _fill(descriptor: int, data: bytes, mode: int | None) -> None:
    with os.fdopen(descriptor, "wb") as stream:
        stream.write(data)
        stream.flush()
        if mode is not None:
            os.fchmod(descriptor, mode)
        os.fsync(descriptor)


def _sync_folder(folder: Path) -> None:
    """Make the new name survive a power cut, where the file system can."""
    if os.name != "posix":
        return
    descriptor = None
    try:
        descriptor = os.open(folder, os.O_RDONLY)
        os.fsync(descriptor)
    except OSError as error:
        if error.errno not in _NO_FOLDER_SYNC:
            raise
    finally:
        if descriptor is not None:
            os.close(descriptor)


def _problem(error: OSError | ValueError, file: Path, size: int) -> Problem:
    place = Place(str(file))
    reason = getattr(error, "strerror", None) or str(error)
    code = getattr(error, "errno", None)
    folder = file.parent
    if code in _FULL:
        return Problem("output-full", place, f"{reason}, for {size:,} bytes", "room on the disk",
                       "free some space or choose another place")
    if code == errno.ENOENT and not folder.exists():
        names = folder.parent.iterdir() if folder.parent.is_dir() else ()
        return Problem("output-no-folder", place, f"no folder {folder}", "a folder that exists",
                       did_you_mean(folder.name, (entry.name for entry in names))
                       or "create the folder first")
    if code == errno.ENOTDIR:
        return Problem("output-no-folder", place, f"{folder} is a file", "a folder",
                       "choose a folder for the file to stand in")
    if code in _FORBIDDEN:
        return Problem("output-forbidden", place, reason, "a folder you may write to",
                       "choose another folder")
    return Problem("output-failed", place, reason, hint="choose another place")
