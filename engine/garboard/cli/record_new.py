"""``garboard record new``: a survey sheet with every key a record may have."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard record new launch.yaml
  garboard record new launch.yaml --pack small-craft-lithium

\b
The sheet is a record in which every key stands as a comment, with what it means and how its value
is written. It can be assessed at any time; what is not filled in yet is listed under "to find out".

\b
Exit codes: 0 written · 3 the file is there already, cannot be written, or a pack was refused
"""


@click.command("new", epilog=EPILOG)
@click.argument("file", metavar="FILE")
@click.option("--pack", "packs", multiple=True, metavar="PACK",
              help="A pack whose questions are put on the sheet; may be given several times.")
def command(file: str, packs: tuple[str, ...]) -> int:
    """Write a survey sheet: a record to be filled in aboard, key by key."""
    from garboard.assembly import open_workshop
    from garboard.assessment import write_blank_record

    checked = open_workshop().load_packs(packs) if packs else ()
    write_blank_record(Path(file), checked)
    click.echo(f"written: {file}")
    named = "".join(f" --pack {each}" for each in packs) or " --pack PACK"
    click.echo(f"\nNext, when something is filled in:\n  garboard assess {file}{named}")
    return 0
