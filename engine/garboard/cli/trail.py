"""``garboard trail``: what can be done with trails as files, one command per file."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "check": ("garboard.cli.trail_check", "Check the digest and the signatures of a trail."),
        "history": ("garboard.cli.trail_history", "Check the chain that a vessel's trails form."),
        "sign": ("garboard.cli.trail_sign", "Sign a trail."),
    }


@click.group("trail", cls=_Commands)
def command() -> None:
    """Sign and check trails, and the history that they form.

    \b
    Examples:
      garboard trail sign launch.trail.json --help
      garboard trail check launch.trail.json --key our-firm.public.pem
      garboard trail history 2024.trail.json 2025.trail.json 2026.trail.json
    """
