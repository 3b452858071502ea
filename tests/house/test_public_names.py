"""What a floor offers stands in its ``__all__``: sorted, complete, and there."""

from __future__ import annotations

import ast
import importlib

import pytest

from house.sources import PACKAGE, floors, trees


def order(name: str) -> tuple[int, str]:
    """CONSTANTS, then Classes, then functions, as the linter sorts them."""
    kind = 0 if name.upper() == name and len(name) > 1 else 1 if name[:1].isupper() else 2
    return kind, name


def brought_in(floor: str) -> set[str]:
    """The public names that the floor's ``__init__`` imports or defines."""
    names: set[str] = set()
    for node in trees()[PACKAGE / floor / "__init__.py"].body:
        if isinstance(node, ast.ImportFrom) and node.module != "__future__":
            names |= {alias.asname or alias.name for alias in node.names}
        elif isinstance(node, ast.FunctionDef | ast.ClassDef):
            names.add(node.name)
    return {name for name in names if not name.startswith("_")}


@pytest.mark.parametrize("floor", floors())
def test_public_names(floor: str) -> None:
    module = importlib.import_module(f"garboard.{floor}")
    offered = list(getattr(module, "__all__", ()))
    assert offered == sorted(set(offered), key=order)
    assert [name for name in offered if not hasattr(module, name)] == []
    assert brought_in(floor) - set(offered) == set()


def test_the_root_offers_its_version_only() -> None:
    assert importlib.import_module("garboard").__all__ == ["__version__"]
