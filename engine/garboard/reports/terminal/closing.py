"""The end of the report: counts, what to bear in mind, digests."""

from __future__ import annotations

from garboard.reports.cautions import cautions_of, left_to_a_person, not_examined_of
from garboard.reports.counts import plural, rules_looked_at, severity_table, share
from garboard.reports.summary import pack_name
from garboard.reports.terminal.page import Page
from garboard.trail import FAILED, NOT_ASSESSED, PASSED


def counts(page: Page) -> None:
    """How many of what, with what each is a count of."""
    sheet, numbers = page.sheet, page.trail.outcome["counts"]
    sheet.heading("COUNTS")
    looked_at, rules = rules_looked_at(page.trail)
    sheet.paragraph(f"{share(looked_at, rules, 'rule')} in "
                    f"{plural(len(page.trail.packs), 'pack')} applied to something aboard, or may "
                    f"apply. {share(numbers['applying'], numbers['findings'], 'finding')} "
                    f"{'is' if numbers['applying'] == 1 else 'are'} on rules that apply:")
    sheet.line(_cells_of("", [*_COLUMNS, "together"]), "faint")
    table = severity_table(page.trail)
    for severity, row in table.items():
        sheet.line(_cells_of(severity, _with_sum([row[each] for each in _COLUMNS])))
    sums = [sum(row[each] for row in table.values()) for each in _COLUMNS]
    sheet.line(_cells_of("together", _with_sum(sums)), "strong")
    if numbers["dispensed"]:
        sheet.paragraph(f"{numbers['dispensed']} of the {numbers['failed']} that failed "
                        f"{'is' if numbers['dispensed'] == 1 else 'are'} set aside by a "
                        "dispensation.")


_COLUMNS = (FAILED, NOT_ASSESSED, PASSED)


def _with_sum(numbers: list[int]) -> list[str]:
    return [str(number) for number in (*numbers, sum(numbers))]


def _cells_of(label: str, columns: list[str]) -> str:
    return f"  {label:<9}" + "".join(f"{column:>14}" if column == NOT_ASSESSED or number == 1
                                     else f"{column:>10}" for number, column in enumerate(columns))


def cautions(page: Page) -> None:
    """Cautions, and what was not examined."""
    sheet, trail = page.sheet, page.trail
    sheet.heading("BEAR IN MIND")
    for each in cautions_of(trail):
        sheet.bullet("!", each)
    sheet.heading("NOT EXAMINED")
    for each in not_examined_of(trail):
        sheet.bullet("•", each)
    if left_to_a_person(trail):
        sheet.bullet("•", "What a rule that covers a part of its source leaves to a person; it "
                          "stands with the rule.")


def digests(page: Page) -> None:
    """What the result can be checked against."""
    sheet, trail = page.sheet, page.trail
    sheet.heading("DIGESTS")
    sheet.field("Trail", trail.digest)
    sheet.field("Record", str(trail.assessment["record"]["digest"]))
    for pack in trail.packs:
        sheet.field("Pack", f"{pack['digest']} {pack_name(pack)}")
