"""The records that cases start from: files inside the folder of cases, each read once."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path, PurePosixPath
from typing import Any

from garboard.documents import read_document
from garboard.errors import DocumentRefused, PackRefused, Place, Problem
from garboard.packs.spot import Spot


class BaseFiles:
    """Reads base files as seen from the folder of cases."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._read: dict[str, Mapping[str, Any]] = {}

    def data(self, named: Spot) -> Mapping[str, Any]:
        """The data of the file named at a spot.

        PackRefused when the path leads out of the folder or to no file; DocumentRefused when the
        file is no document.
        """
        name = str(named.data)
        if name not in self._read:
            file = self.folder / name
            path = PurePosixPath(name)
            if path.is_absolute() or ".." in path.parts or "\\" in name:
                raise _climbs(name, named.place())
            if not file.is_file():
                raise PackRefused([Problem("case-base-missing", named.place(), found=name,
                                           expected="a file in the folder of the cases")])
            self.inside(file, named.place())
            document = read_document(file, expect="mapping")
            if not isinstance(document.data, dict):
                raise DocumentRefused([Problem("document-not-a-mapping", document.place())])
            self._read[name] = document.data
        return self._read[name]

    def inside(self, file: Path, place: Place | None = None) -> None:
        """PackRefused when a file, links followed, stands outside the folder."""
        if not file.resolve().is_relative_to(self.folder.resolve()):
            raise _climbs(str(file.name), place or Place(str(file)))


def _climbs(name: str, place: Place) -> PackRefused:
    return PackRefused([Problem("pack-path-climbs", place, found=name,
                                expected="a file inside the folder of the cases")])
