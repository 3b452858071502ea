"""The catalogue of problem codes: one module per floor, merged here.

A code is a short phrase in kebab case. Each has a title and an explanation for the manual. A code
that is not in the catalogue cannot be raised.
"""

from __future__ import annotations

from importlib import import_module
from typing import Final, NamedTuple


class Code(NamedTuple):
    """What a problem code means: a title of a few words, and what the person can do about it."""

    title: str
    explanation: str


_FLOORS: Final = ("values", "documents", "record", "network", "quantities", "expressions",
                  "packs", "authoring", "trail", "command", "plugins")


def _catalogue() -> dict[str, Code]:
    merged: dict[str, Code] = {}
    for floor in _FLOORS:
        for code, text in import_module(f"{__name__}.{floor}").CODES.items():
            if code in merged:
                raise ValueError(f"problem code {code!r} is defined twice")
            merged[code] = Code(*text)
    return merged


CATALOGUE: Final[dict[str, Code]] = _catalogue()
