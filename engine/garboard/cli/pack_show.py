"""``garboard pack show``: the resolved pack, or one of its rules."""

from __future__ import annotations

import click

EPILOG = """\b
Examples:
  garboard pack show small-craft-lithium
  garboard pack show small-craft-lithium breaking-capacity

\b
Exit codes: 0 shown · 3 the pack was refused, or has no such rule
"""


@click.command("show", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
@click.argument("rule", metavar="[RULE]", required=False)
def command(pack: str, rule: str | None) -> int:
    """Print the resolved pack, or one rule or limit of it."""
    from garboard.assembly import open_workshop

    (checked,) = open_workshop().load_packs([pack])
    for each in checked.pack.rules:
        if rule in (None, each.id):
            click.echo(f"{each.id}: {each.title}")
    return 0
