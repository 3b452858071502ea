"""The design changes to try for one finding, in the order the rule lists them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Final

from garboard.assessment.remedies.draft import Change, with_class, with_device, with_size
from garboard.packs.permissible import (
    HIGHER_CLASS,
    LARGER_CONDUCTOR,
    OWN_DEVICE,
    DeviceClass,
    Permissible,
)
from garboard.quantities import Figures, Item
from garboard.record import Record, Thing
from garboard.values import Bounds, ConductorSize, read_number, read_size, sizes_above

_ENDS: Final = ("from", "to")
_POSITIVE: Final = "positive"


@dataclass
class Proposing:
    """Proposes changes of one record; ``notes`` say why some could not be tried."""

    record: Record
    figures: Figures
    notes: list[str] = field(default_factory=list)

    def changes(self, permissible: tuple[Permissible, ...], item: str) -> Iterator[Change]:
        """Every change a rule lists for one of its items, the smallest first."""
        kinds: dict[str, Callable[[Permissible, Item], Iterator[Change]]] = {
            LARGER_CONDUCTOR: self._conductors, HIGHER_CLASS: self._classes,
            OWN_DEVICE: self._own_devices}
        for each in permissible:
            yield from kinds[each.change](each, self.figures.items[item])

    # conductors ----------------------------------------------------------------------------------
    def _conductors(self, permissible: Permissible, item: Item) -> Iterator[Change]:
        things = [self.record.things[each] for each in _conductors_of(item)]
        sizes = [thing.value("size") for thing in things]
        known = [each for each in sizes if isinstance(each, ConductorSize)]
        if not known or len(known) < len(sizes):
            self.notes.append(f"no larger conductor was tried for {item.id}: a size is not "
                              "recorded")
            return
        largest = None if permissible.up_to is None else read_size(permissible.up_to).area_mm2
        thickest = max(known, key=lambda each: each.area_mm2)
        for size in sizes_above(thickest):
            if largest is None or size.area_mm2 <= largest:
                names = ", ".join(thing.id for thing in things)
                yield Change(
                    f"a larger conductor: {names} of {size.written} instead of "
                    f"{', '.join(dict.fromkeys(each.written for each in known))}",
                    with_size(self.record.written, [thing.path for thing in things],
                              size.written))

    # devices -------------------------------------------------------------------------------------
    def _classes(self, permissible: Permissible, item: Item) -> Iterator[Change]:
        device = item["own_device"] if item.subject == "battery" else item
        if not isinstance(device, Item):
            return
        thing = self.record.things[device.id]
        if thing.facts.get("rating") is None:
            self.notes.append(f"no other class was tried for {device.id}: its rating is not "
                              "recorded, and the new device has the same")
            return
        for taken in permissible.classes or ():
            yield Change(f"a device of a higher class: {thing.id} of class {taken.device_class}, "
                         f"{_rating(thing)} as now, that breaks {_breaks(taken)}",
                         with_class(self.record.written, thing.path, taken))

    def _own_devices(self, permissible: Permissible, item: Item) -> Iterator[Change]:
        if isinstance(item["own_device"], Item):
            return
        current = item["discharge.current_max"]
        most = current.hi if isinstance(current, Bounds) else current
        if not isinstance(most, float):
            self.notes.append(f"no device was tried for {item.id}: the greatest current it may "
                              "deliver is not recorded, so no rating can be chosen")
            return
        rating = next((each for each in permissible.ratings or ()
                       if read_number(each, "current") >= most), None)
        found = self._lead(item.id)
        if rating is None or found is None:
            self.notes.append(f"no device was tried for {item.id}: no rating of the list carries "
                              "its current" if rating is None else
                              f"no device was tried for {item.id}: its lead is not traced")
            return
        run, at_start = found
        identity = _new_id(f"{item.id}-fuse", self.record)
        for taken in permissible.classes or ():
            yield Change(f"a device of its own: a fuse of class {taken.device_class}, {rating}, "
                         f"at the terminal of {item.id}, that breaks {_breaks(taken)}",
                         with_device(self.record.written, run.path, at_start, identity, rating,
                                     taken))

    def _lead(self, battery: str) -> tuple[Thing, bool] | None:
        """The run from the positive terminal of a battery, and whether it starts there."""
        wanted = f"{battery}.{_POSITIVE}"
        for run in self.record.lists.get("run") or ():
            for end in _ENDS:
                fact = run.facts.get(end)
                if fact is not None and fact.written == wanted:
                    return run, end == "from"
        return None


def _conductors_of(item: Item) -> list[str]:
    if item.subject == "conductor":
        return [item.id]
    run = item if item.subject == "run" else item["run"]
    conductors = run["conductors"] if isinstance(run, Item) else ()
    return [each.id for each in conductors] if isinstance(conductors, tuple) else []


def _rating(thing: Thing) -> str:
    fact = thing.facts.get("rating")
    return "" if fact is None else str(fact.written)


def _breaks(taken: DeviceClass) -> str:
    return ", ".join(f"{point.current} at {point.voltage}" for point in taken.breaks)


def _new_id(wanted: str, record: Record) -> str:
    name, number = wanted, 2
    while name in record.things:
        name, number = f"{wanted}-{number}", number + 1
    return name
