"""A group of commands, one per file, each imported only when it is called."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module
from typing import ClassVar

import click


class LazyGroup(click.Group):
    """A group that imports a command's module when the command is called.

    ``table`` holds the commands by name: the module, and the line that ``--help`` shows without
    importing it.
    """

    table: ClassVar[Mapping[str, tuple[str, str]]] = {}

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(self.table)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in self.table:
            return None
        command: click.Command = import_module(self.table[cmd_name][0]).command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in self.table.items()])

    def resolve_command(self, ctx: click.Context, args: list[str],
                        ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in self.table and not args[0].startswith("-"):
            from garboard.errors import CommandRefused, Problem, did_you_mean

            raise CommandRefused([Problem(
                "command-unknown", found=args[0], expected=f"one of {', '.join(self.table)}",
                hint=did_you_mean(args[0], self.table)
                or f"{ctx.command_path} --help lists the commands")])
        return super().resolve_command(ctx, args)
