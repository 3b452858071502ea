"""``garboard assess``: check records against packs, write a trail for each, say what came out."""

from __future__ import annotations

import click

from garboard.cli.options import language_option

EPILOG = """\b
Examples:
  garboard assess launch.yaml --pack small-craft-lithium
  garboard assess launch.yaml --pack small-craft-lithium --all
  garboard assess launch.yaml --pack small-craft-lithium --pack ./house-rules --on 2026-04-18
  garboard assess launch.yaml --pack small-craft-lithium --dispensations agreed.yaml
  garboard assess launch.yaml --pack-list office.yaml
  garboard assess launch.yaml ferry.yaml --pack small-craft-lithium --trail trails/ --json
  garboard assess launch.yaml --pack small-craft-lithium --previous 2025.trail.json

\b
A pack is named by its name (a shipped pack), its folder, or its file.

\b
The trail holds the record, the packs, every finding and the derivation of every figure. Without
--trail it is written into the current folder as NAME.trail.json, NAME being that of the record.

\b
Of several records a table is printed, a line or two for each; with --all every report before it.
Records of one name in different folders give trails that bear the folder's name too.

\b
With --json and several records one list is printed, with an entry for each: its record, and its
trail and summary, or under 'refused' the problems for which it was refused.

\b
Exit codes:
  0  nothing failed, and nothing at danger or warning is left open
  1  at least one rule failed
  2  nothing failed, but something at danger or warning could not be assessed,
     or the packs do not apply
  3  a record, a pack or the command line was refused
  4  a calculation failed; the trail is still written
"""


@click.command("assess", epilog=EPILOG)
@click.argument("records", nargs=-1, required=True, metavar="RECORD...")
@click.option("--pack", "packs", multiple=True, metavar="PACK",
              help="Rule pack to check against; may be given several times.")
@click.option("--pack-list", metavar="FILE",
              help="List of packs with versions and digests; a pack that differs is refused. "
                   "Without --pack, all packs of the list are used.")
@click.option("--on", "day", metavar="DATE",
              help="Date of the assessment, YEAR-MONTH-DAY  [default: the survey's date]")
@click.option("--dispensations", metavar="FILE",
              help="Agreed exceptions: rule, item, reason, by whom, from when until when.")
@click.option("--trail", metavar="FILE",
              help="Where to write the trail; for several records, a folder that exists  "
                   "[default: NAME.trail.json in the current folder]")
@click.option("--previous", metavar="TRAIL",
              help="Trail of the vessel's previous assessment; the new one names its digest.")
@click.option("--size-limit", "megabytes", type=click.IntRange(1, 1000), default=4,
              show_default=True, metavar="MB", help="Largest record that is read, in megabytes.")
@click.option("--json", "as_json", is_flag=True,
              help="Print findings as JSON instead of text; of several records, one list.")
@click.option("--all", "whole", is_flag=True,
              help="Show every finding with its figures, reasons and sources, not only the result, "
                   "the list of work, what failed and what to find out.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
@language_option
def command(records: tuple[str, ...], packs: tuple[str, ...], pack_list: str | None,
            day: str | None, dispensations: str | None, trail: str | None, previous: str | None,
            megabytes: int, as_json: bool, whole: bool, us_units: bool,
            language: str | None) -> int:
    """Check installation records against rule packs, write the audit trail, say what came out."""
    from garboard.assembly import open_workshop
    from garboard.cli.json_list import JsonList
    from garboard.cli.printing import show_report, show_warning
    from garboard.cli.progress import progress
    from garboard.cli.several import Several
    from garboard.cli.trail_path import trail_paths
    from garboard.documents import Limits
    from garboard.errors import Refused
    from garboard.packs import read_dispensations, read_pack_list
    from garboard.reports import in_language
    from garboard.trail import prevailing, read_trail

    workshop = open_workshop(Limits.for_size(megabytes))
    for problem in workshop.plugins.problems:
        show_warning(problem)
    pinned = None if pack_list is None else read_pack_list(pack_list)
    if not packs and pinned is None:
        raise click.UsageError("name a pack with --pack, or a list of packs with --pack-list",
                               click.get_current_context())
    rules = workshop.load_packs(packs, pinned)
    agreed = () if dispensations is None else read_dispensations(dispensations)
    before = None if previous is None else read_trail(previous)
    given = (each for each in (dispensations, previous, pack_list) if each is not None)
    targets = trail_paths(records, trail,
                          (*records, *(str(each) for each in workshop.pack_files), *given))
    codes = []
    many = len(records) > 1
    several = Several(on=many and not as_json)
    with progress("records assessed", len(records) if many else None) as tell, JsonList(
            on=many and as_json) as listed:
        for done, (record, target) in enumerate(zip(records, targets, strict=True)):
            if many:
                tell(done)
            try:
                assessed = workshop.assess(record, rules, day, agreed, before)
                assessed.write(target)
            except Refused as refused:
                if not many:
                    raise
                click.echo(str(refused), err=True)
                listed.refused(record, refused)
                several.refused(record)
                codes.append(3)
                continue
            for problem in assessed.warnings:
                show_warning(problem)
            if listed.on:
                listed.assessed(record, target, in_language(assessed.trail, language))
            elif whole or not many:
                show_report(in_language(assessed.trail, language), target, as_json=as_json,
                            whole=whole, us_units=us_units)
            several.assessed(record, target, assessed.trail)
            codes.append(assessed.trail.exit_code)
    several.show()
    return prevailing(codes)


