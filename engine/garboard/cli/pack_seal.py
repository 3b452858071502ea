"""``garboard pack seal``: one file of a pack, layers resolved, that no byte of can change."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard pack seal ./house-rules
  garboard pack seal ./house-rules --to house-rules.sealed.json --previous old.sealed.json
  garboard pack seal ./house-rules --key our-firm.secret.pem --signer "Our Firm" \\
      --signed-on 2026-04-18

\b
The sealed file is used wherever a pack is:
  garboard assess launch.yaml --pack house-rules.sealed.json
Whoever opens it gets what was sealed, or a refusal that says what is wrong.

\b
With --previous the version must have risen as the changes ask for: the first number when something
that passed may no longer pass, the second when other findings change, the third when only texts do
(garboard pack step lists the changes).

\b
Exit codes: 0 sealed · 3 the pack, the key or the name of the file was refused
"""


@click.command("seal", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
@click.option("--to", "to", metavar="FILE",
              help="The file to write  [default: NAME.sealed.json in the current folder]")
@click.option("--pack", "below", multiple=True, metavar="PACK",
              help="A pack that PACK builds on; may be given several times.")
@click.option("--previous", metavar="PACK", help="The version before, sealed or not.")
@click.option("--key", metavar="FILE", help="Secret key to sign with (see garboard key new).")
@click.option("--signer", metavar="TEXT", help="Who signs.")
@click.option("--signed-on", metavar="DATE", help="Day of signing, YEAR-MONTH-DAY.")
def command(pack: str, to: str | None, below: tuple[str, ...], previous: str | None,
            key: str | None, signer: str | None, signed_on: str | None) -> int:
    """Write a pack as one sealed file, and sign it if a key is given."""
    from garboard.assembly import open_workshop
    from garboard.authoring import seal_pack, signing_with, steps_between
    from garboard.cli.printing import show_warning
    from garboard.errors import PackRefused
    from garboard.packs.seal import ENDING

    signing = signing_with(key, signer, signed_on)
    workshop = open_workshop()
    checked = workshop.load_packs([pack, *below])[0]
    folder = workshop.pack_files[0]
    for problem in checked.warnings:
        show_warning(problem)
    if previous is not None:
        before = workshop.load_packs([previous])[0].pack
        steps = steps_between(before, checked.pack, workshop.vocabulary)
        if steps.problem is not None:
            raise PackRefused([steps.problem])
        click.echo(f"version {before.version} to {checked.pack.version}: a {steps.step} step"
                   if steps.reasons else f"unchanged since version {before.version}")
    target = Path(to or f"{checked.pack.name}{ENDING}")
    seal_pack(checked.pack, folder, target, signing, workshop.pack_files)
    click.echo(f"sealed: {target}\n{checked.pack.name} {checked.pack.version}  "
               f"{checked.pack.digest}")
    if signing is not None:
        click.echo(f"signed: {signing.signer}, {signing.signed_on}, "
                   f"{signing.key.public.fingerprint}")
    return 0
