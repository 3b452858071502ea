"""Text in Unicode form NFC, and objects in the order of their keys' UTF-16 code units."""

from __future__ import annotations

from collections.abc import Iterable
from unicodedata import is_normalized, normalize

from garboard.errors import ReadingError


def is_plain(texts: Iterable[str]) -> bool:
    """Whether all texts are in NFC and order by code point as they do by UTF-16 code unit.

    Escaped JSON text may be given, half surrogates in it: it can only be called less plain than it
    is.
    """
    joined = '"'.join(text for text in texts if not text.isascii())
    return (is_normalized("NFC", joined)
            and len(joined.encode("utf-16-le", "surrogatepass")) == 2 * len(joined))


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
