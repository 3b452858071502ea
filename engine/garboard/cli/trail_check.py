"""``garboard trail check``: whether a trail is what it was, and who signed it."""

from __future__ import annotations

from pathlib import Path

import click

EPILOG = """\b
Examples:
  garboard trail check launch.trail.json
  garboard trail check launch.trail.json --key our-firm.public.pem

\b
Exit codes: 0 digest right and every signature sound · 1 a signature is not sound, or one by a key
that was asked for is missing · 3 the trail is refused: it was changed, or is no trail
"""


@click.command("check", epilog=EPILOG)
@click.argument("trail", metavar="TRAIL")
@click.option("--key", "keys", multiple=True, metavar="FILE",
              help="Public key that must have signed it; may be given several times.")
@click.option("--json", "as_json", is_flag=True, help="Print the check as JSON.")
def command(trail: str, keys: tuple[str, ...], as_json: bool) -> int:
    """Check a trail: its shape, its digest, its signatures."""
    from garboard.cli.printing import show_screen, show_text
    from garboard.documents import read_public_key
    from garboard.reports import check_json, check_text, checked
    from garboard.trail import read_trail

    wanted = [read_public_key(Path(key)).fingerprint for key in keys]
    result = checked(read_trail(trail), wanted)
    if as_json:
        show_text(check_json(result, trail))
    else:
        show_screen(lambda width, colour: check_text(result, trail, width, colour))
    return 0 if result.sound else 1
