"""Several records: a table of what came out, printed when all are assessed."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from garboard.reports import RecordLine
    from garboard.trail import Trail


class Several:
    """Gathers a line for each record; does nothing unless it is ``on``."""

    def __init__(self, *, on: bool) -> None:
        self._on = on
        self._lines: list[RecordLine] = []
        self._refused: list[str] = []

    def assessed(self, record: str, trail_file: Path, trail: Trail) -> None:
        """A record and its trail."""
        if self._on:
            from garboard.reports import record_line

            self._lines.append(record_line(trail, record, str(trail_file)))

    def refused(self, record: str) -> None:
        """A record that was refused; why has been shown."""
        self._refused.append(record)

    def show(self) -> None:
        """The table."""
        if self._on:
            from garboard.cli.printing import show_screen
            from garboard.reports import several_text

            show_screen(lambda width, colour: several_text(self._lines, self._refused, width,
                                                           colour))
