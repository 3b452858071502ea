"""``garboard pack prove``: run the cases of a pack, say what differs and what they show."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from garboard.assembly import Workshop
    from garboard.authoring import Coverage

EPILOG = """\b
Examples:
  garboard pack prove small-craft-lithium
  garboard pack prove ./house-rules --rule spare-fuse-aboard
  garboard pack prove ./house-rules --watch

\b
Cases stand in the folder 'cases' of the pack. The table shows how many findings of each kind the
cases of a rule expect; '-' is what a case file says cannot occur, '0' what no case shows yet.

\b
Exit codes: 0 every case holds · 1 a case differs, or --complete and something is not shown yet
3 the pack or a case was refused · 4 a calculation failed
"""
HEADS = ("passed", "failed", "missing", "not appl.", "at limit")


@click.command("prove", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
@click.option("--rule", metavar="RULE", help="Only the cases about this rule.")
@click.option("--complete", is_flag=True, help="Ask that the cases show every kind of outcome.")
@click.option("--watch", is_flag=True,
              help="Proofread and prove again whenever a file of the pack is saved.")
def command(pack: str, rule: str | None, complete: bool, watch: bool) -> int:
    """Run the cases of a pack: what differs, and which outcomes they show, rule by rule."""
    from garboard.assembly import open_workshop

    if watch:
        from garboard.cli.pack_watch import watched

        return watched(open_workshop(), pack, rule)
    return proved(open_workshop(), pack, rule, complete=complete)


def proved(workshop: Workshop, pack: str, rule: str | None, *, complete: bool = False) -> int:
    """Prove a pack once, and print it."""
    from garboard.authoring import Bench, covered
    from garboard.errors import render

    bench = Bench.of(workshop, pack, rule)
    proofs = []
    for number, proof in enumerate(bench.proofs(), 1):
        proofs.append(proof)
        for difference in proof.differences:
            click.echo(f"case {proof.case.name}\n{render(difference)}\n")
        for failure in proof.failures:
            click.echo(f"case {proof.case.name}\na calculation failed: {failure}\n")
        if sys.stderr.isatty():
            click.echo(f"\r{number} of {len(bench.book.cases)} cases", nl=False, err=True)
    if sys.stderr.isatty():
        click.echo("\r" + " " * 40 + "\r", nl=False, err=True)
    table, contradictions = covered(bench.rules, bench.book, proofs)
    for problem in contradictions:
        click.echo(f"{render(problem)}\n")
    rows = [each for each in table if rule in (None, each.rule)]
    _show(rows)
    wrong = sum(not each.holds for each in proofs)
    lacking = sum(len(each.missing) for each in rows)
    click.echo(f"\n{len(proofs)} cases of {len(rows)} rules: {len(proofs) - wrong} hold, "
               f"{wrong} differ; {lacking} kinds of outcome are not shown yet.")
    if any(each.refused for each in proofs):
        return 3
    if any(each.failures for each in proofs):
        return 4
    return 1 if wrong or contradictions or (complete and lacking) else 0


def _show(table: Sequence[Coverage]) -> None:
    from garboard.packs.cases import KINDS

    width = max((len(each.rule) for each in table), default=0)
    click.echo(f"{'':{width}}  " + "  ".join(f"{head:>9}" for head in HEADS))
    for each in table:
        cells = (str(each.shown[kind]) if each.shown[kind] or kind not in each.not_possible
                 else "-" for kind in KINDS)
        click.echo(f"{each.rule:{width}}  " + "  ".join(f"{cell:>9}" for cell in cells))
