"""Where each value of a JSON text stands, found only when asked for."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from json.decoder import scanstring  # type: ignore[attr-defined]

from garboard.documents.spot import FLOW, JSON_TEXT, Member

_BLANKS = re.compile(r"[ \t\r\n]*")
_DECODER = json.JSONDecoder(strict=False)


class JsonSpot:
    """The span of one value in a well-formed JSON text; see ``Spot``.

    Siblings are skipped by the C decoder, so finding a few places in a large file is cheap. Each
    collection keeps what it has found.
    """

    __slots__ = ("_members", "_text", "end", "start")

    def __init__(self, text: str, start: int, end: int) -> None:
        self._text, self.start, self.end = text, start, end
        self._members: dict[str | int, Member] | None = None

    @classmethod
    def whole(cls, text: str) -> JsonSpot:
        """The spot of the whole value of a text."""
        start = _past_blanks(text, 0)
        return cls(text, start, _value_end(text, start))

    @property
    def style(self) -> str:
        return FLOW if self._text[self.start] in "{[" else JSON_TEXT

    @property
    def written(self) -> str | None:
        sign = self._text[self.start]
        if sign in "{[":
            return None
        if sign == '"':
            text: str = scanstring(self._text, self.start + 1, False)[0]
            return text
        return self._text[self.start:self.end]

    def member(self, step: str | int) -> Member | None:
        if self._members is None:
            self._members = {}
            for key, member in self.pairs():
                self._members.setdefault(key, member)
        return self._members.get(step)

    def pairs(self) -> Iterator[tuple[str | int, Member]]:
        """The members one by one, keys given twice included."""
        text, mapping = self._text, self._text[self.start] == "{"
        if text[self.start] not in "{[":
            return
        index = _past_blanks(text, self.start + 1)
        number = 0
        while text[index] not in "}]":
            key: str | int = number
            key_start = key_end = -1
            if mapping:
                key_start = index
                key, key_end = scanstring(text, index + 1, False)
                index = _past_blanks(text, _past_blanks(text, key_end) + 1)
            end = _value_end(text, index)
            yield key, Member(JsonSpot(text, index, end), key_start, key_end)
            index = _past_blanks(text, end)
            if text[index] == ",":
                index = _past_blanks(text, index + 1)
            number += 1

    def __reduce__(self) -> tuple[object, ...]:
        return JsonSpot, (self._text, self.start, self.end)


def _past_blanks(text: str, index: int) -> int:
    match = _BLANKS.match(text, index)
    return match.end() if match else index


def _value_end(text: str, index: int) -> int:
    return _DECODER.raw_decode(text, index)[1]
