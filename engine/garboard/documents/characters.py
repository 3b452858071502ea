"""From the bytes of a file to its text: UTF-8 only, and only characters a person can see."""

from __future__ import annotations

import re
from unicodedata import name

from garboard.documents.sheet import Sheet
from garboard.errors import DocumentRefused, Place, Problem

#: Control characters and halves of characters: not even escapes may bring these into a value.
UNPRINTABLE = re.compile("[\0-\b\v\f\x0e-\x1f\x7f-\x9f\ud800-\udfff]")

_REFUSED = re.compile("[\0-\b\v\f\x0e-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_MARK = b"\xef\xbb\xbf"
_WIDE_MARKS = ((b"\xff\xfe\0\0", "UTF-32"), (b"\0\0\xfe\xff", "UTF-32"),
               (b"\xff\xfe", "UTF-16"), (b"\xfe\xff", "UTF-16"))
_KINDS = ((b"%PDF", "a PDF file"), (b"PK\x03\x04", "an office document or a zip archive"),
          (b"\x89PNG", "a PNG picture"), (b"\xff\xd8\xff", "a JPEG picture"),
          (b"\x1f\x8b", "a gzip archive"), (b"\xd0\xcf\x11\xe0", "an old office document"),
          (b"SQLite format 3\0", "a database"), (b"\x7fELF", "a program"))
_SAVE = "save the file as UTF-8 text"


def decoded(raw: bytes, file: str) -> str:
    """The text of a file's bytes, without a byte order mark; raises DocumentRefused."""
    for start, kind in _KINDS:
        if raw.startswith(start):
            raise _refused("document-binary", Place(file), kind, "a text file with YAML or JSON")
    wide = _wide_encoding(raw)
    if wide:
        raise _refused("document-encoding", Place(file), wide, "UTF-8", _SAVE)
    raw = raw.removeprefix(_MARK)
    try:
        text = raw.decode()
    except UnicodeDecodeError as error:
        if b"\0" in raw:
            raise _refused("document-binary", Place(file), "bytes that are no text",
                           "a text file with YAML or JSON") from None
        raise _not_utf8(raw, error.start, file) from None
    return checked(text, file)


def checked(text: str, file: str) -> str:
    """The text, if it holds no characters that nobody can see; raises DocumentRefused."""
    bad = _REFUSED.search(text)
    if bad:
        character = bad[0]
        label = name(character, "") or {"\0": "NULL"}.get(character, "a control character")
        raise _refused("document-character", Sheet(file, text).place(bad.start()),
                       f"U+{ord(character):04X} ({label.lower()})", "printable characters",
                       "delete it; it may be invisible in your editor")
    return text


def _wide_encoding(raw: bytes) -> str | None:
    """UTF-16 or UTF-32, by its mark or by where its zero bytes stand."""
    for mark, encoding in _WIDE_MARKS:
        if raw.startswith(mark) and _decodes(raw, encoding):
            return encoding
    start = raw[:400]
    if len(start) >= 4 and start.count(0) * 3 >= len(start):
        if start[0] and not any((start[1], start[2], start[3])):
            return "UTF-32"
        if 0 in (start[0], start[1]) and 0 in (start[2], start[3]) and any(start[:2]):
            return "UTF-16"
    return None


def _decodes(raw: bytes, encoding: str) -> bool:
    try:
        raw.decode(encoding)
    except UnicodeDecodeError:
        return False
    return True


def _not_utf8(raw: bytes, start: int, file: str) -> DocumentRefused:
    before = raw[:start].decode()
    tail = raw[start:start + 200].decode("cp1252", errors="replace")
    place = Sheet(file, before + tail).place(len(before))
    return _refused("document-not-utf8", place, f"the byte {raw[start]:02X}", "UTF-8",
                    f"{_SAVE}; as Windows or Latin text this would be {tail[:1]!r}")


def _refused(code: str, place: Place, found: str, expected: str, hint: str = "") -> DocumentRefused:
    return DocumentRefused([Problem(code, place, found, expected, hint)])
