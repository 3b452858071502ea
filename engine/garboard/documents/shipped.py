"""Where the data that comes with the package stands: rule packs and schemas."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Literal

from garboard.errors import DocumentRefused, Place, Problem


def shipped_folder(name: Literal["rulepacks", "schemas"]) -> Path:
    """The folder of shipped data, in a working tree or in an installed package.

    The package stands in a working tree when its parent folder is ``engine`` and ``pyproject.toml``
    stands beside that. Raises DocumentRefused (``shipped-missing``) when the folder is not there.
    """
    package = Path(__file__).resolve().parents[1]
    tree = package.parent.parent
    if package.parent.name == "engine" and (tree / "pyproject.toml").is_file():
        folder = tree / name
    else:
        folder = Path(str(files("garboard") / "shipped_data" / name))
    if not folder.is_dir():
        raise DocumentRefused([Problem("shipped-missing", Place(str(folder)),
                                       hint="install the package again")])
    return folder
