"""Which outcomes the cases of a pack show, rule by rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from garboard.authoring.proving.prove import Proof
from garboard.errors import Problem
from garboard.packs.cases import KINDS, CaseBook


@dataclass(frozen=True, slots=True)
class Coverage:
    """How often the cases of one rule show each kind of outcome; why some cannot be shown."""

    rule: str
    shown: Counter[str]
    not_possible: dict[str, str]

    @property
    def missing(self) -> tuple[str, ...]:
        """The kinds that no case shows although it could."""
        return tuple(kind for kind in KINDS
                     if not self.shown[kind] and kind not in self.not_possible)


def covered(rules: Iterable[str], book: CaseBook, proofs: Iterable[Proof],
            ) -> tuple[tuple[Coverage, ...], tuple[Problem, ...]]:
    """The coverage of rules, and what is called not possible and yet shown.

    ``rules`` are all that the cases are about, and may be more.
    """
    counts = {rule: Counter[str]() for rule in rules}
    for proof in proofs:
        for seen in proof.shown:
            counts[seen.rule].update(seen.kinds)
    problems = tuple(
        Problem("case-kind-possible", spot.place(), found=f"{rule}: {kind}")
        for (rule, kind), (_, spot) in book.not_possible.items()
        if rule in counts and counts[rule][kind])
    return tuple(Coverage(rule, shown, {kind: why for (name, kind), (why, _)
                                        in book.not_possible.items() if name == rule})
                 for rule, shown in counts.items()), problems
