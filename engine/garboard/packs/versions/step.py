"""The steps of a version, after semver.org 2.0.0, and what each means for a pack.

major  something that passed may no longer pass, or an installation may no longer be accepted
minor  findings may change, but none that passed can fail or be left open by it
patch  findings stay as they are; only what is said to people changes

While the first number is 0, the second rises for a major step and the third for the others, as is
common practice.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final, Literal

from garboard.errors import Problem
from garboard.packs.base import version_order
from garboard.packs.pack import Pack
from garboard.packs.spot import Spot
from garboard.packs.versions.changes import Reason

Step = Literal["none", "patch", "minor", "major"]
#: Smallest first.
STEPS: Final[tuple[Step, ...]] = ("none", "patch", "minor", "major")


def step_of(found: Iterable[Reason]) -> Step:
    """The largest step that any of the reasons asks for."""
    return max((each.step for each in found), key=STEPS.index, default="none")


def rise_problem(old: Pack, new: Pack, step: Step) -> Problem | None:
    """What is wrong with the version of a changed pack; none where it has risen far enough."""
    least = least_version(old.version, step)
    if version_order(new.version.partition("-")[0]) >= version_order(least) and (
            step == "none" or version_order(new.version) > version_order(old.version)):
        return None
    spot: Spot = new.spot()
    return Problem("version-rises-too-little", spot.at("version").place(),
                   found=f"{new.version}, after {old.version}",
                   expected=f"{least} or later, for a {step} step")


def least_version(old: str, step: Step) -> str:
    """The first version that a step leads to; the old one for none."""
    if step == "none":
        return old
    plain, _, before_release = old.partition("+")[0].partition("-")
    first, second, third = (int(part) for part in plain.split("."))
    if step == "major":
        return f"{first + 1}.0.0" if first else f"0.{second + 1}.0"
    if step == "minor" and first:
        return f"{first}.{second + 1}.0"
    return plain if before_release else f"{first}.{second}.{third + 1}"
