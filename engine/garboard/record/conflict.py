"""Two recorded facts that cannot both be true."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Conflict:
    """A contradiction between recorded facts; each of them reads as unknown because of it.

    ``paths`` are the data paths of the facts in doubt (``pack-1.energy``), ``readings`` what they
    would have read as, and ``words`` says in a sentence what contradicts what.
    """

    code: str
    paths: tuple[str, ...]
    readings: tuple[Any, ...]
    words: str
