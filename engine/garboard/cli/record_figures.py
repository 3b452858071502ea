"""``garboard record figures``: figures of a record by name, without any pack."""

from __future__ import annotations

import click

EPILOG = """\b
Examples:
  garboard record figures launch.yaml
  garboard record figures launch.yaml bus.fault_current device.prospective_current
  garboard record figures launch.yaml conductor.ampacity --of w1 --of w2

\b
Without names, the figures are shown that a comparison looks at. garboard quantities lists all
names; garboard working shows how a figure of an assessment was found, step by step.

\b
Exit codes: 0 shown · 3 the record or a name was refused
"""


@click.command("figures", epilog=EPILOG)
@click.argument("record", metavar="RECORD")
@click.argument("names", metavar="[QUANTITY]...", nargs=-1)
@click.option("--of", "items", multiple=True, metavar="ID",
              help="Only of this thing; may be given several times.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of text.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
def command(record: str, names: tuple[str, ...], items: tuple[str, ...], as_json: bool,
            us_units: bool) -> int:
    """Show figures of a record: fault currents, ampacities, limits of the bank, and the like."""
    from garboard.assembly import open_workshop
    from garboard.cli.printing import show_screen, show_text, show_warning
    from garboard.reports import asked_json, asked_text

    workshop = open_workshop()
    for problem in workshop.plugins.problems:
        show_warning(problem)
    asked = workshop.asked(record, names, items)
    if as_json:
        show_text(asked_json(asked))
    else:
        show_screen(lambda width, colour: asked_text(asked, width, colour, us_units=us_units))
    return 0
