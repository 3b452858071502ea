"""``garboard pack work``: the working of one rule, on values given by hand or on a record."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from garboard.values.units import System

EPILOG = """\b
Examples:
  garboard pack work small-craft-lithium breaking-capacity \\
      --given device.on_path_of_a_battery=yes --given "device.breaking_capacity=20 kA" \\
      --given "device.prospective_current=26.59 kA .. 31.10 kA" \\
      --given "device.undeclared_machine_current=0 A .. 110 A" \\
      --given "device.undeclared_charger_current=0 A"
  garboard pack work small-craft-lithium bus-carries-devices \\
      --given "bus.rating=100 A" --given "bus.current_let_by_devices=125 A" \\
      --given "bus.runs[0].devices[0].rating=125 A"
  garboard pack work small-craft-lithium breaking-capacity --record launch.yaml --item f1

\b
A path reads as in the rule; one of several things has a number, from 0. The name of a limit alone
changes the limit. What is not given is not recorded.

\b
Exit codes: 0 shown · 3 the pack, the record or the command line was refused
"""


@click.command("work", epilog=EPILOG)
@click.argument("pack", metavar="PACK")
@click.argument("rule", metavar="RULE")
@click.option("--given", "given", multiple=True, metavar="PATH=VALUE",
              help="A value, as in 'device.rating=200 A'; may be given several times.")
@click.option("--record", "record", metavar="FILE", help="Take the values from a record instead.")
@click.option("--item", "item", metavar="ID", help="The thing of the record to look at.")
@click.option("--us", "us_units", is_flag=True, help="Show lengths and the like in US units.")
def command(pack: str, rule: str, given: tuple[str, ...], record: str | None, item: str | None,
            us_units: bool) -> int:
    """Print the working of one rule: every part with its value, what decides, what comes out."""
    from garboard.assembly import open_workshop
    from garboard.authoring import known_rule, work_on_given, work_on_record, working_lines
    from garboard.errors import CommandRefused, Problem

    if (record is None) != (item is None) or (record is not None and given):
        raise CommandRefused([Problem("given-twice",
                                      expected="--given alone, or --record and --item")])
    workshop = open_workshop()
    (checked,) = workshop.load_packs([pack])
    number = known_rule(checked, rule)
    system: System = "us" if us_units else "metric"
    if record is None or item is None:
        work = work_on_given(checked, number, given, checked.compiled.vocabulary, system)
    else:
        work = work_on_record(checked, number, workshop.read_record(record), item,
                              workshop.registry, system)
    for line in working_lines(checked.pack.rules[number], work, system):
        click.echo(line)
    return 0
