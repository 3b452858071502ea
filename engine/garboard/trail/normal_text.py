"""Text in Unicode form NFC, and objects in the order of their keys' UTF-16 code units."""

from __future__ import annotations

from unicodedata import is_normalized, normalize

from garboard.errors import ReadingError


def is_plain(text: str) -> bool:
    """Whether a text is in NFC, and parts of it order by code point as by UTF-16 code unit.

    Escaped JSON text may be given: it can only be called less plain than it is.
    """
    return text.isascii() or (is_normalized("NFC", text)
                              and len(text.encode("utf-16-le")) == 2 * len(text))


def in_normal_form(data: object) -> object:
    """The same data with every text in NFC and every object in RFC 8785's order of keys."""
    if isinstance(data, str):
        return normalize("NFC", data)
    if isinstance(data, dict):
        return _object(data)
    if isinstance(data, (list, tuple)):
        return [in_normal_form(each) for each in data]
    return data


def _object(data: dict[str, object]) -> dict[str, object]:
    keys = {key: normalize("NFC", key) for key in data}
    if len(set(keys.values())) != len(keys):
        twice = sorted(key for key in keys.values() if list(keys.values()).count(key) > 1)
        raise ReadingError("canonical-key", found=f"two keys that are the same text: {twice[0]!r}",
                           expected="keys that differ in Unicode form NFC")
    order = sorted(data, key=lambda key: keys[key].encode("utf-16-be"))
    return {keys[key]: in_normal_form(data[key]) for key in order}
