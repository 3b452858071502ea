"""The working of one rule for one item, as data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from garboard.expressions.outcome import Row
from garboard.values import Number, Truth

Part = Literal["condition", "requirement"]


@dataclass(frozen=True, slots=True)
class Step:
    """One part of the expression with its value.

    ``offset`` and ``length`` are its spot in the text of its part; ``key`` is the data key it was
    read from (``f1.rating``), where it was read.
    """

    part: Part
    text: str
    offset: int
    length: int
    kind: str
    dimension: str | None
    value: object
    key: str | None = None


@dataclass(frozen=True, slots=True)
class Turn:
    """What a collection function found of one of several things.

    ``filtered`` is whether it was looked at (true where there is no filter), ``value`` what the
    function was given; a thing left out has none.
    """

    item: str
    filtered: Truth
    value: object
    decides: bool
    steps: tuple[Step, ...]
    compared: tuple[Compared, ...]


@dataclass(frozen=True, slots=True)
class Compared:
    """One comparison, or something that is true or false by itself (no operator).

    ``decides`` marks those the outcome rests on: what is false where that fails the rule, what is
    not known where that still matters, what is true where that passes it. ``distance`` is how far
    the numbers lie apart, positive on the side where the comparison holds; ``share`` is that over
    the size of the limit. Where one side is a literal or a limit it is the limit, else the right
    side is.
    """

    part: Part
    text: str
    truth: Truth
    decides: bool
    operator: str | None = None
    left: object = None
    right: object = None
    dimension: str | None = None
    distance: Number | None = None
    share: Number | None = None
    turns: tuple[Turn, ...] = ()


@dataclass(frozen=True, slots=True)
class Working:
    """The working of a rule for an item.

    ``row`` is what the program gives. ``condition`` and ``requirement`` are the author's text with
    values put in; the requirement is absent where it was not looked at.
    """

    row: Row
    condition: str | None
    requirement: str | None
    steps: tuple[Step, ...]
    compared: tuple[Compared, ...]

    @property
    def deciding(self) -> tuple[Compared, ...]:
        """The comparisons the outcome rests on."""
        return tuple(each for each in self.compared if each.decides)
