"""The exception tree. All exceptions carry fields and survive pickling.

GarboardError
├── Refused                    input, pack, trail, output or command line refused: exit code 3
│   ├── DocumentRefused        a file that cannot be read as YAML or JSON, or breaks a named limit
│   ├── RecordRefused          a record that breaks the record format
│   ├── PackRefused            a pack that does not load
│   ├── DispensationsRefused   agreed exceptions that cannot be read or must not be made
│   ├── TrailRefused           a trail that does not read or whose digest is wrong
│   ├── SignatureRefused       a key that cannot be used, or a signature that does not hold
│   ├── OutputRefused          an output that cannot be written
│   └── CommandRefused         a command line that makes no sense
├── ReadingError               a text that is not the value it should be (no place yet)
├── PluginError                a plugin that does not load, clashes or breaks its manifest
└── CalculationError           a failure inside a quantity function
"""

from __future__ import annotations

from collections.abc import Iterable

from garboard.errors.problem import Problem, in_order, render


class GarboardError(Exception):
    """The root of all errors this package raises on purpose."""


class Refused(GarboardError):
    """Input that is refused, with all its problems in order."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = in_order(problems)
        super().__init__(self.problems)

    def __str__(self) -> str:
        return "\n".join(render(problem) for problem in self.problems)


class DocumentRefused(Refused):
    """A file that cannot be read as a document."""


class RecordRefused(Refused):
    """A record that breaks the record format."""


class PackRefused(Refused):
    """A pack that does not load."""


class DispensationsRefused(Refused):
    """Agreed exceptions that cannot be read, or that a rule does not allow."""


class TrailRefused(Refused):
    """A trail that cannot be read or trusted."""


class SignatureRefused(Refused):
    """A key that cannot be used, or a signature that does not hold."""


class OutputRefused(Refused):
    """An output that cannot be written where it was asked for."""


class CommandRefused(Refused):
    """A command line that makes no sense."""


class ReadingError(GarboardError):
    """A text that does not say what it should; the reader adds the place.

    ``offset`` is where in the text the trouble starts, counted from 0.
    """

    def __init__(self, code: str, found: str = "", expected: str = "", hint: str = "",
                 offset: int = 0) -> None:
        self.code, self.found, self.expected, self.hint = code, found, expected, hint
        self.offset = offset
        super().__init__(code, found, expected, hint, offset)

    def problem(self) -> Problem:
        """The same as a problem without a place."""
        return Problem(self.code, found=self.found, expected=self.expected, hint=self.hint)

    def __str__(self) -> str:
        return render(self.problem())


class PluginError(GarboardError):
    """A plugin that does not load, clashes with another, or breaks its manifest."""

    def __init__(self, plugin: str, code: str, found: str = "", expected: str = "",
                 hint: str = "") -> None:
        self.plugin, self.code = plugin, code
        self.found, self.expected, self.hint = found, expected, hint
        super().__init__(plugin, code, found, expected, hint)

    def problem(self) -> Problem:
        """The same as a problem; the plugin's name stands in ``found``."""
        return Problem(self.code, found=f"plugin {self.plugin}: {self.found}",
                       expected=self.expected, hint=self.hint)

    def __str__(self) -> str:
        return render(self.problem())


class CalculationError(GarboardError):
    """A failure inside a quantity function: which quantity, for which item, and what was raised."""

    def __init__(self, quantity: str, item: str, raised: str) -> None:
        self.quantity, self.item, self.raised = quantity, item, raised
        super().__init__(quantity, item, raised)

    def __str__(self) -> str:
        return f"{self.quantity} of {self.item}: {self.raised}"
