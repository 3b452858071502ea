"""``garboard trail history``: the chain of a vessel's assessments, each naming the one before."""

from __future__ import annotations

import click

EPILOG = """\b
Examples:
  garboard trail history 2024.trail.json 2025.trail.json 2026.trail.json
  garboard trail history trails/*.json --json

\b
An assessment names the one before it when it is made with 'assess --previous TRAIL'. Every file is
read and its digest checked. The order of the files does not matter.

\b
Exit codes: 0 one whole chain · 1 a gap, a fork, another vessel, or days out of order · 3 a trail is
refused
"""


@click.command("history", epilog=EPILOG)
@click.argument("files", nargs=-1, required=True, metavar="FILES...")
@click.option("--json", "as_json", is_flag=True, help="Print the chain as JSON.")
def command(files: tuple[str, ...], as_json: bool) -> int:
    """Check that trails form one chain, and say what a chain does not prove."""
    from garboard.cli.printing import show_screen, show_text
    from garboard.cli.progress import progress
    from garboard.reports import history_json, history_of, history_text
    from garboard.trail import read_trail

    trails = []
    with progress("trails read", len(files)) as tell:
        for done, file in enumerate(files):
            tell(done)
            trails.append((file, read_trail(file)))
    history = history_of(trails)
    if as_json:
        show_text(history_json(history))
    else:
        show_screen(lambda width, colour: history_text(history, width, colour))
    return 0 if history.whole else 1
