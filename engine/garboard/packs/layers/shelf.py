"""Where the packs are found that others build on."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from garboard.documents import shipped_folder
from garboard.errors import PackRefused
from garboard.packs.files import find_pack, places_of


@dataclass(frozen=True, slots=True)
class Shelf:
    """Packs found by name: those that were ``named`` by their path come first.

    Then those beside the pack that asks, then those in the ``folders``.
    """

    folders: tuple[Path, ...]
    named: tuple[Path, ...] = ()

    def of_name(self, name: str, asking: Path, name_of: Callable[[Path], str | None],
                ) -> Iterator[Path]:
        """Every pack of that name, in the order in which they are considered.

        ``name_of`` says what a pack calls itself; one that cannot say is considered too, so that
        reading it explains why.
        """
        seen = set()
        for path in self._candidates(name, asking):
            real = path.resolve()
            if real not in seen and name_of(path) in (name, None):
                seen.add(real)
                yield path

    def _candidates(self, name: str, asking: Path) -> Iterator[Path]:
        yield from self.named
        for folder in (asking.resolve().parent, *self.folders):
            for path in places_of(folder, name):
                try:
                    yield find_pack(path)
                except PackRefused:
                    continue


def shipped_shelf(named: tuple[Path, ...] = ()) -> Shelf:
    """The shelf with the shipped packs, and those that were named."""
    return Shelf((shipped_folder("rulepacks"),), named)
