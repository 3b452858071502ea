"""The catalogue of problem codes and the code that raises them agree."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

import pytest

from garboard.errors import CATALOGUE
from house.sources import PACKAGE, trees

#: Which argument of which call is a problem code.
CODE_ARGUMENT = {"Problem": 0, "ReadingError": 0, "PluginError": 1}


def calls_with_codes() -> Iterator[tuple[str, str]]:
    """The place and the code of every call that names a code in so many words."""
    for file, tree in trees().items():
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call):
                continue
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            if name not in CODE_ARGUMENT:
                continue
            given = [*node.args[CODE_ARGUMENT[name]:CODE_ARGUMENT[name] + 1],
                     *(word.value for word in node.keywords if word.arg == "code")]
            for argument in given:
                for code in literals(argument):
                    yield f"{file.relative_to(PACKAGE)}:{node.lineno}", code


def literals(argument: ast.expr) -> list[str]:
    """The texts that an argument can be; none for one that is put together when it runs."""
    if isinstance(argument, ast.IfExp):
        return literals(argument.body) + literals(argument.orelse)
    is_text = isinstance(argument, ast.Constant) and isinstance(argument.value, str)
    return [argument.value] if is_text else []


def words() -> set[str]:
    """Every text in the package outside the catalogue."""
    return {node.value for file, tree in trees().items() if file.parent.name != "codes"
            for node in ast.walk(tree)
            if isinstance(node, ast.Constant) and isinstance(node.value, str)}


def test_calls_use_known_codes() -> None:
    calls = list(calls_with_codes())
    assert len(calls) > 20
    assert [(place, code) for place, code in calls if code not in CATALOGUE] == []


def test_every_code_is_raised_somewhere() -> None:
    assert sorted(set(CATALOGUE) - words()) == []


@pytest.mark.parametrize("code", CATALOGUE)
def test_codes_are_phrased_for_people(code: str) -> None:
    title, explanation = CATALOGUE[code]
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code)
    assert 0 < len(title) <= 60 and title[0] == title[0].upper() and not title.endswith(".")
    assert explanation.endswith(".")
