"""From a character of a text's value back to the character of the file that wrote it.

Each style is read again, keeping for every character of the value the index it came from. Should
that reading ever differ from the value, the start of the scalar is given, never a wrong spot.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from garboard.documents.spot import DOUBLE, FOLDED, JSON_TEXT, LITERAL, PLAIN, SINGLE, Spot

_Traced = Iterator[tuple[str, int]]
_BREAK = re.compile(r"\r\n|\n|\r")
_LINE = re.compile(r"([^\r\n]*)(\r\n|\n|\r|\Z)")
_ESCAPES = {"0": "\0", "a": "\a", "b": "\b", "t": "\t", "\t": "\t", "n": "\n", "v": "\v",
            "f": "\f", "r": "\r", "e": "\x1b", "N": "\x85", "_": "\xa0", "L": "\u2028",
            "P": "\u2029"}
_SECOND_HALF = re.compile(r"\\u[dD][c-fC-F]")  # of a character outside the basic plane
_CODES = {"x": 2, "u": 4, "U": 8}


def scalar_index(text: str, spot: Spot, offset: int) -> int:
    """The index in ``text`` of character ``offset`` of a scalar's value; past its end: its end."""
    for traced in _readings(text, spot):
        characters = list(traced)
        if "".join(character for character, _ in characters) == spot.written:
            if 0 <= offset < len(characters):
                return characters[offset][1]
            return spot.start if offset < 0 else _end(text, spot, characters)
    return spot.start


def _end(text: str, spot: Spot, characters: list[tuple[str, int]]) -> int:
    """The spot just behind the last character that was written."""
    if spot.style in (PLAIN, LITERAL, FOLDED):
        last = characters[-1][1] if characters else spot.start
        return last if text[last:last + 1] in ("\r", "\n") else min(last + 1, spot.end)
    return spot.end - 1


def _readings(text: str, spot: Spot) -> Iterator[_Traced]:
    if spot.style == PLAIN:
        yield _flowing(text, spot.start, spot.end, _nothing)
    elif spot.style == SINGLE:
        yield _flowing(text, spot.start + 1, spot.end - 1, _single)
    elif spot.style == DOUBLE:
        yield _flowing(text, spot.start + 1, spot.end - 1, _double)
    elif spot.style == JSON_TEXT:
        yield _json(text, spot.start, spot.end)
    elif spot.style in (LITERAL, FOLDED):
        yield from _block(text, spot)


# plain and quoted -----------------------------------------------------------------------------
_Escape = Callable[[str, int, int], tuple[list[tuple[str, int]], int] | None]


def _flowing(text: str, index: int, end: int, escape: _Escape) -> _Traced:
    """Lines that flow together: blanks around a line break fold into one space or into breaks."""
    while index < end:
        escaped = escape(text, index, end)
        if escaped is not None:
            characters, index = escaped
            yield from characters
            continue
        if text[index] in " \t\r\n":
            stop = _past(text, index, end, " \t")
            if stop < end and text[stop] in "\r\n":
                characters, index = _breaks(text, stop, end)
                yield from characters or [(" ", stop)]
                continue
        yield text[index], index
        index += 1


def _breaks(text: str, index: int, end: int) -> tuple[list[tuple[str, int]], int]:
    """From a line break on: the breaks that remain (all but the first), the next text's index."""
    found: list[int] = []
    while index < end and text[index] in "\r\n":
        match = _BREAK.match(text, index)
        assert match is not None
        found.append(index)
        index = _past(text, match.end(), end, " \t")
    return [("\n", at) for at in found[1:]], index


def _past(text: str, index: int, end: int, blanks: str) -> int:
    while index < end and text[index] in blanks:
        index += 1
    return index


def _nothing(text: str, index: int, end: int) -> None:
    return None


def _single(text: str, index: int, end: int) -> tuple[list[tuple[str, int]], int] | None:
    return ([("'", index)], index + 2) if text.startswith("''", index) else None


def _double(text: str, index: int, end: int) -> tuple[list[tuple[str, int]], int] | None:
    if text[index] != "\\":
        return None
    sign = text[index + 1]
    if sign in "\r\n":
        return _breaks(text, index + 1, end)
    if sign in _CODES:
        stop = index + 2 + _CODES[sign]
        return [(chr(int(text[index + 2:stop], 16)), index)], stop
    return [(_ESCAPES.get(sign, sign), index)], index + 2


def _json(text: str, start: int, end: int) -> _Traced:
    if text[start] != '"':
        yield from zip(text[start:end], range(start, end), strict=True)
        return
    index = start + 1
    while index < end - 1:
        if text[index] != "\\":
            yield text[index], index
            index += 1
            continue
        size = 2 if text[index + 1] != "u" else 6
        code = int(text[index + 2:index + 6], 16) if size == 6 else 0
        if 0xD800 <= code < 0xDC00 and _SECOND_HALF.match(text, index + 6):
            size = 12
        character: str = _json_character(text[index:index + size])
        yield character, index
        index += size


def _json_character(escape: str) -> str:
    import json

    character: str = json.loads(f'"{escape}"')
    return character


# literal and folded ---------------------------------------------------------------------------
def _block(text: str, spot: Spot) -> Iterator[_Traced]:
    """Readings for each indentation the block could have, the likeliest first."""
    header = _LINE.match(text, spot.start)
    assert header is not None
    lines = [(match.start(), match[1], match.start(2), match[2])
             for match in _LINE.finditer(text, header.end(), spot.end)
             if match.start() < spot.end]
    first = next((line for _, line, _, _ in lines if line.strip(" ")), "")
    widest = max((len(line) - len(line.lstrip(" ")) for _, line, _, _ in lines), default=0)
    likely = len(first) - len(first.lstrip(" "))
    signs = header[1].split("#")[0]
    for indent in [likely, *range(likely), widest]:
        yield _block_reading(lines, indent, spot.style == FOLDED, signs)


def _block_reading(lines: list[tuple[int, str, int, str]], indent: int, folded: bool,
                   signs: str) -> _Traced:
    """The lines of a block without their indentation, folded if asked, chomped as signed."""
    kept = list(lines)
    while kept and not kept[-1][1][indent:]:
        kept.pop()
    for number, (start, line, at, sign) in enumerate(kept):
        content = line[indent:]
        yield from zip(content, range(start + indent, start + indent + len(content)), strict=True)
        if number + 1 < len(kept):
            yield from _fold(kept, number, indent) if folded else [("\n", at)]
        elif sign and "-" not in signs:
            yield "\n", at
    if "+" in signs:
        yield from (("\n", at) for _, _, at, sign in lines[len(kept):] if sign)


def _fold(lines: list[tuple[int, str, int, str]], number: int, indent: int) -> _Traced:
    """What a line break becomes in a folded block: a space, a break, or nothing."""
    def content(index: int) -> str:
        return lines[index][1][indent:]

    at = lines[number][2]
    if not content(number):
        yield "\n", at
        return
    following = next(index for index in range(number + 1, len(lines)) if content(index))
    if content(number)[0] in " \t" or content(following)[0] in " \t":
        yield "\n", at
    elif following == number + 1:
        yield " ", at
