"""``garboard replay``: make an assessment again from its trail alone, and say whether it agrees."""

from __future__ import annotations

import click

EPILOG = """\b
Examples:
  garboard replay launch.trail.json
  garboard replay launch.trail.json --json
  garboard replay launch.trail.json --to again.trail.json

\b
Record, packs and dispensations are those that stand in the trail, whatever is installed.
Calculations are those of this program and its plugins; where one is of another version than in
the trail, it is named. A trail of an older format is brought up; one of a newer is refused.

\b
Results:
  identical                every finding and every figure is the same
  equal within tolerance   numbers differ in their last digits, and nothing else
  different                named, the first of them with their paths

\b
Exit codes: 0 identical or equal within tolerance · 1 different · 3 the trail, or the record or a
pack in it, is refused · 4 a failure of the program itself
"""


@click.command("replay", epilog=EPILOG)
@click.argument("trail", metavar="TRAIL")
@click.option("--to", "target", metavar="FILE", help="Also write the trail of the replay.")
@click.option("--json", "as_json", is_flag=True, help="Print the result as JSON.")
def command(trail: str, target: str | None, as_json: bool) -> int:
    """Make the assessment of a trail again, from the trail alone, and say whether it agrees."""
    from pathlib import Path

    from garboard.assembly import open_workshop
    from garboard.cli.printing import show_text, show_warning
    from garboard.cli.trail_path import keep_apart
    from garboard.reports import replay_json, replay_text, replayed
    from garboard.trail import read_trail

    if target is not None:
        keep_apart(target, trail)
    workshop = open_workshop()
    for problem in workshop.plugins.problems:
        show_warning(problem)
    kept = read_trail(trail)
    assessed = workshop.replay(kept)
    if target is not None:
        assessed.write(Path(target))
    result = replayed(kept, assessed.trail)
    show_text(replay_json(result) if as_json else replay_text(result))
    return result.exit_code
