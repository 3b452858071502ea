"""``garboard pack show``: the resolved pack, or one of its rules, with the layer of each part."""

from __future__ import annotations

import click

from garboard.cli.options import language_option

EPILOG = """\b
Examples:
  garboard pack show small-craft-lithium
  garboard pack show small-craft-lithium breaking-capacity
  garboard pack show ./house-rules --json

\b
A pack that builds on others finds them beside itself, among the shipped packs, or where --pack
says. RULE may be the name of a limit too.

\b
Exit codes: 0 shown · 3 the pack was refused, or has no such rule or limit
"""


@click.command("show", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
@click.argument("rule", metavar="[RULE]", required=False)
@click.option("--pack", "below", multiple=True, metavar="PACK",
              help="A pack that PACK builds on; may be given several times.")
@click.option("--json", "as_json", is_flag=True, help="Print the resolved form as JSON.")
@language_option
def command(pack: str, rule: str | None, below: tuple[str, ...], as_json: bool,
            language: str | None) -> int:
    """Print a pack as it is applied, each part with the layer that set it."""
    from garboard.assembly import open_workshop
    from garboard.cli.printing import show_pack, show_warning
    from garboard.reports import told_pack

    checked = open_workshop().load_packs([pack, *below])[0]
    for problem in checked.warnings:
        show_warning(problem)
    told = told_pack(checked.pack.as_data(), language)
    show_pack(told, checked.pack.digest, rule, as_json=as_json)
    return 0
