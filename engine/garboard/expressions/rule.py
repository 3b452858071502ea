"""A rule on its way into a program: what it is about, when it applies, what must hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from garboard.expressions.check import Checked
from garboard.expressions.tree import Conditional, Expression, Gathering, children

#: What a limit can be: a figure in its canonical unit, a count, or a list of texts.
LimitValue = float | int | tuple[str, ...]


@dataclass(frozen=True)
class RuleSource:
    """One rule, checked. ``limits`` holds at least the values of the limits it uses."""

    name: str
    must_hold: Checked
    applies_when: Checked | None = None
    limits: Mapping[str, LimitValue] = field(default_factory=dict)

    def __post_init__(self) -> None:
        if self.applies_when is not None and self.applies_when.about != self.about:
            raise ValueError(f"rule {self.name}: its condition is about "
                             f"{self.applies_when.about}, its requirement about {self.about}")
        missing = [name for part in self.parts for name in part.limits if name not in self.limits]
        if missing:
            raise ValueError(f"rule {self.name}: no value for the limits {', '.join(missing)}")

    @cached_property
    def hides(self) -> bool:
        """Whether bounds can take part without showing among the operands: in loops and choices."""
        return any(_hides(part.root) for part in self.parts)

    @property
    def about(self) -> str:
        return self.must_hold.about

    @property
    def parts(self) -> tuple[Checked, ...]:
        """Condition, if any, and requirement."""
        return (self.must_hold,) if self.applies_when is None else (
            self.applies_when, self.must_hold)


def _hides(node: Expression) -> bool:
    return isinstance(node, (Conditional, Gathering)) or any(map(_hides, children(node)))
