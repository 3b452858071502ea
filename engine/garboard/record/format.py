"""Formats and their versions: what is read, what is brought up step by step, what is refused."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from garboard.errors import ReadingError, did_you_mean

_FORMAT: Final = re.compile(r"([a-z][a-z-]*)/([0-9]{1,6})")


@dataclass(frozen=True, slots=True)
class Upgrade:
    """One step from a version to the next; ``change`` returns new data and leaves the old alone."""

    version: int
    why: str
    change: Callable[[Mapping[str, Any]], dict[str, Any]]


@dataclass(frozen=True, slots=True)
class Format:
    """A document format: its name, the newest version that is read, and the steps up to it.

    The steps are in order and without a gap, the last one leads to ``newest``.
    """

    name: str
    newest: int
    upgrades: tuple[Upgrade, ...] = ()

    def __post_init__(self) -> None:
        versions = [step.version for step in self.upgrades]
        if versions != list(range(self.oldest, self.newest)):
            raise ValueError(f"the upgrades of {self.name} do not lead step by step to "
                             f"version {self.newest}: {versions}")

    @property
    def oldest(self) -> int:
        """The oldest version that can be brought up."""
        return self.upgrades[0].version if self.upgrades else self.newest

    @property
    def newest_name(self) -> str:
        return f"{self.name}/{self.newest}"

    def version_of(self, written: object) -> int:
        """The version a document says it has; ReadingError when it cannot be read."""
        match = _FORMAT.fullmatch(written) if isinstance(written, str) else None
        if match is None:
            raise ReadingError("format-malformed", repr(written), self.newest_name)
        name, version = match[1], int(match[2])
        if name != self.name:
            raise ReadingError("format-unknown", match[0], self.newest_name,
                               did_you_mean(name, [self.name]))
        if version > self.newest:
            raise ReadingError("format-newer", match[0], f"up to {self.newest_name}",
                               "this document was written for a newer program: update the program")
        if version < self.oldest:
            raise ReadingError("format-older", match[0],
                               f"{self.name}/{self.oldest} to {self.newest_name}")
        return version

    def brought_up(self, data: Mapping[str, Any], version: int) -> Mapping[str, Any]:
        """The data in the newest version, changed by every step from ``version`` on, in order."""
        for step in self.upgrades[version - self.oldest:]:
            data = {**step.change(data), "format": f"{self.name}/{step.version + 1}"}
        return data


RECORD_FORMAT: Final = Format("installation-record", 1)
