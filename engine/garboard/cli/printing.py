"""Reports to standard output, warnings to standard error."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import click

from garboard.errors import Problem, render
from garboard.trail import Trail


def show_report(trail: Trail, written_to: Path, *, as_json: bool, us_units: bool) -> None:
    """The report of one trail, and where the trail is."""
    if as_json:
        from garboard.reports import json_report

        click.echo(json_report(trail))
        click.echo(f"Trail: {written_to}", err=True)
        return
    from garboard.reports import for_encoding, screen_of, terminal_report

    screen = screen_of(sys.stdout, os.environ)
    text = terminal_report(trail, screen.width, screen.colour, us_units=us_units)
    text += f"\nTrail: {written_to}  ({trail.digest})"
    click.echo(for_encoding(text, sys.stdout.encoding), color=screen.colour)


def show_warning(problem: Problem) -> None:
    """A warning, in the form of all problems."""
    click.echo(render(problem), err=True)
