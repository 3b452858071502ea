"""Options that several commands share."""

from __future__ import annotations

import click

#: The language of what packs say; what the program says of its own stays English.
language_option = click.option(
    "--language", metavar="TAG",
    help="Language of the packs' texts, such as de; what is not translated is marked.")
