"""``garboard pack step``: what changed between two versions, and which number has to rise."""

from __future__ import annotations

import click

EPILOG = """\b
Examples:
  garboard pack step old.sealed.json ./house-rules
  garboard pack step small-craft-lithium ./our-copy --json

\b
What a step means:
  major   something that passed may no longer pass, or may no longer be accepted
  minor   other findings may change
  patch   findings stay as they are; only texts change
While the first number of a version is 0, the second rises for a major step and the third for the
others.

\b
Exit codes: 0 the version has risen enough · 1 it has not · 3 a pack was refused
"""


@click.command("step", epilog=EPILOG)
@click.argument("old", metavar="OLD")
@click.argument("new", metavar="NEW")
@click.option("--json", "as_json", is_flag=True, help="Print the changes as JSON.")
def command(old: str, new: str, as_json: bool) -> int:
    """Say which step of the version the changes of a pack ask for, and why."""
    import json

    from garboard.assembly import open_workshop
    from garboard.authoring import steps_between
    from garboard.errors import render

    workshop = open_workshop()
    before, after = (workshop.load_packs([each])[0].pack for each in (old, new))
    steps = steps_between(before, after, workshop.vocabulary)
    if as_json:
        click.echo(json.dumps({
            "pack": after.name, "from": before.version, "to": after.version, "step": steps.step,
            "risen_enough": steps.problem is None,
            "changes": [{"what": each.what, "does": each.does, "step": each.step}
                        for each in steps.reasons]}, indent=2))
    else:
        for each in steps.reasons:
            click.echo(f"{each.step:<6} {each.what}: {each.does}")
        click.echo(f"\n{after.name} {before.version} to {after.version}: "
                   + (f"a {steps.step} step" if steps.reasons else "nothing changed"))
        if steps.problem is not None:
            click.echo(render(steps.problem), err=True)
    return 0 if steps.problem is None else 1
