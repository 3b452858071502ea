"""Where each value of a JSON text stands, found only when asked for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from json.decoder import scanstring  # type: ignore[attr-defined]

from garboard.documents.spot import FLOW, JSON_TEXT, Member

_BLANKS = re.compile(r"[ \t\r\n]*")
_TEXT = re.compile(r'"[^"\\]*(?:\\.[^"\\]*)*"', re.DOTALL)
_TOKEN = re.compile(_TEXT.pattern + r"|[\[{]|[\]}]", re.DOTALL)
_WORD = re.compile(r"[^,\]}\s]+")


class JsonText:
    """A well-formed JSON text and, once they are needed, the ends of its brackets."""

    __slots__ = ("_ends", "text")

    def __init__(self, text: str) -> None:
        self.text = text
        self._ends: dict[int, int] | None = None

    def whole(self) -> JsonSpot:
        """The spot of the whole value."""
        return JsonSpot(self, self.past_blanks(0), len(self.text.rstrip()))

    def past_blanks(self, index: int) -> int:
        match = _BLANKS.match(self.text, index)
        return match.end() if match else index

    def end_of(self, start: int) -> int:
        """The end of the value that starts at an index."""
        sign = self.text[start]
        if sign in "{[":
            return self._brackets()[start]
        match = (_TEXT if sign == '"' else _WORD).match(self.text, start)
        assert match is not None
        return match.end()

    def _brackets(self) -> dict[int, int]:
        if self._ends is None:
            self._ends = {}
            waiting: list[int] = []
            for match in _TOKEN.finditer(self.text):
                if match[0] in "{[":
                    waiting.append(match.start())
                elif match[0] in "}]":
                    self._ends[waiting.pop()] = match.end()
        return self._ends

    def __reduce__(self) -> tuple[object, ...]:
        return JsonText, (self.text,)


class JsonSpot:
    """The span of one value in a well-formed JSON text; see ``Spot``. Found members are kept."""

    __slots__ = ("_members", "_text", "end", "start")

    def __init__(self, text: JsonText, start: int, end: int) -> None:
        self._text, self.start, self.end = text, start, end
        self._members: dict[str | int, Member] | None = None

    @property
    def style(self) -> str:
        return FLOW if self._text.text[self.start] in "{[" else JSON_TEXT

    @property
    def written(self) -> str | None:
        sign = self._text.text[self.start]
        if sign in "{[":
            return None
        if sign == '"':
            text: str = scanstring(self._text.text, self.start + 1, False)[0]
            return text
        return self._text.text[self.start:self.end]

    def member(self, step: str | int) -> Member | None:
        if self._members is None:
            self._members = {}
            for key, member in self.pairs():
                self._members.setdefault(key, member)
        return self._members.get(step)

    def pairs(self) -> Iterator[tuple[str | int, Member]]:
        """The members one by one, keys given twice included."""
        whole = self._text
        text, past_blanks = whole.text, whole.past_blanks
        mapping = text[self.start] == "{"
        if text[self.start] not in "{[":
            return
        index = past_blanks(self.start + 1)
        number = 0
        while text[index] not in "}]":
            key: str | int = number
            key_start = key_end = -1
            if mapping:
                key_start = index
                key, key_end = scanstring(text, index + 1, False)
                index = past_blanks(past_blanks(key_end) + 1)
            end = whole.end_of(index)
            yield key, Member(JsonSpot(whole, index, end), key_start, key_end)
            index = past_blanks(end)
            if text[index] == ",":
                index = past_blanks(index + 1)
            number += 1

    def __reduce__(self) -> tuple[object, ...]:
        return JsonSpot, (self._text, self.start, self.end)
