"""Reports and packs to standard output, warnings to standard error."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import click

from garboard.errors import CommandRefused, Problem, render
from garboard.trail import Trail


def show_report(trail: Trail, written_to: Path, *, as_json: bool, whole: bool,
                us_units: bool) -> None:
    """The report of one trail, short or whole, and where the trail is."""
    if as_json:
        from garboard.reports import json_report

        click.echo(json_report(trail))
        click.echo(f"Trail: {written_to}", err=True)
        return
    from garboard.reports import for_encoding, screen_of, terminal_report

    screen = screen_of(sys.stdout, os.environ)
    text = terminal_report(trail, screen.width, screen.colour, us_units=us_units, whole=whole)
    if not whole:
        text += "\nEvery finding with its figures and sources: --all, or garboard report"
    text += f"\nTrail: {written_to}  ({trail.digest})"
    click.echo(for_encoding(text, sys.stdout.encoding), color=screen.colour)


def show_text(text: str) -> None:
    """A text of reports, in the characters that standard output has."""
    from garboard.reports import for_encoding

    click.echo(for_encoding(text, sys.stdout.encoding))


def show_screen(draw: Callable[[int, bool], str]) -> None:
    """A text that is drawn for a width, in colour or not."""
    from garboard.reports import for_encoding, screen_of

    screen = screen_of(sys.stdout, os.environ)
    text = draw(screen.width, screen.colour).rstrip("\n")
    click.echo(for_encoding(text, sys.stdout.encoding), color=screen.colour)


def show_warning(problem: Problem) -> None:
    """A warning, in the form of all problems."""
    click.echo(render(problem), err=True)


def show_pack(resolved: Mapping[str, Any], digest: str, name: str | None, *,
              as_json: bool) -> None:
    """A resolved pack, or one rule or limit of it; CommandRefused when there is none."""
    from garboard.reports import for_encoding, nearest_piece, pack_text, piece_text, screen_of

    screen = screen_of(sys.stdout, os.environ)
    text = (pack_text(resolved, digest, screen.width, screen.colour) if name is None
            else piece_text(resolved, name, screen.width, screen.colour))
    if text is None:
        raise CommandRefused([Problem("pack-has-none", found=name or "",
                                      expected=f"a rule or limit of {resolved['pack']}",
                                      hint=nearest_piece(resolved, name or ""))])
    if as_json:
        click.echo(json.dumps(_part(resolved, name), indent=2))
        return
    click.echo(for_encoding(text.rstrip("\n"), sys.stdout.encoding), color=screen.colour)


def _part(resolved: Mapping[str, Any], name: str | None) -> Any:
    if name is None:
        return resolved
    found = [each for each in resolved["rules"] if each["id"] == name]
    return found[0] if found else resolved["limits"][name]
