"""One workshop for all replays."""

from __future__ import annotations

from functools import cache

from garboard.assembly import Workshop, open_workshop


@cache
def workshop() -> Workshop:
    """The workshop with what is installed."""
    return open_workshop()
