"""``garboard working``: how a finding came about, and what would make it pass."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from garboard.cli.options import language_option

if TYPE_CHECKING:
    from garboard.trail import Finding, Trail

#: How many workings are shown where no item is named.
MOST = 5

EPILOG = """\b
Examples:
  garboard working launch.trail.json breaking-capacity f0
  garboard working launch.trail.json device-within-derated-ampacity w6 --full
  garboard working launch.trail.json breaking-capacity --json

\b
Without ITEM the findings of the rule that failed are shown, the first five of them; where none
failed, the first five of all. A rule of one of several packs may be named PACK/RULE.

\b
For a finding that failed, the smallest design change is sought that would pass, among those the
pack permits: each is proven by assessing the whole record of the trail again, with the
calculations of this program. --no-search leaves that out.

\b
Exit codes: 0 shown · 3 the trail is refused, or has no such rule or item
"""


@click.command("working", epilog=EPILOG)
@click.argument("trail", metavar="TRAIL")
@click.argument("rule", metavar="RULE")
@click.argument("item", metavar="[ITEM]", required=False)
@click.option("--full", is_flag=True,
              help="Expression, statements, and every figure down to facts and table rows.")
@click.option("--search/--no-search", default=True, help="Seek the change that would pass.")
@click.option("--json", "as_json", is_flag=True, help="Print the workings as a JSON list.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
@language_option
def command(trail: str, rule: str, item: str | None, full: bool, search: bool, as_json: bool,
            us_units: bool, language: str | None) -> int:
    """Show how a finding came about: what was asked, with which figures, from which facts."""
    from garboard.cli.printing import show_screen, show_text
    from garboard.cli.progress import progress
    from garboard.reports import in_language, working_json, working_text
    from garboard.trail import FAILED, read_trail

    read = read_trail(trail)
    findings = _chosen(read, rule, item)
    remedies = {}
    if search and any(each["outcome"] == FAILED for each in findings):
        from garboard.assembly import open_workshop

        workshop = open_workshop()
        for each in findings:
            if each["outcome"] == FAILED:
                with progress(f"changes tried for {each['item']}") as tell:
                    remedies[each["id"]] = workshop.remedy(read, each, tell)
    read = in_language(read, language)
    if as_json:
        texts = [working_json(read, each, remedies.get(each["id"])) for each in findings]
        show_text(f"[{','.join(texts)}]")
        return 0
    for each in findings:
        show_screen(lambda width, colour, each=each: working_text(  # type: ignore[misc]
            read, each, width, colour, remedy=remedies.get(each["id"]), full=full,
            us_units=us_units))
    return 0


def _chosen(trail: Trail, rule: str, item: str | None) -> list[Finding]:
    """The findings that are asked for; CommandRefused when there are none."""
    from garboard.errors import CommandRefused, Problem, did_you_mean
    from garboard.trail import FAILED

    def name(finding: Finding) -> str:
        return f"{finding['pack']}/{finding['rule']}" if "/" in rule else str(finding["rule"])

    of_rule = [each for each in trail.findings if name(each) == rule]
    if not of_rule:
        known = {name(each) for each in trail.findings}
        raise CommandRefused([Problem("finding-unknown", found=f"rule {rule}",
                                      hint=did_you_mean(rule, known))])
    if item is None:
        found = [each for each in of_rule if each["outcome"] == FAILED] or of_rule
        if len(found) > MOST:
            click.echo(f"The first {MOST} of {len(found)} findings; name an item for another.",
                       err=True)
        return found[:MOST]
    chosen = [each for each in of_rule if each["item"] == item]
    if not chosen:
        items = [each["item"] for each in of_rule if each["item"] is not None]
        raise CommandRefused([Problem("finding-unknown", found=f"{rule} for {item}",
                                      expected=", ".join(items[:20]) or "no item",
                                      hint=did_you_mean(item, items))])
    return chosen
