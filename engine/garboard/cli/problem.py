"""``garboard problem``: what a problem code means, and what can be done about it."""

from __future__ import annotations

import textwrap

import click

EPILOG = """\b
Examples:
  garboard problem unit-missing
  garboard problem

\b
Exit codes: 0 shown · 3 there is no such code
"""
_WIDTH = 100


@click.command("problem", epilog=EPILOG)
@click.argument("code", required=False)
def command(code: str | None) -> int:
    """Explain the code of a problem, as it stands after the place; without one, list them all."""
    from garboard.errors import CATALOGUE, CommandRefused, Problem, did_you_mean

    if code is None:
        width = max(map(len, CATALOGUE))
        for each in sorted(CATALOGUE):
            click.echo(f"{each:<{width}}  {CATALOGUE[each].title}")
        return 0
    if code not in CATALOGUE:
        raise CommandRefused([Problem("code-unknown", found=code,
                                      hint=did_you_mean(code, CATALOGUE)
                                      or "garboard problem lists them all")])
    click.echo(f"{code}: {CATALOGUE[code].title}")
    click.echo(textwrap.fill(CATALOGUE[code].explanation, _WIDTH, initial_indent="  ",
                             subsequent_indent="  "))
    return 0
