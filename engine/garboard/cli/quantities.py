"""``garboard quantities``: list the figures that can be computed, from the manifests alone."""

from __future__ import annotations

import textwrap
from typing import Any

import click

EPILOG = """\b
Examples:
  garboard quantities
  garboard quantities device.prospective_current
"""


@click.command("quantities", epilog=EPILOG)
@click.argument("name", required=False)
def command(name: str | None) -> int:
    """List every figure with its unit, or show one with its method, source and range."""
    from garboard.cli.printing import show_warning
    from garboard.errors import CommandRefused, Problem, did_you_mean
    from garboard.hooks import read_manifests

    entries, problems = read_manifests()
    for problem in problems:
        show_warning(problem)
    if name is None:
        width = max(len(entry["name"]) for entry in entries)
        for entry in entries:
            click.echo(f"{entry['name']:<{width}}  {_unit(entry):<6}  {entry['origin']}")
        return 0
    found = [entry for entry in entries if entry["name"] == name]
    if not found:
        names = [entry["name"] for entry in entries]
        raise CommandRefused([Problem("quantity-unknown", found=name,
                                      hint=did_you_mean(name, names)
                                      or "garboard quantities lists them all")])
    for entry in found:
        _show(entry)
    return 0


def _unit(entry: dict[str, Any]) -> str:
    """The unit of a number, or what else the figure is."""
    from garboard.values.units import DIMENSIONS

    if entry["dimension"] is not None:
        return str(DIMENSIONS[entry["dimension"]].unit)
    return {"truth": "yes/no", "opaque": "-"}.get(entry["kind"], str(entry["kind"]))


def _show(entry: dict[str, Any]) -> None:
    citation = entry["citation"]
    needs = ", ".join(dict.fromkeys(entry["needs"].values()))
    for label, text in (
            ("name", entry["name"]), ("unit", _unit(entry)), ("method", entry["method"]),
            ("source", f"{citation['source']} ({citation['status']})"),
            ("valid for", entry["valid"]), ("takes", needs), ("version", entry["version"]),
            ("from", entry["origin"])):
        click.echo(textwrap.fill(text, 96, initial_indent=f"{label:<11}",
                                 subsequent_indent=" " * 11))
