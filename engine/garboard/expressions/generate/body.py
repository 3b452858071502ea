"""The lines of a function in the making, with names for values that were computed already."""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from contextlib import contextmanager


class Constants:
    """Values handed to the function by reference, each under one name."""

    def __init__(self) -> None:
        self.values: dict[str, object] = {}
        self._names: dict[Hashable, str] = {}

    def name(self, value: Hashable) -> str:
        """The name of a constant; equal values of one type share it."""
        key = (type(value), repr(value))
        if key not in self._names:
            self._names[key] = f"k{len(self._names)}"
            self.values[self._names[key]] = value
        return self._names[key]


class Body:
    """Lines at an indentation. ``named`` gives an expression a name, once in every block."""

    def __init__(self, constants: Constants, indent: int = 0) -> None:
        self.constants = constants
        self.lines: list[str] = []
        self._indent = indent
        self._count = 0
        self._known: list[dict[Hashable, str]] = [{}]

    def line(self, text: str) -> None:
        self.lines.append(f"{' ' * self._indent}{text}")

    def fresh(self) -> str:
        self._count += 1
        return f"v{self._count}"

    def named(self, key: Hashable, source: str) -> tuple[str, bool]:
        """The name of a value, and whether it was computed just now.

        A value computed in a block is known in that block and those inside it, and nowhere else.
        """
        for known in self._known:
            if key in known:
                return known[key], False
        name = self.fresh()
        self._known[-1][key] = name
        self.line(f"{name} = {source}")
        return name, True

    @contextmanager
    def block(self, header: str) -> Iterator[None]:
        """The lines below a header such as ``if ...:``."""
        self.line(header)
        self._indent += 1
        self._known.append({})
        yield
        self._known.pop()
        self._indent -= 1
