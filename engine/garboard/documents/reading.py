"""Reading a file or a text as a document."""

from __future__ import annotations

import os
import stat
from hashlib import sha256
from pathlib import Path
from typing import Literal

from garboard.documents.characters import checked, decoded
from garboard.documents.document import Document
from garboard.documents.json_reading import NotJsonError, read_json
from garboard.documents.limits import DEFAULT_LIMITS, Limits
from garboard.documents.sheet import Sheet
from garboard.documents.spot import Spot
from garboard.documents.yaml_reading import read_yaml
from garboard.errors import DocumentRefused, Place, Problem, did_you_mean

#: What may stand at the top of a document: a mapping, or a mapping, a list or a scalar.
Expect = Literal["mapping", "anything"]


def read_document(file: str | Path, limits: Limits = DEFAULT_LIMITS, *,
                  expect: Expect = "anything") -> Document:
    """Read a YAML or JSON file; raises DocumentRefused with all problems found.

    A file whose name ends in ``.json`` is JSON, whatever it holds. One that starts with ``{`` is
    read as JSON first and as YAML if it is none. All others are YAML.
    """
    path = Path(file)
    name = _shown(path)
    raw = _bytes(path, name, limits)
    text = decoded(raw, name)
    return _document(name, text, sha256(raw).hexdigest(), limits, expect,
                     path.suffix.lower() == ".json")


def read_text(text: str, file: str = "<text>", limits: Limits = DEFAULT_LIMITS, *,
              expect: Expect = "anything") -> Document:
    """Read a YAML or JSON text as if it stood in a UTF-8 file; raises DocumentRefused."""
    checked(text.removeprefix("\ufeff"), file)
    raw = text.encode()
    if len(raw) > limits.size_bytes:
        raise DocumentRefused([_too_large(file, len(raw), limits)])
    return _document(file, text.removeprefix("\ufeff"), sha256(raw).hexdigest(), limits, expect,
                     file.lower().endswith(".json"))


def _document(file: str, text: str, digest: str, limits: Limits, expect: Expect,
              must_be_json: bool) -> Document:
    sheet = Sheet(file, text)
    if not text.strip():
        raise DocumentRefused([Problem(
            "document-empty", Place(file), "nothing but blanks" if text else "no bytes at all")])
    data, root = _read(sheet, limits, must_be_json)
    if data is None:
        raise DocumentRefused([Problem("document-empty", sheet.place(0),
                                       "comments only, or an empty value")])
    if expect == "mapping" and not isinstance(data, dict):
        kind = "a list" if isinstance(data, list) else "a single value"
        raise DocumentRefused([Problem(
            "document-not-a-mapping", sheet.place(root.start), f"{kind} at the top",
            "a mapping at the top: lines of the form key: value")])
    return Document(file, data, text, digest, sheet, root)


def _read(sheet: Sheet, limits: Limits, must_be_json: bool) -> tuple[object, Spot]:
    if must_be_json or sheet.text.lstrip().startswith("{"):
        try:
            return read_json(sheet, limits)
        except NotJsonError as error:
            if must_be_json:
                raise DocumentRefused([error.problem]) from None
    return read_yaml(sheet, limits)


def read_bytes(file: Path, limits: Limits) -> bytes:
    """The bytes of a regular file no larger than the limit on size; DocumentRefused."""
    return _bytes(file, _shown(file), limits)


# files ----------------------------------------------------------------------------------------
def _bytes(path: Path, name: str, limits: Limits) -> bytes:
    """The bytes of a regular file no larger than the limit; a larger one stays unread."""
    place = Place(name)
    try:
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            raise DocumentRefused([Problem("document-folder", place, "a folder", "a file")])
        if not stat.S_ISREG(status.st_mode):
            raise DocumentRefused([Problem("document-special", place, "a device, pipe or socket",
                                           "a file on a disk")])
        if status.st_size > limits.size_bytes:
            raise DocumentRefused([_too_large(name, status.st_size, limits)])
        with path.open("rb") as stream:
            raw = stream.read(limits.size_bytes + 1)
    except FileNotFoundError:
        raise DocumentRefused([Problem("document-missing", place, hint=_missing(path))]) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise DocumentRefused([Problem("document-unreadable", place, reason)]) from None
    if len(raw) > limits.size_bytes:
        raise DocumentRefused([_too_large(name, len(raw), limits)])
    return raw


def _too_large(file: str, size: int, limits: Limits) -> Problem:
    return Problem("document-too-large", Place(file), f"{size:,} bytes",
                   limits.expected("size_bytes", "bytes"),
                   "if the file is really meant to be that large, raise the limit")


def _missing(path: Path) -> str:
    """The nearest name in the folder, or that the folder is missing too."""
    folder = path.parent
    if not folder.is_dir():
        return f"there is no folder {_shown(folder)} either"
    return did_you_mean(path.name, (entry.name for entry in folder.iterdir()))


def _shown(path: Path) -> str:
    """The path as text that can be printed, whatever bytes the system gave for it."""
    return os.fsencode(path).decode(errors="backslashreplace")
