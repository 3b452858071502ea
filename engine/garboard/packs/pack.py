"""A pack as read: header, limits and rules in the order of their names, and where they stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from garboard.errors import Problem
from garboard.packs.header import Header
from garboard.packs.layering import Layering, Relaxation, Retired
from garboard.packs.limit import Limit
from garboard.packs.rule import Rule
from garboard.packs.seal import Seal
from garboard.packs.spot import DataPath, Spot
from garboard.trail import Encoded, encoded


@dataclass(frozen=True)
class Pack:
    """A pack whose shape is right; its expressions are not checked yet (see ``check_pack``).

    ``limits`` and ``rules`` stand in the order of their names. Two packs are equal when their
    content is; ``warnings``, ``spots`` and ``seal`` say only how and where it was written.
    ``layering`` is there when the pack builds on others; ``rules`` are those in force. A pack
    without ``seal`` is a working copy.
    """

    header: Header
    limits: Mapping[str, Limit]
    rules: tuple[Rule, ...]
    warnings: tuple[Problem, ...] = field(default=(), compare=False)
    spots: Mapping[DataPath, Spot] = field(default_factory=dict, compare=False, repr=False)
    layering: Layering | None = None
    seal: Seal | None = field(default=None, compare=False)

    @property
    def name(self) -> str:
        return self.header.pack

    @property
    def version(self) -> str:
        return self.header.version

    @property
    def title(self) -> str:
        return self.header.title

    @cached_property
    def digest(self) -> str:
        """``sha256:`` and the SHA-256 over the canonical bytes of ``as_data``, in hexadecimal."""
        return self.resolved.digest

    @cached_property
    def resolved(self) -> Encoded:
        """``as_data`` with its canonical bytes, as every trail holds it."""
        return encoded(self.as_data())

    def as_data(self) -> dict[str, object]:
        """The resolved form: everything a replay needs, as plain data.

        What was left out is either filled in (``covers``, ``decision_rule``) or not there at all;
        every limit stands both as written and in its canonical unit. How the pack was laid out in
        files leaves no trace in it.
        """
        limits = {name: limit.as_data() for name, limit in self.limits.items()}
        rules = sorted([rule.as_data() for rule in self.rules]
                       + [each.as_data() for each in self.retired], key=lambda each: each["id"])
        layers = {} if self.layering is None else self.layering.as_data()
        return {**self.header.as_data(), "limits": limits, "rules": rules, **layers}

    @property
    def retired(self) -> tuple[Retired, ...]:
        """The rules that a layer retired."""
        return () if self.layering is None else self.layering.retired

    @property
    def relaxations(self) -> tuple[Relaxation, ...]:
        """What layers relaxed or retired."""
        return () if self.layering is None else self.layering.relaxations

    @property
    def files(self) -> tuple[Path, ...]:
        """The files it was read from, those of the packs below included."""
        documents = (part.document for each in self.spots.values() for part in each.parts())
        return tuple(Path(file) for file in sorted({each.file for each in documents if each}))

    def spot(self, *path: str | int) -> Spot:
        """Where the head stands, or ``spot("rules", id)``, or ``spot("limits", name)``."""
        return self.spots.get(path, Spot(None, (), None))

