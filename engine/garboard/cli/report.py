"""``garboard report``: a trail as a file for people, drawn from the trail alone."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

import click

from garboard.cli.options import language_option

#: What can be written, by the ending of the file: the module and its function of a trail and units.
FORMATS = {
    ".csv": ("garboard.reports.files.comma_separated", "csv_report"),
    ".html": ("garboard.reports.html", "html_report"),
    ".jsonld": ("garboard.reports.files.earl", "earl_report"),
    ".md": ("garboard.reports.files.markdown", "markdown_report"),
    ".pdf": ("garboard.reports.files.paper", "pdf_report"),
    ".xlsx": ("garboard.reports.files.workbook", "xlsx_report"),
    ".xml": ("garboard.reports.files.junit", "junit_report"),
}

EPILOG = """\b
Examples:
  garboard report launch.trail.json --to launch.html
  garboard report launch.trail.json --to launch.html --us
  garboard report launch.trail.json --to launch.xlsx
  garboard report launch.trail.json --to launch.html --language de

\b
The ending of the file says what is written:
  .html    one page that needs nothing else: readable without scripts, ready to print
  .pdf     the same page for paper (pip install 'garboard[pdf]')
  .csv     result, findings and figures as one table; the column kind tells rows apart
  .xlsx    the same as a workbook of three sheets (pip install 'garboard[xlsx]')
  .md      Markdown
  .xml     JUnit: failed is a failure, not assessed an error, not applicable skipped
  .jsonld  EARL 1.0: failed, passed, cantTell (not assessed), inapplicable

\b
Cautions and what was not examined stand in every one.

The same trail gives the same bytes.
"""


@click.command("report", epilog=EPILOG)
@click.argument("trail", metavar="TRAIL")
@click.option("--to", "target", required=True, metavar="FILE",
              help="The file to write; its ending says what is written.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
@language_option
def command(trail: str, target: str, us_units: bool, language: str | None) -> int:
    """Write the report of an assessment from its trail."""
    write = _format_of(target)
    _keep_apart(trail, target)
    from garboard.documents import write_whole
    from garboard.reports import in_language
    from garboard.trail import read_trail

    read = in_language(read_trail(trail), language)
    module, function = write
    drawn: str | bytes = getattr(import_module(module), function)(read, us_units)
    write_whole(Path(target), drawn.encode() if isinstance(drawn, str) else drawn)
    click.echo(f"Report: {target}  ({read.digest})")
    return 0


def _format_of(target: str) -> tuple[str, str]:
    """What a file's ending asks for; CommandRefused when nothing is known by it."""
    ending = Path(target).suffix.lower()
    if ending not in FORMATS:
        from garboard.errors import CommandRefused, Place, Problem

        raise CommandRefused([Problem(
            "report-ending-unknown", Place(file=target), found=ending or "no ending",
            expected=f"one of {', '.join(FORMATS)}",
            hint="the ending of the file says what is written")])
    return FORMATS[ending]


def _keep_apart(trail: str, target: str) -> None:
    """CommandRefused when the report would take the place of its trail."""
    if Path(trail).resolve() == Path(target).resolve():
        from garboard.errors import CommandRefused, Place, Problem

        raise CommandRefused([Problem(
            "report-over-trail", Place(file=target), found="the trail itself",
            hint="name another file with --to")])
