"""``garboard trail sign``: put a signature on a trail, beside any that are on it."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard trail sign launch.trail.json --key our-firm.secret.pem \\
      --signer "A. Surveyor" --on 2026-04-20
  garboard trail sign launch.trail.json --key our-firm.secret.pem \\
      --signer "A. Surveyor" --on 2026-04-20 --to signed.trail.json

\b
A key is made with 'garboard key new'.

\b
The signature is Ed25519 over what the digest covers, with name and day as you state them. It stands
in the file beside the assessment, whose digest stays what it is; several people can sign one file.

\b
Exit codes: 0 signed · 3 the trail or the key is refused, or the key has signed it already
"""


@click.command("sign", epilog=EPILOG)
@click.argument("trail", metavar="TRAIL")
@click.option("--key", required=True, metavar="FILE", help="Your secret key.")
@click.option("--signer", required=True, metavar="NAME", help="Who signs, as it shall stand there.")
@click.option("--on", "day", required=True, metavar="DATE",
              help="The day of signing, as it shall stand there.")
@click.option("--to", "target", metavar="FILE",
              help="Write the signed trail here  [default: in the place of TRAIL]")
def command(trail: str, key: str, signer: str, day: str, target: str | None) -> int:
    """Sign a trail: who signs and when are as you state them."""
    from garboard.cli.trail_path import keep_apart
    from garboard.documents import read_secret_key, write_whole
    from garboard.trail import sign_trail

    written_to = target or trail
    keep_apart(written_to, key)
    secret = read_secret_key(Path(key))
    write_whole(Path(written_to), sign_trail(trail, secret, signer=signer, signed_on=day))
    click.echo(f"Signed: {written_to}  (key {secret.public.fingerprint})")
    click.echo("The signature proves the file, not the boat.")
    return 0
