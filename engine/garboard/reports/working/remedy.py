"""What a search for the smallest design change found, for a report to say."""

from __future__ import annotations

from dataclasses import dataclass

#: Why nothing was searched for, or what the search came to.
FOUND = "found"
NONE_SUFFICES = "no single change suffices"
NONE_LISTED = "the rule lists no permissible changes"
OTHERWISE = "this program assesses the finding otherwise than the trail; replay the trail first"


@dataclass(frozen=True, slots=True)
class Tried:
    """A design change that was tried by assessing the whole record again.

    ``outcome`` is that of the finding in question; ``newly_failing`` and ``newly_open`` are ids of
    findings that were neither before. ``refused`` says why the changed record could not be read.
    """

    change: str
    outcome: str | None
    newly_failing: tuple[str, ...] = ()
    newly_open: tuple[str, ...] = ()
    refused: str = ""

    @property
    def passes(self) -> bool:
        """Whether the finding passes after it."""
        return self.outcome == "passed"

    @property
    def suffices(self) -> bool:
        """Whether it passes and nothing fails that did not fail before."""
        return self.passes and not self.newly_failing


@dataclass(frozen=True, slots=True)
class Remedy:
    """What came of the search for one finding; ``tried`` are in the order they were tried."""

    word: str
    tried: tuple[Tried, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def chosen(self) -> Tried | None:
        """The smallest change that suffices."""
        return next((each for each in self.tried if each.suffices), None)
