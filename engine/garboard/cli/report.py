"""``garboard report``: a trail as a file for people, drawn from the trail alone."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

import click

from garboard.cli.options import language_option

if TYPE_CHECKING:
    from garboard.reports.photos import Photo
    from garboard.trail import Trail

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

#: The endings of the kinds of report that show photographs.
WITH_PHOTOS = (".html", ".pdf")

EPILOG = """\b
Examples:
  garboard report launch.trail.json --to launch.html
  garboard report launch.trail.json --to launch.html --us
  garboard report launch.trail.json --to launch.xlsx
  garboard report launch.trail.json --to launch.html --language de
  garboard report launch.trail.json --to launch.pdf --photos ./photos

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
@click.option("--photos", metavar="FOLDER",
              help="Show the photographs that the record names, from this folder (page and PDF).")
@language_option
def command(trail: str, target: str, us_units: bool, photos: str | None, language: str | None,
            ) -> int:
    """Write the report of an assessment from its trail."""
    write = _format_of(target)
    _keep_apart(trail, target)
    from garboard.documents import write_whole
    from garboard.reports import in_language
    from garboard.trail import read_trail

    read = in_language(read_trail(trail), language)
    module, function = write
    shown = {} if photos is None else {"photos": _photos(read, target, Path(photos))}
    drawn: str | bytes = getattr(import_module(module), function)(read, us_units, **shown)
    write_whole(Path(target), drawn.encode() if isinstance(drawn, str) else drawn)
    click.echo(f"Report: {target}  ({read.digest})")
    return 0


def _photos(trail: Trail, target: str, folder: Path) -> tuple[Photo, ...]:
    """The photographs of a record; CommandRefused for a kind of report that shows none."""
    from garboard.documents import read_beside
    from garboard.errors import CommandRefused, Place, Problem
    from garboard.reports.photos import photos_of

    if Path(target).suffix.lower() not in WITH_PHOTOS:
        raise CommandRefused([Problem("photos-nowhere", Place(file=target),
                                      found=Path(target).suffix,
                                      expected=" or ".join(WITH_PHOTOS))])
    return photos_of(trail, lambda name: read_beside(folder, name))


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
