"""Every exception class of the package survives pickling with its fields."""

from __future__ import annotations

import inspect
import pickle
from typing import Any

import pytest

from garboard.errors import GarboardError, Place, Problem, Refused
from garboard.expressions import ExpressionProblem
from house.sources import modules

CODE = "document-missing"
PLACE = Place("x.yaml", 3, 4, "a.b", "a: b", 2)
PROBLEMS = (Problem(CODE, PLACE, "one", "two", "hint"),
            Problem("duplicate-key", Place("x.yaml", 2), level="warning"))
#: A value for a parameter of each annotated type.
SAMPLES: dict[str, object] = {
    "Iterable[Problem]": PROBLEMS, "Sequence[Problem]": PROBLEMS, "tuple[Problem, ...]": PROBLEMS,
    "Problem": PROBLEMS[0], "str": "a text", "str | None": "a text", "int": 7, "object": "a text",
    "Iterable[ExpressionProblem]": (ExpressionProblem(CODE, 2, 3, "one"),),
    "Place": PLACE, "tuple[str, ...]": ("a", "b"), "Sequence[str]": ("a", "b"),
}


def exception_classes() -> list[type[BaseException]]:
    """Every exception class that a module of the package defines, from the whole package."""
    found = {value for module in modules() for value in vars(module).values()
             if isinstance(value, type) and issubclass(value, BaseException)
             and value.__module__ == module.__name__}
    return sorted(found, key=lambda cls: f"{cls.__module__}.{cls.__qualname__}")


def made(cls: type[BaseException]) -> BaseException:
    """An instance with a value in every field."""
    if not inspect.isfunction(cls.__init__):  # takes what any exception takes
        return cls("a text")
    arguments: list[Any] = []
    for parameter in list(inspect.signature(cls.__init__).parameters.values())[1:]:
        sample = CODE if parameter.name == "code" else SAMPLES.get(parameter.annotation)
        assert sample is not None, f"{cls.__name__}: add a sample for {parameter.annotation}"
        arguments.append(sample)
    return cls(*arguments)


@pytest.mark.parametrize("cls", exception_classes(), ids=lambda cls: cls.__name__)
def test_exceptions_survive_pickling(cls: type[BaseException]) -> None:
    one = made(cls)
    again = pickle.loads(pickle.dumps(one))
    assert type(again) is cls
    assert vars(again) == vars(one)
    assert again.args == one.args
    assert str(again) == str(one)


def test_the_tree_is_found() -> None:
    found = exception_classes()
    assert len([cls for cls in found if issubclass(cls, Refused)]) >= 7
    assert len([cls for cls in found if issubclass(cls, GarboardError)]) >= 11


def test_the_drawn_tree_is_the_tree() -> None:
    """The docstring of the module that defines the tree names every class in it."""
    import garboard.errors.tree as tree

    drawn = {line.lstrip("│├└─ ").split()[0] for line in (tree.__doc__ or "").splitlines()
             if line.startswith(("GarboardError", "│", "├", "└"))}
    assert drawn == {cls.__name__ for cls in exception_classes()
                     if cls.__module__ == tree.__name__}
