"""``garboard record``: what can be done with a record apart from assessing it."""

from __future__ import annotations

from typing import ClassVar

import click

from garboard.cli.group import LazyGroup


class _Commands(LazyGroup):
    table: ClassVar = {
        "figures": ("garboard.cli.record_figures", "Show figures of a record by name."),
        "new": ("garboard.cli.record_new", "Write a survey sheet to fill in."),
    }


@click.group("record", cls=_Commands)
def command() -> None:
    """Begin an installation record, or ask it for a figure.

    \b
    Examples:
      garboard record new launch.yaml
      garboard record new launch.yaml --pack small-craft-lithium
      garboard record figures launch.yaml bus.fault_current
    """
