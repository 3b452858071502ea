"""Libraries that only some files need: a refusal that says how to install one that is missing."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from garboard.errors import NOWHERE, CommandRefused, Problem


@contextmanager
def library(name: str, extra: str) -> Iterator[None]:
    """Around an import: CommandRefused with ``report-library-missing`` where it fails."""
    try:
        yield
    except (ImportError, OSError) as missing:
        raise CommandRefused([Problem(
            "report-library-missing", NOWHERE, found=str(missing).splitlines()[0], expected=name,
            hint=f"pip install 'garboard[{extra}]'")]) from missing
