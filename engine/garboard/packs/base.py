"""A pack that another builds on, with the versions it accepts."""

from __future__ import annotations

from typing import Annotated, Final

from pydantic import Field

from garboard.packs.model import VERSION_PATTERN, Id, Model

_SMALLEST_PART: Final = -1
Version = Annotated[str, Field(pattern=VERSION_PATTERN)]


class Base(Model):
    """A pack this one builds on: all its limits and rules hold here too, unless changed."""

    pack: Id = Field(description=(
        "Name of the pack. It is looked for among those given with --pack, beside this pack, and "
        "among the shipped ones."))
    from_: Version = Field(alias="from", description="First version that is accepted.")
    before: Version = Field(description="First version that is not accepted any more.")

    def accepts(self, version: str) -> bool:
        """Whether a version lies in the range."""
        return version_order(self.from_) <= version_order(version) < version_order(self.before)


def version_order(version: str) -> tuple[tuple[int, ...], tuple[tuple[int, int, str], ...]]:
    """A key that sorts versions by semver.org 2.0.0: a pre-release comes before its release.

    What stands behind ``+`` does not count.
    """
    plain, _, pre = version.partition("+")[0].partition("-")
    numbers = tuple(int(part) for part in plain.split("."))
    if not pre:
        return numbers, ((2, 0, ""),)
    parts = ((0, int(part), "") if part.isdigit() else (1, 0, part) for part in pre.split("."))
    return numbers, (*parts, (_SMALLEST_PART, 0, ""))
