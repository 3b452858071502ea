"""``garboard key``: the keys that sign sealed packs and trails, one command per file."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "new": ("garboard.cli.key_new", "Make a secret key and its public key."),
        "show": ("garboard.cli.key_show", "Print the fingerprint of a public key."),
    }


@click.group("key", cls=_Commands)
def command() -> None:
    """Make the keys that sign sealed packs and trails.

    \b
    Examples:
      garboard key new our-firm
      garboard key show our-firm.public.pem
    """
