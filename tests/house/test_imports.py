"""The direction of imports holds, and the contracts that watch it cover the whole package."""

from __future__ import annotations

import ast
import subprocess
import sys
import tomllib

from house.sources import PACKAGE, REPOSITORY, floors, trees

LINT = """
import sys
from importlinter.cli import lint_imports
sys.exit(lint_imports(no_cache=True))
"""


def test_import_contracts_are_kept() -> None:
    done = subprocess.run([sys.executable, "-c", LINT], cwd=REPOSITORY, capture_output=True,
                          text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "0 broken" in done.stdout


def test_every_floor_has_its_place_in_the_direction() -> None:
    settings = tomllib.loads((REPOSITORY / "pyproject.toml").read_text())["tool"]["importlinter"]
    [direction] = [c for c in settings["contracts"] if c["id"] == "direction"]
    named = {name.strip(" ()") for layer in direction["layers"] for name in layer.split("|")}
    assert direction["exhaustive"] is True
    assert set(floors()) <= named
    assert {folder.name for folder in PACKAGE.iterdir()
            if folder.is_dir() and any(folder.rglob("*.py"))} == set(floors())


def test_nothing_inside_imports_the_root() -> None:
    found = [f"{file.relative_to(PACKAGE)}:{node.lineno}" for file, tree in trees().items()
             for node in ast.walk(tree)
             if (isinstance(node, ast.Import) and any(a.name == "garboard" for a in node.names))
             or (isinstance(node, ast.ImportFrom) and node.module == "garboard"
                 and {a.name for a in node.names} - set(floors()) - {"__version__"})]
    assert not found


def test_no_import_climbs_by_dots() -> None:
    found = [f"{file.relative_to(PACKAGE)}:{node.lineno}" for file, tree in trees().items()
             for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) and node.level]
    assert not found
