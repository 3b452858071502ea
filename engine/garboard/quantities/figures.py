"""All figures of one record: lazy, each computed once, with the derivation of every one."""

from __future__ import annotations

import traceback
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final, NamedTuple

from garboard.network import Network
from garboard.quantities.declaration import Figure, Quantity
from garboard.quantities.item import Item
from garboard.quantities.needs import ROOTS, Need
from garboard.quantities.registry import Registry
from garboard.record import SUBJECTS, Record, Thing
from garboard.values import (
    CALCULATION_ERROR,
    NOT_RECORDED,
    OUTSIDE_METHOD,
    PLUGIN_UNAVAILABLE,
    Bounds,
    Unknown,
    finite,
    rounded,
    rounded_value,
)

NETWORK: Final = "network"
_NETWORK_KEYS: Final = (NETWORK,)
_TYPES: Final[dict[str, tuple[type, ...]]] = {
    "number": (float, Bounds), "count": (int,), "truth": (bool,), "text": (str,)}


class Derivation(NamedTuple):
    """How one figure came about: the quantity, its result, and the keys of what went into it.

    ``inputs`` pairs each argument with the keys (``f1.rating``) of the facts and figures it took.
    """

    quantity: Quantity
    item: str
    value: object
    inputs: tuple[tuple[str, tuple[str, ...]], ...]
    table_rows: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Failure:
    """An exception inside a calculation function, kept for the part of the trail that explains."""

    key: str
    raised: str
    traceback: str


class Figures:
    """The items of a record with everything that can be known of them.

    ``subjects`` gives the items of a subject, or ``None`` where the record has no such list.
    """

    def __init__(self, record: Record, network: Network, registry: Registry) -> None:
        self.record, self.network, self.registry = record, network, registry
        self.derivations: dict[str, Derivation] = {}
        self.failures: list[Failure] = []
        self._open: dict[str, None] = {}
        self._found: dict[tuple[str, tuple[str, ...]], tuple[object, tuple[str, ...]]] = {}
        self.items: dict[str, Item] = {
            thing.id: self._item(thing) for thing in record.things.values()}
        for subject, derived in network.derived.items():
            for each in derived:
                self.items[each.id] = Item(each.id, subject, {}, self._find)
        self.items.setdefault("record", Item("record", "record", {}, self._find))
        self.subjects: Mapping[str, tuple[Item, ...] | Unknown | None] = {
            subject: self._of_subject(subject) for subject in SUBJECTS}
        self.roots: Mapping[str, Item] = {
            name: self.items[name] for name in ("record", *ROOTS) if name in self.items}

    def _item(self, thing: Thing) -> Item:
        relations = SUBJECTS[thing.subject].relations
        recorded: dict[str, Any] = {name: fact.value for name, fact in thing.facts.items()
                                    if name not in relations}
        return Item(thing.id, thing.subject, recorded, self._find)

    def _of_subject(self, subject: str) -> tuple[Item, ...] | None:
        if subject in self.network.derived:
            if self.record.lists.get("battery") is None:
                return None
            return tuple(self.items[each.id] for each in self.network.derived[subject])
        if subject in ("record", "vessel", "survey", "wiring"):
            return (self.items[subject],) if subject in self.items else None
        things = self.record.lists.get(subject)
        return None if things is None else tuple(self.items[thing.id] for thing in things)

    # finding what an item does not hold yet ------------------------------------------------------
    def _find(self, item: Item, name: str) -> object:
        known = self.registry.find(item.subject, name)
        if known is not None:
            return self._compute(item, *known)
        subject = SUBJECTS[item.subject]
        if name in subject.relations:
            return self._related(item, name)
        if name in subject.groups:
            return self._group(item, name)
        if name in subject.fields:
            return Unknown.because(NOT_RECORDED, f"{item.id}.{name}")
        # expressions and needs were held against what is known or declared; this was declared
        return Unknown.because(PLUGIN_UNAVAILABLE, detail=f"{item.subject}.{name}")

    def _related(self, item: Item, name: str) -> object:
        if item.subject == "record":
            return self._whole_list(SUBJECTS["record"].relations[name].target, name)
        target = self.network.related(item.id, name)
        if isinstance(target, Unknown) or target is None:
            return target
        if isinstance(target, str):
            return self.items[target]
        return tuple(self.items[each] for each in target)

    def _whole_list(self, target: str, name: str) -> object:
        items = self.subjects[target]
        if items is None:
            return Unknown.because(NOT_RECORDED, SUBJECTS[target].recorded_in)
        return items if SUBJECTS["record"].relations[name].many else items[0]

    def _group(self, item: Item, name: str) -> object:
        thing = self.record.things[item.id]
        parts = thing.groups.get(name)
        if parts is None:
            return Unknown.because(NOT_RECORDED, f"{item.id}.{name}")
        return tuple(self._item(part) for part in parts)

    # computing -----------------------------------------------------------------------------------
    def _compute(self, item: Item, quantity: Quantity, needs: tuple[Need, ...]) -> object:
        key = f"{item.id}.{quantity.name}"
        if key in self._open:
            chain = list(self._open)
            circle = " -> ".join([*chain[chain.index(key):], key])
            return self._failed(key, f"needs itself: {circle}", "")
        self._open[key] = None
        try:
            arguments: dict[str, object] = {}
            inputs: list[tuple[str, tuple[str, ...]]] = []
            for need in needs:
                argument, own = need.argument, need.own
                if own is not None:
                    arguments[argument] = item[own]
                    inputs.append((argument, (f"{item.id}.{own}",)))
                else:
                    arguments[argument], keys = self._needed(item, need)
                    inputs.append((argument, keys))
            value, table_rows, remarks = self._call(key, quantity, arguments)
        finally:
            del self._open[key]
        self.derivations[key] = Derivation(quantity, item.id, value, tuple(inputs), table_rows,
                                           remarks)
        return value

    def _call(self, key: str, quantity: Quantity, arguments: dict[str, object],
              ) -> tuple[object, tuple[str, ...], tuple[str, ...]]:
        """The value, the table rows read and the remarks."""
        for each in arguments.values():
            if each.__class__ is Unknown or each.__class__ is tuple:
                unknown = _joined(arguments.values(), failures_only=quantity.unknowns == "passed")
                if unknown is not None:
                    return unknown, (), ()
                break
        try:
            result = quantity.function(**arguments)
        except Exception as error:  # noqa: BLE001 - any failure of a calculation becomes a finding
            return self._failed(key, f"{type(error).__name__}: {error}",
                                traceback.format_exc()), (), ()
        if isinstance(result, Figure):
            return self._checked(key, quantity, result.value), result.table_rows, result.remarks
        return self._checked(key, quantity, result), (), ()

    def _checked(self, key: str, quantity: Quantity, value: object) -> object:
        """The result rounded; a result of the wrong kind, or not finite, is a failure."""
        if quantity.kind == "opaque" or isinstance(value, Unknown):
            return value
        if value.__class__ is float and quantity.kind == "number" and value - value == 0:
            return rounded(value)
        if isinstance(value, int) and not isinstance(value, bool) and quantity.kind == "number":
            value = float(value)
        if not isinstance(value, _TYPES[quantity.kind]) or (
                isinstance(value, bool) and quantity.kind != "truth"):
            return self._failed(key, f"gave {value!r}, which is not a {quantity.kind}", "")
        if isinstance(value, float) and isinstance(finite(value), Unknown):
            return self._failed(key, "gave a number that is not finite", "")
        return rounded_value(value)

    def _failed(self, key: str, raised: str, trace: str) -> Unknown:
        shown = "".join(each if each.isprintable() else "\ufffd" for each in raised)
        self.failures.append(Failure(key, shown, trace))
        return Unknown.because(CALCULATION_ERROR, detail=f"{key}: {shown}")

    def _needed(self, item: Item, need: Need) -> tuple[object, tuple[str, ...]]:
        if need.root == "item":
            keys: list[str] = []
            return _follow(item, need.keys, keys), tuple(keys)
        if need.root == NETWORK:
            return self.network, _NETWORK_KEYS
        return self._shared(need)

    def _shared(self, need: Need) -> tuple[object, tuple[str, ...]]:
        """What starts from the record as a whole is the same for every item, and found once."""
        found = self._found.get((need.root, need.keys))
        if found is None:
            keys: list[str] = []
            found = _follow(self.items[need.root], need.keys, keys), tuple(keys)
            self._found[need.root, need.keys] = found
        return found


