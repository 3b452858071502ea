"""The vessel's previous assessment, named by the digest of its trail."""

from __future__ import annotations

from garboard.assessment.day import Day
from garboard.errors import CommandRefused, Problem
from garboard.record import Record
from garboard.trail import Trail


def previous_digest(previous: Trail, record: Record, day: Day) -> str:
    """The digest to name; CommandRefused when it is of another vessel or of a later day.

    A vessel that is not named in both records counts as another.
    """
    name = record.things["vessel"].value("name")
    if not isinstance(name, str) or previous.vessel != name:
        raise CommandRefused([Problem(
            "previous-other-vessel", found=f"{previous.vessel or 'not named'}",
            expected=str(name or "a vessel that is named in both records"))])
    if previous.date > day.day.isoformat():
        raise CommandRefused([Problem("previous-later", found=previous.date,
                                      expected=f"{day.day.isoformat()} or before")])
    return previous.digest
