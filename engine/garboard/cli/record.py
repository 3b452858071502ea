"""``garboard record``: what can be done with a record before it is assessed."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "new": ("garboard.cli.record_new", "Write a survey sheet to fill in."),
    }


@click.group("record", cls=_Commands)
def command() -> None:
    """Begin an installation record.

    \b
    Examples:
      garboard record new launch.yaml
      garboard record new launch.yaml --pack small-craft-lithium
    """
