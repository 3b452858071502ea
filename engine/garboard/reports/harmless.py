"""Text of others made harmless to show: no control characters, no turned writing, no floods.

A name in a record may hold anything. Shown on a terminal, an escape sequence would move the cursor,
a right-to-left mark would turn the rest of the line round, and ten thousand characters would bury
the report. What has no shape of its own is written as its code (``\\x1b``, ``\\u202e``).
"""

from __future__ import annotations

from typing import Final
from unicodedata import category, combining, normalize

LONGEST_NAME: Final = 160
LONGEST_TEXT: Final = 2_000
_MOST_MARKS: Final = 2


def harmless(text: object, longest: int = LONGEST_TEXT) -> str:
    """``text`` on one line, in characters that have a shape, cut at ``longest`` characters."""
    whole = str(text)
    cut = whole[:longest]
    line = " ".join(cut.split())
    if not line.isascii() or not line.isprintable():
        line = "".join(_visible(normalize("NFC", line)))
    return line if len(whole) <= longest else f"{line} ... ({len(whole):,} characters)"


def harmless_name(text: object) -> str:
    """The same for a name: shorter."""
    return harmless(text, LONGEST_NAME)


def _visible(line: str) -> list[str]:
    shown: list[str] = []
    marks = 0
    for character in line:
        marks = marks + 1 if combining(character) else 0
        if marks > _MOST_MARKS:
            continue
        shown.append(character if _has_shape(character) else _code(character))
    return shown


def _has_shape(character: str) -> bool:
    return character.isprintable() and category(character) != "Co"


def _code(character: str) -> str:
    number = ord(character)
    if number < 0x100:
        return f"\\x{number:02x}"
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