def _follow(item: Item, names: tuple[str, ...], keys: list[str]) -> object:
    """Walk from item to item by name; a relation to many gives a tuple, one part per item."""
    name = names[0]
    value = item[name]
    if len(names) == 1:
        keys.append(f"{item.id}.{name}")
        return value
    rest = names[1:]
    if value.__class__ is Item:
        return _follow(value, rest, keys)
    if value.__class__ is tuple:
        if len(rest) == 1:
            last = rest[0]
            keys += [f"{each.id}.{last}" for each in value]
            return _flat([each[last] for each in value])
        return _flat([_follow(each, rest, keys) for each in value])
    keys.append(f"{item.id}.{name}")
    if value is None:
        return Unknown.because(OUTSIDE_METHOD, f"{item.id}.{name}", "there is none")
    return value


def _flat(parts: list[object]) -> tuple[object, ...]:
    if tuple not in [part.__class__ for part in parts]:
        return tuple(parts)
    flat: list[object] = []
    for part in parts:
        if isinstance(part, tuple):
            flat.extend(part)
        else:
            flat.append(part)
    return tuple(flat)


def _joined(values: Iterable[Any], *, failures_only: bool) -> Unknown | None:
    """The single unknowns among the arguments as one, or none; failures inside tuples too."""
    joined: Unknown | None = None
    for value in values:
        if value.__class__ is Unknown:
            if not failures_only or value.is_error:
                joined = value if joined is None else joined.joined(value)
        elif value.__class__ is tuple:
            for part in value:
                if part.__class__ is Unknown and part.is_error:
                    joined = part if joined is None else joined.joined(part)
    return joined
