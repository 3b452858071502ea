"""The watching part of ``garboard pack prove``: again whenever a file of the pack is saved."""

from __future__ import annotations

import time
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from garboard.assembly import Workshop

#: Seconds between two looks at the files.
PAUSE = 0.3
_SCREEN = "\n" + "-" * 72


def watched(workshop: Workshop, pack: str, rule: str | None, rounds: int | None = None) -> int:
    """Proofread and prove, then again after every change, until interrupted.

    ``rounds`` ends it after so many proofs. A refusal is shown and waited out.
    """
    from garboard.documents import shipped_folder
    from garboard.packs import find_pack

    place = find_pack(pack, (shipped_folder("rulepacks"),))
    done = 0
    while True:
        before = stamps(place)
        code = once(workshop, pack, rule)
        done += 1
        if done == rounds:
            return code
        click.echo(f"{_SCREEN}\nwatching {place}; Ctrl-C ends it")
        while stamps(place) == before:
            time.sleep(PAUSE)


def stamps(place: Path) -> dict[str, tuple[int, int]]:
    """Time and size of every file of a pack; one that goes while it is looked at is left out."""
    files = [place] if place.is_file() else sorted(place.rglob("*.yaml"))
    found = {}
    for file in files:
        try:
            status = file.stat()
        except OSError:
            continue
        found[str(file)] = (status.st_mtime_ns, status.st_size)
    return found


def once(workshop: Workshop, pack: str, rule: str | None) -> int:
    """Proofread and prove; what is refused is shown."""
    from garboard.cli.pack_proofread import proofread_once
    from garboard.cli.pack_prove import proved
    from garboard.errors import Refused

    try:
        proofread_once(workshop, pack)
        return proved(workshop, pack, rule)
    except Refused as refused:
        click.echo(str(refused))
        return 3
