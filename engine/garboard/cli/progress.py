"""Progress of long work on standard error, where that is a terminal; nothing elsewhere."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

#: Wipes the line that is written over and over.
_WIPE = "\r\x1b[K"


@contextmanager
def progress(what: str, of: int | None = None) -> Iterator[Callable[[int], None]]:
    """A function to be told how much is done; the line is gone when the work is."""
    stream = sys.stderr
    if not stream.isatty():
        yield lambda done: None
        return

    def tell(done: int) -> None:
        stream.write(f"{_WIPE}{what}: {done}{'' if of is None else f' of {of}'}")
        stream.flush()

    try:
        yield tell
    finally:
        stream.write(_WIPE)
        stream.flush()
