"""The package's own source files, wherever the package is installed."""

from __future__ import annotations

import ast
import importlib
import pkgutil
from functools import cache
from pathlib import Path
from types import ModuleType

import garboard

PACKAGE = Path(garboard.__file__).parent
REPOSITORY = Path(__file__).parents[2]


@cache
def trees() -> dict[Path, ast.Module]:
    """Every Python file of the package with its syntax tree."""
    return {file: ast.parse(file.read_text(encoding="utf-8"))
            for file in sorted(PACKAGE.rglob("*.py"))}


@cache
def modules() -> tuple[ModuleType, ...]:
    """Every module of the package, imported; one that runs when imported is left out."""
    names = [found.name for found in pkgutil.walk_packages([str(PACKAGE)], "garboard.")
             if not found.name.endswith(".__main__")]
    return tuple(importlib.import_module(name) for name in sorted(names))


def floors() -> list[str]:
    """The folders right below the package that hold code."""
    return sorted(folder.parent.name for folder in PACKAGE.glob("*/__init__.py"))
