"""What changed between two versions of a pack, and which step of the version each change asks for.

Found from the rules themselves, not believed: a limit is weighed by the rules that use it. Where it
cannot be told that a change is harmless, it asks for the larger step.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final, Literal

from garboard.expressions import Vocabulary
from garboard.packs.header import Header
from garboard.packs.layers.standing import standing_stack
from garboard.packs.layers.weighing import Weighing, adds
from garboard.packs.limit import Limit
from garboard.packs.pack import Pack
from garboard.packs.rule import SEVERITIES

Asked = Literal["patch", "minor", "major"]
#: Parts of a rule, a question and the head that only say something to people.
_SAID: Final = frozenset({"title", "why", "recommendation", "left_to_a_person", "citation", "ask",
                          "how_to_look", "answered_by", "cautions", "not_examined",
                          "translations"})
_NOT_COMPARED: Final = frozenset({"pack", "version", "format", "builds_on", "questions", "needs"})


@dataclass(frozen=True, slots=True)
class Reason:
    """A change, the step it asks for, and what it does."""

    what: str
    does: str
    step: Asked


def reasons(old: Pack, new: Pack, vocabulary: Vocabulary) -> list[Reason]:
    """Every change between two versions of a pack, the gravest first, then by name."""
    found = [*_head(old.header, new.header), *_limits(old, new, vocabulary), *_rules(old, new)]
    order = ("major", "minor", "patch")
    return sorted(found, key=lambda each: (order.index(each.step), each.what))


def _limits(old: Pack, new: Pack, vocabulary: Vocabulary) -> Iterator[Reason]:
    """Limits weighed by the rules of either version; one added or gone only matters by a rule."""
    weighings = [Weighing(standing_stack(each), vocabulary) for each in (old, new)]
    for name in sorted({*old.limits, *new.limits}):
        before, after = old.limits.get(name), new.limits.get(name)
        if before == after:
            continue
        if before is None or after is None:
            yield Reason(f"limit {name}", "added" if before is None else "taken out", "patch")
        elif (before.kind, before.dimension) != (after.kind, after.dimension):
            yield Reason(f"limit {name}", "of another kind", "major")
        elif before.amount == after.amount:
            yield Reason(f"limit {name}", "reworded", "patch")
        else:
            yield _limit(before, after, weighings, (old, new))


def _limit(before: Limit, after: Limit, weighings: list[Weighing],
           packs: tuple[Pack, Pack]) -> Reason:
    what = f"limit {before.name}"
    does = f"from {_shown(before)} to {_shown(after)}"
    if any(each.can_tighten(before, after) for each in weighings):
        return Reason(what, f"{does}: what passed can fail", "major")
    if any(_in_a_condition(before.name, pack) for pack in packs):
        return Reason(what, f"{does}: what passed can be left open", "major")
    if any(each.of_limit(before, after) != "reworded" for each in weighings):
        return Reason(what, f"{does}: only looser", "minor")
    return Reason(what, f"{does}: no rule uses it", "patch")


def _in_a_condition(limit: str, pack: Pack) -> bool:
    """Whether it decides what a rule or the pack applies to: a figure may straddle it anew."""
    conditions = (pack.header.applies_when, *(rule.applies_when for rule in pack.rules))
    return any(re.search(rf"\b{limit}\b", each) for each in conditions if each is not None)


def _rules(old: Pack, new: Pack) -> Iterator[Reason]:
    before, after = ({rule.id: rule for rule in pack.rules} for pack in (old, new))
    named = set() if old.header.acceptance is None else set(
        old.header.acceptance.must_have_passed)
    for name in sorted({*before, *after}):
        what = f"rule {name}"
        if name not in before:
            yield Reason(what, "added: what met the pack can fail it", "major")
        elif name not in after:
            yield Reason(what, "retired or taken out", "major" if name in named else "minor")
        else:
            for of, mine in before[name]:
                theirs = getattr(after[name], of)
                if mine != theirs:
                    yield Reason(f"{of} of {what}", *_of_rule(of, mine, theirs))


def _of_rule(of: str, mine: Any, theirs: Any) -> tuple[str, Asked]:
    """Any other condition is major: where it is not known, what passed is left open."""
    if of in _SAID:
        return "reworded", "patch"
    if of == "covers":
        return f"{mine}, now {theirs}", "minor"
    if of == "severity":
        graver = SEVERITIES.index(theirs) < SEVERITIES.index(mine)
        return f"{mine}, now {theirs}", "major" if graver else "minor"
    if of == "not_dispensable":
        return ("can be dispensed with", "minor") if mine else (
            "cannot be dispensed with any more", "major")
    if of == "must_hold" and adds(theirs, mine, "and"):
        return "asks for less", "minor"
    return "says something else", "major"


def _head(old: Header, new: Header) -> Iterator[Reason]:
    for of in sorted(set(type(old).model_fields) - _NOT_COMPARED):
        mine, theirs = getattr(old, of), getattr(new, of)
        if mine != theirs:
            yield Reason(of, *_of_head(of, mine, theirs))
    asked, asks = ({each.id: each for each in head.questions} for head in (old, new))
    for name in sorted({*asked, *asks}):
        what = f"question {name}"
        if name not in asked:
            yield Reason(what, "added", "minor")
        elif name not in asks:
            yield Reason(what, "taken out", "minor")
        elif asked[name] != asks[name]:
            other = {of for of, mine in asked[name] if mine != getattr(asks[name], of)} - _SAID
            yield Reason(what, f"changed: {', '.join(sorted(other))}" if other else "reworded",
                         "major" if other else "patch")
    if old.needs != new.needs:
        fewer = set(map(str, new.needs)) < set(map(str, old.needs))
        yield Reason("needs", "fewer" if fewer else "others", "minor" if fewer else "major")


def _of_head(of: str, mine: Any, theirs: Any) -> tuple[str, Asked]:
    if of in _SAID:
        return "reworded", "patch"
    if of == "decision_rule":
        guarded = theirs == "guarded acceptance"
        return f"now {theirs}", "major" if guarded else "minor"
    if of == "dispensable_danger":
        return ("dispensed dangers count as failed", "major") if theirs is None else (
            "dispensed dangers count apart", "minor")
    if of == "acceptance" and mine is None:
        return "added", "minor"
    return "says something else", "major"


def _shown(limit: Limit) -> str:
    return ", ".join(limit.written) if isinstance(limit.written, tuple) else str(limit.written)
