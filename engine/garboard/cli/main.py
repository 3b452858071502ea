"""The command line: one command per file, imported only when it is called."""

from __future__ import annotations

import errno
import sys
import traceback
from collections.abc import Sequence
from typing import ClassVar

import click

from garboard import __version__
from garboard.cli.group import LazyGroup

#: Commands by name: the module, and the line that ``--help`` shows without importing it.
COMMANDS = {
    "assess": ("garboard.cli.assess", "Check records against rule packs and write the trail."),
    "compare": ("garboard.cli.compare", "Hold two assessments of a vessel side by side."),
    "key": ("garboard.cli.key", "Make the keys that sign sealed packs and trails."),
    "pack": ("garboard.cli.pack", "Look into a rule pack."),
    "problem": ("garboard.cli.problem", "Explain the code of a problem."),
    "quantities": ("garboard.cli.quantities", "List the figures that can be computed, or one."),
    "record": ("garboard.cli.record", "Begin a record, or ask it for a figure."),
    "replay": ("garboard.cli.replay", "Make an assessment again from its trail alone."),
    "report": ("garboard.cli.report", "Write the report of a trail as a page to read and print."),
    "trail": ("garboard.cli.trail", "Sign and check trails, and their history."),
    "working": ("garboard.cli.working", "Show how a finding came about, and what would do."),
}


class _Commands(LazyGroup):
    table: ClassVar = COMMANDS


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="garboard")
def garboard() -> None:
    """Check the record of a boat's battery installation against rule packs, and show the working.

    \b
    Examples:
      garboard assess launch.yaml --pack small-craft-lithium
      garboard assess --help
    """


REFUSED = 3
FAILED_INSIDE = 4


def main(arguments: Sequence[str] | None = None) -> None:
    """Entry point; ends the process with the exit code of the command."""
    sys.exit(run(arguments))


def run(arguments: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit code; a refusal is shown and gives 3."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
    try:
        code = garboard.main(args=None if arguments is None else list(arguments),
                             prog_name="garboard", standalone_mode=False)
        sys.stdout.flush()
    except click.ClickException as error:
        return _refuse_usage(error)
    except (click.Abort, KeyboardInterrupt):
        click.echo("stopped", err=True)
        return 130
    except Exception as error:  # noqa: BLE001 - shown whole, with an exit code of its own
        return _fail(error)
    return code if isinstance(code, int) else 0


def _fail(error: Exception) -> int:
    """A refusal in the form all problems have; a failure of our own with its traceback."""
    from garboard.errors import GarboardError, Refused

    if isinstance(error, OSError) and error.errno in (errno.ENOSPC, errno.EIO):
        click.echo(f"what should be printed could not be written: {error.strerror}", err=True)
        return REFUSED
    if isinstance(error, GarboardError):
        click.echo(str(error), err=True)
        _point_to_codes(error)
        return REFUSED if isinstance(error, Refused) else FAILED_INSIDE
    traceback.print_exception(error)
    click.echo("garboard failed on something it should have dealt with; the lines above say where. "
               "A trail that was announced is complete; nothing else was written.", err=True)
    return FAILED_INSIDE


def _point_to_codes(error: Exception) -> None:
    """A last line on where the codes of a refusal are explained, for a person at a terminal."""
    codes = {each.code: None for each in getattr(error, "problems", ())}
    if codes and sys.stderr.isatty():
        code = next(iter(codes)) if len(codes) == 1 else "CODE"
        click.echo(f"\ngarboard problem {code} says what to do", err=True)


def _refuse_usage(error: click.ClickException) -> int:
    """A command line that click refuses, in the form all our problems have."""
    from garboard.errors import CommandRefused, Problem

    context = getattr(error, "ctx", None)
    hint = f"{context.command_path} --help" if context is not None else "garboard --help"
    refused = CommandRefused([Problem("command-line", found=error.format_message(), hint=hint)])
    click.echo(str(refused), err=True)
    return REFUSED
