"""``garboard pack new``: a small pack, with comments, that proves itself."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard pack new house-rules
  garboard pack new teaching-pack --in packs

\b
Exit codes: 0 written · 3 the folder is there already, or cannot be written
"""


@click.command("new", epilog=EPILOG)
@click.argument("name", metavar="NAME")
@click.option("--in", "into", metavar="FOLDER", default=".",
              help="Folder to write it into  [default: the current folder]")
def command(name: str, into: str) -> int:
    """Write a small commented pack to start from, with rules, cases and a record."""
    from garboard.authoring import new_pack

    files = new_pack(name, Path(into))
    for file in files:
        click.echo(f"written: {file}")
    place = f"./{name}" if into == "." else Path(into) / name
    click.echo(f"\nNext:\n  garboard pack prove {place}")
    return 0
