"""A file that may be a trail, or a record to be assessed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from garboard.errors import CommandRefused, Place, Problem

if TYPE_CHECKING:
    from garboard.assembly import Workshop
    from garboard.trail import Trail


def trail_in(file: str) -> Trail | None:
    """The trail in a file; ``None`` where it holds something else, such as a record."""
    from garboard.documents import read_document
    from garboard.trail import TRAIL_LIMITS, read_trail

    if not file.lower().endswith(".json"):
        return None
    document = read_document(file, TRAIL_LIMITS)
    data = document.data
    if isinstance(data, dict) and str(data.get("format")).startswith("trail/"):
        return read_trail(document)
    return None


def trail_or_record(workshop: Workshop, file: str, packs: tuple[str, ...]) -> Trail:
    """The trail in a file, or that of the record in it, assessed with the packs.

    CommandRefused for a record without packs.
    """
    from garboard.cli.printing import show_warning

    trail = trail_in(file)
    if trail is not None:
        return trail
    if not packs:
        raise CommandRefused([Problem("record-without-pack", Place(file=file),
                                      expected="a trail, or --pack for the record",
                                      hint="--pack small-craft-lithium")])
    assessed = workshop.assess(file, workshop.load_packs(packs))
    for problem in assessed.warnings:
        show_warning(problem)
    return assessed.trail
