"""``garboard trail``: what can be done with trails as files, one command per file."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "history": ("garboard.cli.trail_history", "Check the chain that a vessel's trails form."),
    }


@click.group("trail", cls=_Commands)
def command() -> None:
    """Check trails, and the history that they form.

    \b
    Examples:
      garboard trail history 2024.trail.json 2025.trail.json 2026.trail.json
    """
