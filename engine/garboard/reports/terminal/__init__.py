"""The report for a terminal: text that a surveyor reads without help, from the trail alone.

It takes the order of the page: result with counts, cautions and scope, list of work, findings, what
to find out, digests.
"""

from __future__ import annotations

from garboard.reports.names import Names
from garboard.reports.sheet import Sheet
from garboard.reports.terminal.closing import cautions, counts, digests
from garboard.reports.terminal.failed import failed
from garboard.reports.terminal.head import exceptions, head, result
from garboard.reports.terminal.page import Page
from garboard.reports.terminal.rest import irregularities, not_applicable, passed
from garboard.reports.terminal.several import RecordLine, record_line, several_text
from garboard.reports.terminal.unassessed import find_out, unassessed
from garboard.reports.terminal.work import work
from garboard.trail import Trail

__all__ = ["RecordLine", "record_line", "several_text", "terminal_report"]

_FIRST = (head, exceptions, result, counts, cautions, work, failed)
_SHORT = (*_FIRST, irregularities, find_out, digests)
_WHOLE = (*_FIRST, unassessed, passed, not_applicable, irregularities, find_out, digests)


def terminal_report(trail: Trail, width: int = 100, colour: bool = False,
                    us_units: bool = False, *, whole: bool = True) -> str:
    """The report as text of at most ``width`` cells a line (60 to 110), in colour or plain.

    A report that is not ``whole`` gives one by one only the findings that failed. The same trail,
    width and choices give the same text. Whatever stands in the trail is shown as harmless text.
    """
    page = Page(trail, Sheet(width, colour), Names(trail), "us" if us_units else "metric")
    for part in _WHOLE if whole else _SHORT:
        part(page)
    return str(page.sheet)
