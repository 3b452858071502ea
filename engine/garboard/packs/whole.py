"""A pack with the packs below it, its expressions not looked at."""

from __future__ import annotations

from pathlib import Path

from garboard.expressions import Vocabulary
from garboard.packs.layers.resolving import Resolver
from garboard.packs.layers.shelf import Shelf, shipped_shelf
from garboard.packs.pack import Pack
from garboard.packs.reading import hashed


def read_pack(path: str | Path, shelf: Shelf | None = None,
              vocabulary: Vocabulary | None = None) -> Pack:
    """The pack in a folder or file, sealed or not.

    PackRefused with every problem of its shape, each placed.

    Its expressions are not looked at, but to find out what a layer's changes do; for that the
    ``vocabulary`` says which figures are never negative. ``load_pack`` does both at once.
    """
    return hashed(Resolver(shelf or shipped_shelf(), vocabulary).pack(Path(path)))
