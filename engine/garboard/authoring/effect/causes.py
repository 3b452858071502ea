"""Which changes between two versions of a pack can move the findings of a rule."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from garboard.packs import Limit, Pack, Question, Rule

#: Parts of a rule, and of the head of a pack, that findings rest on; all others only say something.
_OF_RULE: Final = ("about", "applies_when", "must_hold", "severity", "not_dispensable")
_OF_HEAD: Final = ("applies_when", "decision_rule", "dispensable_danger")


@dataclass(frozen=True, slots=True)
class Cause:
    """One change, as ``what`` changed and what it was and is; ``None`` where there was none."""

    what: str
    before: str | None = None
    after: str | None = None

    def __str__(self) -> str:
        if self.before is None and self.after is None:
            return self.what
        return f"{self.what} from {_said(self.before)} to {_said(self.after)}"


def causes_of(rule: str, old: Pack, new: Pack) -> tuple[Cause, ...]:
    """Every change that a finding of the rule can rest on; none only where nothing changed."""
    before, after = (_rule(pack, rule) for pack in (old, new))
    if before is None or after is None:
        return () if before is after else (
            Cause("rule added" if before is None else "rule retired or taken out"),)
    found = [Cause(f"{_named(of)} of the rule", _text(getattr(before, of)),
                   _text(getattr(after, of)))
             for of in _OF_RULE if getattr(before, of) != getattr(after, of)]
    read = " ".join(_expressions(old, before)) + " " + " ".join(_expressions(new, after))
    found += _limits(read, old.limits, new.limits)
    found += _questions(read, old, new)
    found += _needs(read, old, new)
    found += [Cause(f"{_named(of)} of the pack", _text(getattr(old.header, of)),
                    _text(getattr(new.header, of)))
              for of in _OF_HEAD if getattr(old.header, of) != getattr(new.header, of)]
    return tuple(found)


def _rule(pack: Pack, name: str) -> Rule | None:
    return next((rule for rule in pack.rules if rule.id == name), None)


def _expressions(pack: Pack, rule: Rule) -> Iterator[str]:
    """What decides on the findings of a rule, the condition of the whole pack included."""
    yield from (each for each in (rule.must_hold, rule.applies_when, pack.header.applies_when)
                if each is not None)


def _limits(read: str, old: Mapping[str, Limit], new: Mapping[str, Limit]) -> Iterator[Cause]:
    for name in sorted({*old, *new}):
        if not re.search(rf"\b{re.escape(name)}\b", read):
            continue
        before, after = old.get(name), new.get(name)
        if before is None or after is None or before.amount != after.amount:
            yield Cause(f"limit {name}", _limit(before), _limit(after))


def _questions(read: str, old: Pack, new: Pack) -> Iterator[Cause]:
    asked, asks = ({each.id: each for each in pack.header.questions} for pack in (old, new))
    for name in sorted({*asked, *asks}):
        if f"answer.{name}" not in read or asked.get(name) == asks.get(name):
            continue
        word = "added" if name not in asked else "taken out" if name not in asks else (
            f"changed in {', '.join(_parts(asked[name], asks[name]))}")
        yield Cause(f"question {name} {word}")


def _needs(read: str, old: Pack, new: Pack) -> Iterator[Cause]:
    before, after = ({name: (need.plugin, unit) for need in pack.header.needs
                      for name, unit in need.quantities.items()} for pack in (old, new))
    for name in sorted({*before, *after}):
        if before.get(name) != after.get(name) and name.partition(".")[2] in read:
            yield Cause(f"what the pack needs for {name}", _joined(before.get(name)),
                        _joined(after.get(name)))


def _joined(need: tuple[str, str] | None) -> str | None:
    return None if need is None else " in ".join(need)


def _parts(one: Question, other: Question) -> list[str]:
    return sorted(of.replace("_", " ") for of, mine in one if mine != getattr(other, of))


def _limit(limit: Limit | None) -> str | None:
    if limit is None:
        return None
    return ", ".join(limit.written) if isinstance(limit.written, tuple) else str(limit.written)


def _named(of: str) -> str:
    return of.replace("_", " ")


def _text(value: Any) -> str | None:
    if value is None:
        return None
    if isinstance(value, bool):
        return "yes" if value else "no"
    return " ".join(str(value).split())


def _said(value: str | None) -> str:
    return "none" if value is None else value
