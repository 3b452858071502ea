"""A rule on its way into a program: what it is about, when it applies, what must hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from garboard.expressions.check import Checked

#: What a limit can be: a figure in its canonical unit, a count, or a list of texts.
LimitValue = float | int | tuple[str, ...]


@dataclass(frozen=True, slots=True)
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

    @property
    def about(self) -> str:
        return self.must_hold.about

    @property
    def parts(self) -> tuple[Checked, ...]:
        """Condition, if any, and requirement."""
        return (self.must_hold,) if self.applies_when is None else (
            self.applies_when, self.must_hold)
