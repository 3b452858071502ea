"""``garboard pack proofread``: whether a pack loads, and what looks wrong although it does."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from garboard.assembly import Workshop

EPILOG = """\b
Examples:
  garboard pack proofread ./house-rules
  garboard pack proofread small-craft-lithium

\b
Warnings: a rule that cannot fail, cannot pass or can never apply, one that is covered by another
or contrary to it, a limit that is not used. They rest on what the rule says and on what can be
written down at all (a length is never negative, a choice is one of its words). They never make a
pack unusable. One that is meant is explained in a case file, under 'explained'.

\b
Exit codes: 0 the pack can be used · 3 the pack or one of its case files was refused
"""


@click.command("proofread", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
def command(pack: str) -> int:
    """Check a pack as loading does, and warn of what looks wrong."""
    from garboard.assembly import open_workshop

    return proofread_once(open_workshop(), pack)


def proofread_once(workshop: Workshop, pack: str) -> int:
    """Proofread a pack once, and print it."""
    from garboard.authoring import Bench, proofread
    from garboard.errors import render

    bench = Bench.of(workshop, pack)
    read = proofread(bench.checked, bench.book, bench.checked.compiled.vocabulary)
    for problem in read.warnings:
        click.echo(f"{render(problem)}\n")
    for problem, why in read.explained:
        click.echo(f"{problem.place}: {problem.code}, explained: {why}\n")
    for names in read.not_tried:
        click.echo(f"not tried, for too many combinations: {names}\n")
    click.echo(f"{bench.checked.pack.name} {bench.checked.pack.version} can be used: "
               f"{len(bench.checked.pack.rules)} rules, {len(read.warnings)} warnings, "
               f"{len(read.explained)} explained.")
    return 0
