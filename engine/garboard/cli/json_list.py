"""One JSON list over several records, printed as it comes: summaries and refusals."""

from __future__ import annotations

import json
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Self

import click

if TYPE_CHECKING:
    from garboard.errors import Refused
    from garboard.trail import Trail


class JsonList:
    """A list with an entry for each record; prints nothing unless it is ``on``."""

    def __init__(self, *, on: bool) -> None:
        self.on = on
        self._count = 0

    def __enter__(self) -> Self:
        if self.on:
            click.echo("[", nl=False)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None,
                 traceback: TracebackType | None) -> None:
        if self.on and kind is None:
            click.echo("\n]")

    def assessed(self, record: str, trail_file: Path, trail: Trail) -> None:
        """The summary of an assessment."""
        from garboard.reports import json_report

        self._entry(f'"record": {json.dumps(record)}, "trail_file": {json.dumps(str(trail_file))}, '
                    f'"summary": {json_report(trail).rstrip()}')

    def refused(self, record: str, refused: Refused) -> None:
        """Why a record was refused."""
        if self.on:
            problems = [each.as_data() for each in refused.problems]
            self._entry(f'"record": {json.dumps(record)}, "refused": {json.dumps(problems)}')

    def _entry(self, members: str) -> None:
        click.echo(f"{',' if self._count else ''}\n{{{members}}}", nl=False)
        self._count += 1
