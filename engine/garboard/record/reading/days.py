"""Days that do not go together: evidence taken after the survey whose record it stands in."""

from __future__ import annotations

from datetime import date

from garboard.record.reading.draft import Draft


def check_days(draft: Draft) -> None:
    """Warn of evidence that is later than the survey."""
    surveyed = draft.things["survey"].value("date")
    if not isinstance(surveyed, date):
        return
    for thing in draft.evidence.values():
        taken = thing.value("taken")
        if isinstance(taken, date) and taken > surveyed:
            draft.notes.warn("later-than-survey", (*thing.path, "taken"), f"{taken}",
                             f"{surveyed} or before",
                             "write the day of the last visit as the date of the survey")
