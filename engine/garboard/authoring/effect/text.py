"""The effect of a new version of a pack, for people and for machines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from garboard.authoring.effect.effect import Effect, Moved, Said
from garboard.packs import Pack
from garboard.reports.summary import result_words

_NOT_THERE = "no finding"


def effect_text(effects: Sequence[Effect], old: Pack, new: Pack) -> str:
    """One part for each record: what newly fails first, then by rule, each with its causes."""
    lines = [f"Effect of {new.name} {old.version} to {new.version} on {len(effects)} "
             f"{'record' if len(effects) == 1 else 'records'}", ""]
    for effect in effects:
        lines += [*_of_record(effect), ""]
    failing = sum(each.newly_fails for effect in effects for each in effect.moved)
    lines.append(f"{sum(len(each.moved) for each in effects)} findings change, {failing} of them "
                 "newly fail")
    return "\n".join(lines)


def effect_data(effects: Sequence[Effect], old: Pack, new: Pack) -> dict[str, Any]:
    """The same as data."""
    return {"pack": new.name, "from": old.version, "to": new.version, "records": [{
        "file": each.file, "incomparable": each.incomparable,
        "before": None if each.old is None else each.old.word,
        "after": None if each.new is None else each.new.word,
        "findings": [{
            "rule": moved.rule, "item": moved.item,
            "before": _data(moved.before), "after": _data(moved.after),
            "causes": [{"what": cause.what, "before": cause.before, "after": cause.after}
                       for cause in moved.causes]} for moved in each.moved]} for each in effects]}


def _of_record(effect: Effect) -> Iterator[str]:
    yield effect.file
    if effect.incomparable is not None:
        yield f"  not comparable: {effect.incomparable}"
    if effect.old is None or effect.new is None:
        return
    yield f"  before: {result_words(effect.old)}"
    yield f"  after:  {result_words(effect.new)}"
    if not effect.moved:
        yield "  no finding changes"
    first = sorted(effect.moved, key=lambda each: (
        not each.newly_fails, each.rule, list(map(str, each.causes)), _words(each)))
    for (_, rule, causes, words), alike in groupby(
            first, key=lambda each: (each.newly_fails, each.rule, each.causes, _words(each))):
        items = ", ".join("the whole pack" if each.item is None else each.item for each in alike)
        yield f"  {rule}: {items}"
        yield f"    {words}"
        yield from (f"    because of: {cause}" for cause in causes)


def _words(moved: Moved) -> str:
    """What was said and is; the severity only where that alone, or nothing else, is new."""
    before, after = moved.before, moved.after
    if before is not None and after is not None and before[:2] == after[:2]:
        return (f"{_outcome(before)}, {_weight(before)}; now {_weight(after)}")
    return (f"{_NOT_THERE if before is None else _outcome(before)}; now "
            f"{_NOT_THERE if after is None else _graded(after)}")


def _outcome(said: Said) -> str:
    outcome, reason, _, _ = said
    return outcome if reason is None else f"{outcome}: {reason}"


def _graded(said: Said) -> str:
    return f"{_outcome(said)} ({said[2]})" if said[2] else _outcome(said)


def _weight(said: Said) -> str:
    _, _, severity, flags = said
    return ", ".join((*((severity,) if severity else ()), *flags)) or "nothing flagged"


def _data(said: Said | None) -> dict[str, Any] | None:
    if said is None:
        return None
    outcome, reason, severity, flags = said
    return {"outcome": outcome, "reason": reason, "severity": severity or None,
            "flags": list(flags)}
