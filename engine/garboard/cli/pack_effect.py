"""``garboard pack effect``: what a new version of a pack changes on records."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from garboard.assembly import Workshop
    from garboard.authoring import Effect
    from garboard.packs import CheckedPack

EPILOG = """\b
Examples:
  garboard pack effect house-1.sealed.json ./house-rules surveys/*.yaml
  garboard pack effect old.sealed.json new.sealed.json surveys/*.trail.json --json

\b
Each record is assessed with both versions, on the day of its survey. Of a trail the record, the day
and the dispensations are taken; where the old version made it, its own findings are those before.

\b
Exit codes: 0 nothing newly fails · 1 something newly fails · 3 input refused, or not comparable
"""


@click.command("effect", epilog=EPILOG)
@click.argument("old", metavar="OLD")
@click.argument("new", metavar="NEW")
@click.argument("files", metavar="RECORD...", nargs=-1, required=True)
@click.option("--json", "as_json", is_flag=True, help="Print the effect as JSON.")
def command(old: str, new: str, files: tuple[str, ...], as_json: bool) -> int:
    """Say which findings change between two versions of a pack, and why each does."""
    import json

    from garboard.assembly import open_workshop
    from garboard.authoring import effect_data, effect_text, steps_between

    workshop = open_workshop()
    before, after = (workshop.load_packs([each])[0] for each in (old, new))
    steps_between(before.pack, after.pack, workshop.vocabulary)  # refuses packs of two names
    effects = [_effect(workshop, file, (before, after)) for file in files]
    if as_json:
        click.echo(json.dumps(effect_data(effects, before.pack, after.pack), indent=2,
                              ensure_ascii=False))
    else:
        click.echo(effect_text(effects, before.pack, after.pack))
    if any(each.incomparable is not None for each in effects):
        return 3
    return int(any(moved.newly_fails for each in effects for moved in each.moved))


def _effect(workshop: Workshop, file: str, packs: tuple[CheckedPack, CheckedPack]) -> Effect:
    from garboard.authoring import Effect, effect_on
    from garboard.cli.trail_or_record import trail_in
    from garboard.errors import Refused

    try:
        given = trail_in(file)
        if given is None:
            return effect_on(file, None, lambda pack: workshop.assess(file, (pack,)).trail, packs,
                             workshop.registry)
        return effect_on(file, given, lambda pack: workshop.assess_again(given, (pack,)).trail,
                         packs, workshop.registry)
    except Refused as refused:
        return Effect(file, None, None, incomparable=f"refused: {refused}")
