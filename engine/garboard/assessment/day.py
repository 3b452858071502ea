"""The date of an assessment: given, else the survey's; never the clock."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from garboard.errors import CommandRefused, Place, Problem, RecordRefused
from garboard.record import Record


@dataclass(frozen=True, slots=True)
class Day:
    """The day an assessment is made for, and where it is from."""

    day: date
    origin: Literal["survey", "command line"]


def assessment_day(record: Record, given: str | None) -> Day:
    """The day given on the command line, else that of the survey in the record."""
    if given is not None:
        return Day(_given(given), "command line")
    surveyed = record.things["survey"].value("date")
    if isinstance(surveyed, date):
        return Day(surveyed, "survey")
    file = None if record.document is None else record.document.file
    raise RecordRefused([Problem(
        "date-missing", Place(file=file, path="survey.date"), expected="a date",
        hint="record survey: {date: 2026-04-18}, or give --on 2026-04-18")])


def _given(text: str) -> date:
    try:
        if len(text) != 10:
            raise ValueError
        return date.fromisoformat(text)
    except ValueError:
        raise CommandRefused([Problem(
            "date-unreadable", found=f"--on {text}", expected="year-month-day",
            hint="write it like 2026-04-18")]) from None
