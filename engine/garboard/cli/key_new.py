"""``garboard key new``: a secret key to sign with, and the public key that checks it."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard key new our-firm
  garboard key new keys/our-firm

\b
Writes NAME.secret.pem, which only you can read: keep it, and a copy, where nobody else gets at it.
NAME.public.pem is for everyone; tell them its fingerprint by another way than the file.
Needs the extra 'signing':  pip install 'garboard[signing]'

\b
Exit codes: 0 written · 3 a file is there already or cannot be written, or the library is missing
"""


@click.command("new", epilog=EPILOG)
@click.argument("name", metavar="NAME")
def command(name: str) -> int:
    """Make a secret key and the public key that belongs to it."""
    from garboard.documents import new_key_pair

    secret, public = Path(f"{name}.secret.pem"), Path(f"{name}.public.pem")
    key = new_key_pair(secret, public)
    click.echo(f"written: {secret}  (keep it secret: whoever has it signs in your name)\n"
               f"written: {public}  (for those who check what you sign)\n"
               f"fingerprint: {key.fingerprint}")
    return 0
