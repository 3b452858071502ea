"""The page as one file: the parts put together, with style sheet, script and policy inside."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from garboard.reports.html.book import Book
from garboard.reports.html.environment import environment, source_hash
from garboard.reports.html.views.faults import faults
from garboard.reports.html.views.findings import FindingsByPlace
from garboard.reports.html.views.front import front
from garboard.reports.html.views.open_facts import open_facts
from garboard.reports.html.views.record import record
from garboard.reports.html.views.sources import method_numbers, methods, sources
from garboard.reports.html.views.things import Things
from garboard.reports.html.views.times import times
from garboard.reports.html.views.workings import Workings
from garboard.reports.photos import Photo
from garboard.reports.summary import pack_name
from garboard.reports.words import SIGNS
from garboard.trail import OUTCOMES, SEVERITIES, Trail


def html_report(trail: Trail, us_units: bool = False, photos: Sequence[Photo] = ()) -> str:
    """The page of a trail: one HTML document that needs nothing else, in ASCII and UTF-8 text.

    The same trail and units give the same text. Whatever stands in the trail is shown as text.
    """
    return drawn_page(trail, us_units, "page.css", script=True, photos=photos)


def drawn_page(trail: Trail, us_units: bool, sheet: str, *, script: bool,
               photos: Sequence[Photo] = ()) -> str:
    """The page under one of the style sheets among the templates, with or without its script."""
    book = Book(trail, "us" if us_units else "metric")
    things = Things(book)
    templates = environment()
    first = front(book)
    style = templates.get_template(sheet).render(
        vessel=first["vessel"], date=trail.date, digest=trail.digest,
        paper="letter" if us_units else "A4")
    code = templates.get_template("page.js").render() if script else ""
    workings = Workings(book, things, method_numbers(book))
    return templates.get_template("page.html").render(
        trail=trail, front=first, things=things, key=things.key(), faults=faults(book, things),
        times=times(book, things), photos=photos,
        places=FindingsByPlace(book, things).places(), open=open_facts(book),
        signs=SIGNS, workings=workings.rules(), deeper=workings.rest(), sources=sources(book),
        methods=methods(book), record=record(book, things), digests=_digests(trail),
        outcomes=OUTCOMES, severities=SEVERITIES, style=_raw(style), script=_raw(code),
        policy=f"default-src 'none'; {'img-src data:; ' if photos else ''}"
               f"style-src {source_hash(style)}; script-src {source_hash(code)}")


def _digests(trail: Trail) -> list[tuple[str, str]]:
    return [("Trail", trail.digest), ("Record", str(trail.assessment["record"]["digest"])),
            *((f"Pack {pack_name(pack)}", str(pack["digest"])) for pack in trail.packs)]


def _raw(text: str) -> Any:
    """Our own style sheet or script, which holds nothing of the trail that could end it."""
    from markupsafe import Markup

    return Markup(text)
