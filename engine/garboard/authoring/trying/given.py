"""Values given by hand, such as ``device.rating=200 A``: things made of nothing but them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any, Final

from garboard.errors import CommandRefused, Problem, ReadingError, did_you_mean
from garboard.expressions import NameInfo, RuleSource, Vocabulary
from garboard.expressions.rule import LimitValue
from garboard.values import NOT_DETERMINABLE, NOT_RECORDED, Unknown
from garboard.values.units import read_number, read_quantity

_INDEX: Final = re.compile(r"([^\[\]]+)\[([0-9]{1,3})\]")
_MOST: Final = 100


class Made(dict[str, Any]):
    """A thing of which only what was given is known."""

    def __init__(self, identity: str) -> None:
        super().__init__(id=identity)

    def __missing__(self, name: str) -> Unknown:
        return Unknown.because(NOT_RECORDED, f"{self['id']}.{name}")

    def __hash__(self) -> int:  # type: ignore[override]
        return id(self)


@dataclass
class Given:
    """The item a rule is tried on, single things beside it, and limits that are changed."""

    item: Made
    single: dict[str, Made] = field(default_factory=dict)
    limits: dict[str, LimitValue] = field(default_factory=dict)


def read_given(texts: Iterable[str], source: RuleSource, vocabulary: Vocabulary,
               limits: Mapping[str, str | None]) -> Given:
    """What texts of the form ``path=value`` say, for one rule.

    ``limits`` gives the dimension of each limit that may be changed. CommandRefused with
    everything that cannot be read.
    """
    given = Given(Made(source.about))
    reader = _Reader(given, source, vocabulary, limits)
    problems: list[Problem] = []
    for text in texts:
        try:
            reader.take(text)
        except ReadingError as wrong:
            problems.append(Problem(wrong.code, found=f"{text}: {wrong.found}",
                                    expected=wrong.expected, hint=wrong.hint))
    if problems:
        raise CommandRefused(problems)
    return given


@dataclass
class _Reader:
    given: Given
    source: RuleSource
    vocabulary: Vocabulary
    limits: Mapping[str, str | None]

    def take(self, text: str) -> None:
        path, sign, value = text.partition("=")
        if not sign or not path.strip() or not value.strip():
            raise ReadingError("given-unreadable", text, "path=value")
        root, *words = path.strip().split(".")
        if not words and root in self.limits:
            dimension = self.limits[root]
            self.given.limits[root] = (int(value) if value.strip().isdecimal() else
                                       read_number(value.strip(), dimension or "ratio"))
        elif root == self.source.about:
            self._put(self.given.item, root, words, value.strip())
        elif root in self.vocabulary.single:
            self._put(self.given.single.setdefault(root, Made(root)), root, words, value.strip())
        else:
            known = (self.source.about, *self.vocabulary.single, *self.limits)
            raise ReadingError("given-unknown", root, ", ".join(known),
                               did_you_mean(root, known))

    def _put(self, thing: Made, subject: str, words: list[str], value: str) -> None:
        while True:
            plain = tuple(word.partition("[")[0] for word in words)
            count = self.vocabulary.longest(subject, plain) if words else 0
            names = self.vocabulary.subjects[subject]
            if count == 0:
                whole = ".".join(plain)
                raise ReadingError("given-unknown", whole or subject, f"a name of {subject}",
                                   did_you_mean(whole, names))
            name, info = ".".join(plain[:count]), names[".".join(plain[:count])]
            last, words = words[count - 1], words[count:]
            if info.target is None:
                if words:
                    raise ReadingError("given-unknown", ".".join(words), f"nothing after {name}")
                thing[name] = _value(value, info)
                return
            if not words and value == "none":
                thing[name] = None if info.kind == "one" else ()
                return
            thing = self._follow(thing, name, info, last)
            subject = info.target
            if not words:
                if value != "yes":
                    raise ReadingError("given-unreadable", value, "yes or none for a thing")
                return

    def _follow(self, thing: Made, name: str, info: NameInfo, written: str) -> Made:
        indexed = _INDEX.fullmatch(written)
        identity = f"{thing['id']}.{name}"
        if info.kind == "one":
            if indexed:
                raise ReadingError("given-unreadable", written, f"{name} without a number")
            there = thing.get(name) or Made(identity)
            thing[name] = there
            return there
        if not indexed or int(indexed[2]) >= _MOST:
            raise ReadingError("given-unreadable", written, f"one of them, such as {name}[0]")
        several = list(thing.get(name) or ())
        while len(several) <= int(indexed[2]):
            several.append(Made(f"{identity}[{len(several)}]"))
        thing[name] = tuple(several)
        made: Made = several[int(indexed[2])]
        return made


def _value(text: str, info: NameInfo) -> object:
    """A value of the kind that a name stands for."""
    if text == "not known":
        return Unknown.because(NOT_DETERMINABLE, detail="given as not known")
    if info.kind == "number" and info.dimension is not None:
        return read_quantity(text, info.dimension)
    if info.kind == "truth":
        if text not in ("yes", "no", "true", "false"):
            raise ReadingError("given-unreadable", text, "yes or no")
        return text in ("yes", "true")
    if info.kind == "count":
        if not text.isdecimal():
            raise ReadingError("given-unreadable", text, "a whole number")
        return int(text)
    if info.kind == "date":
        return _date(text)
    if info.kind == "opaque":
        raise ReadingError("given-unreadable", text, "a name with a value a rule can use")
    text = text.strip("'\"")
    if info.choices is not None and text not in info.choices:
        raise ReadingError("given-unreadable", text, f"one of {', '.join(info.choices)}",
                           did_you_mean(text, info.choices))
    return text


def _date(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ReadingError("given-unreadable", text, "year-month-day, such as 2026-04-18") from None
