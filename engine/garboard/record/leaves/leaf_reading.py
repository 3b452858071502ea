"""What reading a leaf gives: facts, problems, and what is unlikely about it."""

from __future__ import annotations

from dataclasses import dataclass, field

from garboard.record.fact import Fact

#: Keys from the leaf on to something inside it.
LeafPath = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class LeafProblem:
    """What is wrong with a leaf; ``path`` starts at the leaf, ``key`` means the key itself."""

    code: str
    path: LeafPath = ()
    found: str = ""
    expected: str = ""
    hint: str = ""
    offset: int | None = None
    key: bool = False


@dataclass(slots=True)
class LeafReading:
    """The facts of one leaf by name, its problems, what is unlikely, and the evidence it names."""

    facts: list[tuple[str, Fact]] = field(default_factory=list)
    problems: list[LeafProblem] = field(default_factory=list)
    unlikely: list[LeafProblem] = field(default_factory=list)
    evidence: list[tuple[LeafPath, tuple[str, ...]]] = field(default_factory=list)
