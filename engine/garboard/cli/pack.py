"""``garboard pack``: what can be done with a rule pack, one command per file."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "effect": ("garboard.cli.pack_effect", "Say what a new version changes on records."),
        "new": ("garboard.cli.pack_new", "Write a small pack to start from."),
        "proofread": ("garboard.cli.pack_proofread", "Check a pack, and warn of what looks wrong."),
        "prove": ("garboard.cli.pack_prove", "Run the cases of a pack."),
        "seal": ("garboard.cli.pack_seal", "Write a pack as one sealed file."),
        "show": ("garboard.cli.pack_show", "Print the resolved pack, or one rule of it."),
        "step": ("garboard.cli.pack_step", "Say how far the version of a pack has to rise."),
        "work": ("garboard.cli.pack_work", "Print the working of one rule."),
    }


@click.group("pack", cls=_Commands)
def command() -> None:
    """Look into a rule pack.

    \b
    Examples:
      garboard pack show small-craft-lithium
      garboard pack show small-craft-lithium breaking-capacity
    """
