"""Reports to standard output, warnings to standard error."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

import click

from garboard.errors import Problem, render
from garboard.trail import Trail

#: Width of a report that goes into a file or pipe.
PIPE_WIDTH = 100


def show_report(trail: Trail, written_to: Path, *, as_json: bool, us_units: bool) -> None:
    """The report of one trail, and where the trail is."""
    if as_json:
        from garboard.reports import json_report

        click.echo(json_report(trail))
        click.echo(f"trail: {written_to}", err=True)
        return
    from garboard.reports import terminal_report

    to_screen = sys.stdout.isatty()
    width = shutil.get_terminal_size().columns if to_screen else PIPE_WIDTH
    colour = to_screen and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"
    click.echo(terminal_report(trail, width, colour, us_units=us_units), color=colour)
    click.echo(f"Trail: {written_to}  ({trail.digest})")


def show_warning(problem: Problem) -> None:
    """A warning, in the form of all problems."""
    click.echo(render(problem), err=True)
