"""``garboard compare``: two assessments of one vessel held side by side."""

from __future__ import annotations

import click

from garboard.cli.options import language_option

EPILOG = """\b
Examples:
  garboard compare before.trail.json after.trail.json
  garboard compare before.yaml after.yaml --pack small-craft-lithium
  garboard compare 2025.trail.json 2026.trail.json --json

\b
Each of the two is a trail, or a record that is assessed with --pack on the day of its survey; no
trail is written. Figures of both are computed by this program.

\b
Assessments of another vessel, by other packs, or by another decision rule are not comparable: that
is said, and nothing is compared unless --anyway asks for it.

\b
Exit codes: 0 compared · 1 compared, and something newly fails · 2 not comparable · 3 input refused
"""


@click.command("compare", epilog=EPILOG)
@click.argument("before", metavar="BEFORE")
@click.argument("after", metavar="AFTER")
@click.option("--pack", "packs", multiple=True, metavar="PACK",
              help="Rule pack for records; may be given several times.")
@click.option("--anyway", is_flag=True, help="Compare what is not comparable, and say so.")
@click.option("--json", "as_json", is_flag=True, help="Print the comparison as JSON.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
@language_option
def command(before: str, after: str, packs: tuple[str, ...], anyway: bool, as_json: bool,
            us_units: bool, language: str | None) -> int:
    """Compare two assessments: what newly fails, what was repaired, what moved, which cables."""
    from garboard.assembly import open_workshop
    from garboard.cli.printing import show_screen, show_text, show_warning
    from garboard.cli.trail_or_record import trail_or_record
    from garboard.reports import comparison, comparison_json, comparison_text, in_language

    workshop = open_workshop()
    for problem in workshop.plugins.problems:
        show_warning(problem)
    one, other = (trail_or_record(workshop, each, packs) for each in (before, after))
    compared = comparison(in_language(one, language), in_language(other, language),
                          workshop.aboard(one), workshop.aboard(other), anyway=anyway)
    if as_json:
        show_text(comparison_json(compared))
    else:
        show_screen(lambda width, colour: comparison_text(compared, width, colour,
                                                          us_units=us_units))
    return compared.exit_code
