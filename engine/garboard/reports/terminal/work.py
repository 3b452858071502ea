"""The list of work: one entry for every rule that failed, the worst severity first."""

from __future__ import annotations

from garboard.reports.many import named
from garboard.reports.terminal.page import Page
from garboard.reports.work import work_of


def work(page: Page) -> None:
    """What to do, for which things, about which rule."""
    listed = work_of(page.trail)
    if not listed.jobs:
        return
    sheet = page.sheet
    sheet.heading("LIST OF WORK")
    if listed.ending:
        sheet.paragraph(f"All of it {listed.ending}")
    for severity, words, jobs in listed.by_severity():
        sheet.blank()
        sheet.paragraph(f"{severity.upper()}: {words}", style=severity)
        for job in jobs:
            sheet.bullet(f"{job.number:>3}", f"{job.what}", style="strong")
            items = named(page.names.item, job.findings)
            apart = f" Set aside for now by {', '.join(job.dispensed)}." if job.dispensed else ""
            sheet.paragraph(f"{items}: {job.title}.{apart}", 4)
