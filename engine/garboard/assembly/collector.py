"""Python's collector of cycles, held while an assessment runs."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collector_held() -> Iterator[None]:
    """Hold the collector, if it runs, and let it go on afterwards.

    An assessment makes very many objects and drops hardly any of them before it ends: to look them
    through again and again takes longer than the work itself.
    """
    if not gc.isenabled():
        yield
        return
    gc.disable()
    try:
        yield
    finally:
        gc.enable()
