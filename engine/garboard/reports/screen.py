"""Where a report is shown: how wide, whether in colour, in which characters."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from typing import Final, NamedTuple, TextIO

from garboard.reports.sheet import NARROWEST, WIDEST

PIPE_WIDTH: Final = 100

#: What to write where the characters of the report cannot be shown.
_PLAIN: Final = str.maketrans({
    "✗": "x", "✓": "+", "–": "-", "─": "-", "═": "=", "•": "*", "Ω": "ohm", "µ": "u", "²": "2",
    "°": "deg ", "·": ".", "×": "x", "≥": ">=", "≤": "<=", "☐": "[ ]"})


class Screen(NamedTuple):
    """How to show a report."""

    width: int
    colour: bool


def screen_of(stream: TextIO, environment: Mapping[str, str]) -> Screen:
    """A terminal's own width, in colour unless NO_COLOR is set; a pipe or file 100 wide, plain."""
    if not stream.isatty():
        return Screen(PIPE_WIDTH, colour=False)
    columns = shutil.get_terminal_size((PIPE_WIDTH, 24)).columns
    colour = not environment.get("NO_COLOR") and environment.get("TERM") != "dumb"
    return Screen(min(max(columns, NARROWEST), WIDEST), colour)


def for_encoding(text: str, encoding: str | None) -> str:
    """The text in characters that ``encoding`` has; symbols become letters, what is left ``?``."""
    encoding = encoding or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        return text.translate(_PLAIN).encode(encoding, "replace").decode(encoding)
    return text
