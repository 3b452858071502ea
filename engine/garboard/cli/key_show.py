"""``garboard key show``: the fingerprint of a public key, to compare with what its owner gave."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Example:
  garboard key show our-firm.public.pem

\b
Exit codes: 0 shown · 3 the file is no public key
"""


@click.command("show", epilog=EPILOG)
@click.argument("file", metavar="FILE")
def command(file: str) -> int:
    """Print the fingerprint of a public key."""
    from garboard.documents import read_public_key

    click.echo(read_public_key(Path(file)).fingerprint)
    return 0
