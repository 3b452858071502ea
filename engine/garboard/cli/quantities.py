"""``garboard quantities``: list the figures that can be computed, from the manifests alone."""

from __future__ import annotations

import click


@click.command("quantities", epilog="\b\nExamples:\n  garboard quantities\n"
                                    "  garboard quantities device.prospective_current")
@click.argument("name", required=False)
def command(name: str | None) -> int:
    """List every figure with its unit, or show one with its method, source and range."""
    from garboard.assembly.manifests import read_manifests
    from garboard.errors import CommandRefused, Problem, did_you_mean

    entries = read_manifests()
    if name is None:
        width = max(len(entry["name"]) for entry in entries)
        for entry in entries:
            click.echo(f"{entry['name']:<{width}}  {entry['dimension'] or entry['kind']}")
        return 0
    for entry in entries:
        if entry["name"] == name:
            for label, text in (("of kind", entry["dimension"] or entry["kind"]),
                                ("method", entry["method"]),
                                ("source", f"{entry['citation']['source']} "
                                           f"({entry['citation']['status']})"),
                                ("valid for", entry["valid"]), ("version", entry["version"]),
                                ("from", entry["origin"])):
                click.echo(f"{label}: {text}")
            return 0
    names = [entry["name"] for entry in entries]
    raise CommandRefused([Problem("quantity-unknown", found=name, hint=did_you_mean(name, names)
                                  or "garboard quantities lists them all")])
