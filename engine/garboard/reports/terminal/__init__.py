"""The report for a terminal: text that a surveyor reads without help, from the trail alone."""

from __future__ import annotations

from garboard.reports.names import Names
from garboard.reports.sheet import Sheet
from garboard.reports.terminal.closing import closing, counts
from garboard.reports.terminal.failed import failed
from garboard.reports.terminal.head import exceptions, head, result
from garboard.reports.terminal.page import Page
from garboard.reports.terminal.rest import irregularities, not_applicable, passed
from garboard.reports.terminal.unassessed import unassessed
from garboard.trail import Trail

__all__ = ["terminal_report"]


def terminal_report(trail: Trail, width: int = 100, colour: bool = False,
                    us_units: bool = False) -> str:
    """The report as text of at most ``width`` cells a line (60 to 110), in colour or plain.

    The same trail, width and choices give the same text. Whatever stands in the trail is shown as
    harmless text.
    """
    page = Page(trail, Sheet(width, colour), Names(trail), "us" if us_units else "metric")
    for part in (head, exceptions, result, failed, unassessed, irregularities, passed,
                 not_applicable, counts, closing):
        part(page)
    return str(page.sheet)
