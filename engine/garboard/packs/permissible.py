"""Design changes that a rule permits to be proposed when it fails; nothing else can be listed.

What cannot be said here cannot be proposed: no lead gets longer, no fuse bigger, no rating is
declared higher, and no recorded or measured value is another one. A device is replaced by one of
the same rating that breaks more, a conductor by a larger size of its own list of sizes, and a
battery without a device of its own gets one.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Annotated, Final, Literal

from pydantic import Field

from garboard.errors import Problem, ReadingError
from garboard.packs.citation import Citation
from garboard.packs.model import Model, Text
from garboard.packs.spot import Spot, shown
from garboard.values import read_number, read_size, read_voltage_kind

LARGER_CONDUCTOR: Final = "larger conductor"
HIGHER_CLASS: Final = "higher class"
OWN_DEVICE: Final = "own device"
#: What a rule can be about for a change to reach what it looks at.
_ABOUT: Final[Mapping[str, tuple[str, ...]]] = {
    LARGER_CONDUCTOR: ("conductor", "load", "run"),
    HIGHER_CLASS: ("device", "battery"),
    OWN_DEVICE: ("battery",),
}
_NEEDED: Final[Mapping[str, tuple[str, ...]]] = {
    LARGER_CONDUCTOR: (), HIGHER_CLASS: ("classes",), OWN_DEVICE: ("classes", "ratings")}
_ALLOWED: Final[Mapping[str, tuple[str, ...]]] = {
    **_NEEDED, LARGER_CONDUCTOR: ("up_to",)}


class BreaksAt(Model):
    """A current that a device breaks, at a direct voltage."""

    current: Text = Field(description="The current it breaks, such as '20 kA'.")
    voltage: Text = Field(description="The direct voltage at which it does, such as '125 V DC'.")


class DeviceClass(Model):
    """A class of device, without a rating: the new device has that of the one it replaces."""

    device_class: Text = Field(description="Name of the class, as in a record.")
    breaks: Annotated[tuple[BreaksAt, ...], Field(strict=False, min_length=1)] = Field(
        description="What it breaks on direct current.")
    mounting: Literal["holder", "block", "panel", "in line"] | None = Field(None, description=(
        "How it is mounted; left out, that is to be found out."))
    curve: Literal["fast", "normal", "slow"] | None = Field(None, description=(
        "How fast it opens on a moderate overload; left out, that is to be found out."))


class Permissible(Model):
    """A change of the design that may be proposed."""

    change: Literal["larger conductor", "higher class", "own device"] = Field(description=(
        "'larger conductor' (the next sizes of the same list of sizes), 'higher class' (a device "
        "of the same rating that breaks more), 'own device' (one at the terminal of a battery "
        "that has none)."))
    up_to: Text | None = Field(None, description="Of a larger conductor: the largest size.")
    classes: Annotated[tuple[DeviceClass, ...] | None, Field(strict=False)] = Field(
        None, description="Of a device: the classes that are tried, the smallest first.")
    ratings: Annotated[tuple[Text, ...] | None, Field(strict=False)] = Field(None, description=(
        "Of an own device: the ratings there are, the smallest first. The one taken is the "
        "smallest that carries the greatest current the battery may deliver."))
    citation: Citation = Field(description="Where the classes, ratings or sizes come from.")


def permissible_problems(about: str, changes: tuple[Permissible, ...], spot: Spot,
                         ) -> Iterator[Problem]:
    """What is wrong with the changes that a rule lists; ``spot`` is that of the rule."""
    for number, each in enumerate(changes):
        here = spot.at("permissible_changes", number)
        if about not in _ABOUT[each.change]:
            yield Problem("permissible-misfit", here.at("change").place(),
                          found=f"{each.change} in a rule about a {about}",
                          expected=f"a rule about: {', '.join(_ABOUT[each.change])}")
        for name in ("up_to", "classes", "ratings"):
            given = getattr(each, name) is not None
            if given and name not in _ALLOWED[each.change]:
                yield Problem("permissible-misfit", here.at(name).place(key=True), found=name,
                              expected=", ".join(_ALLOWED[each.change]))
            if not given and name in _NEEDED[each.change]:
                yield Problem("key-missing", here.place(), found=f"no {name!r}", expected=name)
        yield from _unreadable(each, here)
        yield from _not_ascending(each, here)


def _unreadable(change: Permissible, spot: Spot) -> Iterator[Problem]:
    if change.up_to is not None:
        try:
            read_size(change.up_to)
        except ReadingError as wrong:
            yield wrong.problem().at(spot.at("up_to").place())
    for place, rating in enumerate(change.ratings or ()):
        yield from _number(rating, "current", spot.at("ratings", place))
    for place, each in enumerate(change.classes or ()):
        for point, breaks in enumerate(each.breaks):
            here = spot.at("classes", place, "breaks", point)
            yield from _number(breaks.current, "current", here.at("current"))
            try:
                _, kind = read_voltage_kind(breaks.voltage)
            except ReadingError as wrong:
                yield wrong.problem().at(here.at("voltage").place())
                continue
            if kind != "DC":
                yield Problem("permissible-steps", here.at("voltage").place(),
                              found=shown(breaks.voltage), expected="a direct voltage, marked DC")


def _number(text: str, dimension: str, spot: Spot) -> Iterator[Problem]:
    try:
        read_number(text, dimension)
    except ReadingError as wrong:
        yield wrong.problem().at(spot.place())


def _not_ascending(change: Permissible, spot: Spot) -> Iterator[Problem]:
    """Steps go up, so that the first that will do is the smallest."""
    try:
        ratings = [read_number(each, "current") for each in change.ratings or ()]
        currents = [max(read_number(point.current, "current") for point in each.breaks)
                    for each in change.classes or ()]
    except ReadingError:
        return  # complained about already
    for name, steps in (("ratings", ratings), ("classes", currents)):
        for place, (before, after) in enumerate(pairwise(steps), 1):
            if after <= before:
                yield Problem("permissible-steps", spot.at(name, place).place(),
                              found="a step that is not above the one before",
                              expected="the smallest first")
