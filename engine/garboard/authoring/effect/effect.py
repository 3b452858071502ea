"""Two versions of a pack on one record: the findings that differ, and why."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from garboard.authoring.effect.causes import Cause, causes_of
from garboard.packs import CheckedPack, Pack
from garboard.quantities import Registry
from garboard.trail import FAILED, NOT_APPLICABLE, Finding, Trail

#: What a finding says: its outcome, the reason of it, its severity (of one that does not apply
#: none), what is flagged.
Said = tuple[str, str | None, str, tuple[str, ...]]
Key = tuple[str, str | None]


@dataclass(frozen=True, slots=True)
class Moved:
    """One finding that changes; ``None`` where one of the two has no such finding."""

    rule: str
    item: str | None
    before: Said | None
    after: Said | None
    causes: tuple[Cause, ...]

    @property
    def newly_fails(self) -> bool:
        return self.after is not None and self.after[0] == FAILED and (
            self.before is None or self.before[0] != FAILED)


@dataclass(frozen=True, slots=True)
class Effect:
    """What changes on one record. ``incomparable`` says why it cannot be told, if it cannot."""

    file: str
    old: Trail | None
    new: Trail | None
    moved: tuple[Moved, ...] = ()
    incomparable: str | None = None


def effect_on(file: str, given: Trail | None, assess: Callable[[CheckedPack], Trail],
              packs: tuple[CheckedPack, CheckedPack], registry: Registry) -> Effect:
    """The effect on a record, assessed with both packs.

    ``given`` is the trail in the file, where it is one: if it was made by the very old pack, its
    findings are those before, and what moves though the pack says the same is laid to the
    quantities whose version has changed since. Changes without a cause cannot happen; should one
    be met, that is said as ``incomparable`` and nothing is hidden.
    """
    before, after = packs
    now = assess(before)
    new = assess(after)
    old = now
    if given is not None and _made_by(given, before.pack):
        old = given
    between, found = _said_by(now, before.pack), _said_by(new, after.pack)
    moved = []
    for key, mine in sorted(_pairs(_said_by(old, before.pack), found).items(), key=_place):
        if mine[0] == mine[1]:
            continue
        causes = causes_of(key[0], before.pack, after.pack) if between.get(key) != mine[1] else ()
        if old is not now and between.get(key) != mine[0]:
            causes = (*_recalculated(old, registry), *causes)
        moved.append(Moved(*key, *mine, causes))
    if any(not each.causes for each in moved):
        names = ", ".join(sorted({each.rule for each in moved if not each.causes}))
        return Effect(file, old, new, tuple(moved), f"no cause was found for {names}")
    return Effect(file, old, new, tuple(moved))


def _made_by(trail: Trail, pack: Pack) -> bool:
    return any(each["pack"] == pack.name and each["digest"] == pack.digest
               for each in trail.packs)


def _said_by(trail: Trail, pack: Pack) -> dict[Key, Said]:
    return {(each["rule"], each["item"]): _said(trail, each) for each in trail.findings
            if each["pack"] == pack.name}


def _said(trail: Trail, finding: Finding) -> Said:
    exempt = ("dispensation in force",) if finding["dispensation"] is not None else ()
    severity = "" if finding["outcome"] == NOT_APPLICABLE else trail.rule_of(finding)["severity"]
    return (finding["outcome"], finding["reason"], severity, (*finding["flags"], *exempt))


def _pairs(old: Mapping[Key, Said], new: Mapping[Key, Said],
           ) -> dict[Key, tuple[Said | None, Said | None]]:
    return {key: (old.get(key), new.get(key)) for key in {*old, *new}}


def _place(pair: tuple[Key, object]) -> tuple[str, str]:
    (rule, item), _ = pair
    return rule, item or ""


def _recalculated(trail: Trail, registry: Registry) -> tuple[Cause, ...]:
    """The quantities of a trail that this program computes in another version, or no more."""
    found = []
    for name, data in sorted(trail.assessment["quantities"].items()):
        subject, _, short = name.partition(".")
        known = registry.by_subject.get(subject, {}).get(short)
        version = None if known is None else known.version
        if version != data["version"]:
            found.append(Cause(f"version of the quantity {name}", data["version"], version))
    return tuple(found)
