"""Source for the inside of the collection functions.

A filter that is false leaves a thing out without looking at it further; one that is not known makes
it doubtful.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final, Protocol

from garboard.expressions.generate.body import Body
from garboard.expressions.tree import Expression, Gathering


class Writer(Protocol):
    """What a loop needs of whoever writes values."""

    body: Body

    def value(self, node: Expression) -> str: ...


class _Loop:
    """The lines before the loop, for each thing, and after it."""

    def __init__(self, writer: Writer, node: Gathering, result: str) -> None:
        self.writer, self.body, self.node, self.result = writer, writer.body, node, result

    def begin(self) -> None: ...

    def each(self, filtered: str | None) -> None: ...

    def end(self) -> None: ...


class _Quantified(_Loop):
    """``all`` and ``any``: every part is looked at, so causes do not depend on order."""

    @property
    def _all(self) -> bool:
        return self.node.function.text == "all"

    def begin(self) -> None:
        self.body.line(f"{self.result} = {self._all}")

    def each(self, filtered: str | None) -> None:
        if filtered is None:
            self._joined(self.writer.value(self.node.element))
            return
        with self.body.block(f"if {filtered} is not False:"):
            part, given = self.writer.value(self.node.element), self.body.fresh()
            doubtful = f"{part} | absent({filtered})" if self._all else f"{part} & {filtered}"
            self.body.line(f"{given} = {part} if {filtered} is True else {doubtful}")
            self._joined(given)

    def _joined(self, part: str) -> None:
        result, sign = self.result, "&" if self._all else "|"
        self.body.line(f"{result} = {part} if {result} is {self._all} else {result} {sign} {part}")


class _Counted(_Loop):
    """``count``."""

    def begin(self) -> None:
        self.doubtful = self.body.fresh()
        self.body.line(f"{self.result} = 0")
        self.body.line(f"{self.doubtful} = []")

    def each(self, filtered: str | None) -> None:
        with self.body.block("if True:" if filtered is None else f"if {filtered} is True:"):
            self.body.line(f"{self.result} += 1")
        if filtered is not None:
            with self.body.block(f"elif {filtered} is not False:"):
                self.body.line(f"{self.doubtful}.append({filtered})")

    def end(self) -> None:
        with self.body.block(f"if {self.doubtful}:"):
            self.body.line(f"{self.result} = counted({self.result}, {self.doubtful})")


class _Numbers(_Loop):
    """``sum``, ``min`` and ``max``: the numbers are gathered, then dealt with at once."""

    def begin(self) -> None:
        self.parts, self.doubtful = self.body.fresh(), self.body.fresh()
        self.body.line(f"{self.parts} = []")
        self.body.line(f"{self.doubtful} = []")

    def each(self, filtered: str | None) -> None:
        if filtered is None:
            self.body.line(f"{self.parts}.append({self.writer.value(self.node.element)})")
            return
        with self.body.block(f"if {filtered} is not False:"):
            part = self.writer.value(self.node.element)
            with self.body.block(f"if {filtered} is True:"):
                self.body.line(f"{self.parts}.append({part})")
            with self.body.block("else:"):
                self.body.line(f"{self.doubtful}.append(({filtered}, {part}))")

    def end(self) -> None:
        helper = {"sum": "summed", "min": "least", "max": "greatest"}[self.node.function.text]
        self.body.line(f"{self.result} = {helper}({self.parts}, {self.doubtful})")


LOOPS: Final[Mapping[str, Callable[[Writer, Gathering, str], _Loop]]] = {
    "all": _Quantified, "any": _Quantified, "count": _Counted,
    "sum": _Numbers, "min": _Numbers, "max": _Numbers,
}
