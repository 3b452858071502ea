"""Conditions in which every fact occurs once, with every way the unknown facts could turn out."""

from __future__ import annotations

import itertools
import random
from collections.abc import Iterator, Mapping
from typing import Any, Final

from garboard.expressions import NameInfo, Vocabulary
from garboard.values import NOT_RECORDED, Unknown

_RATIO: Final = NameInfo("number", "ratio")
_TRUTH: Final = NameInfo("truth")
CHOICES: Final = ("red", "green", "blue", "white")
#: Between, below, above and on the figures 1, 2 and 3 that conditions compare with.
FIGURES: Final = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5)

_TRUTHS: Final = tuple(f"t{place}" for place in range(8))
_NUMBERS: Final = tuple(f"v{place}" for place in range(6))
_WORDS: Final = ("w0", "w1")
_GROUPS: Final = ("group0", "group1")

VOCABULARY: Final = Vocabulary({
    "thing": {"id": NameInfo("text"), **dict.fromkeys(_TRUTHS, _TRUTH),
              **dict.fromkeys(_NUMBERS, _RATIO),
              **dict.fromkeys(_WORDS, NameInfo("text", choices=CHOICES)),
              **dict.fromkeys(_GROUPS, NameInfo("many", target="part"))},
    "part": {"id": NameInfo("text"), "on": _TRUTH, "x": _RATIO},
})


class Once:
    """Draws a condition; every fact is taken from a heap and never put back."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.left: dict[str, list[str]] = {}

    def condition(self, depth: int) -> str:
        self.left = {"t": list(_TRUTHS), "v": list(_NUMBERS), "w": list(_WORDS),
                     "g": list(_GROUPS)}
        return self._truth(depth)

    def _take(self, heap: str) -> str | None:
        names = self.left[heap]
        return names.pop(self.random.randrange(len(names))) if names else None

    def _truth(self, depth: int) -> str:
        if depth > 0:
            kind = self.random.randrange(5)
            if kind < 3:
                word = self.random.choice((" and ", " or "))
                return "(" + word.join(self._truth(depth - 1)
                                       for _ in range(self.random.randint(2, 3))) + ")"
            if kind == 3:
                return f"(not {self._truth(depth - 1)})"
            return (f"({self._truth(depth - 1)} if {self._truth(depth - 1)} "
                    f"else {self._truth(depth - 1)})")
        return self.random.choice((self._plain, self._compared, self._chain, self._chosen,
                                   self._word, self._loop))()

    def _plain(self) -> str:
        name = self._take("t")
        return "true" if name is None else f"thing.{name}"

    def _figure(self) -> str:
        return str(self.random.choice((1, 2, 3)))

    def _compared(self) -> str:
        name = self._take("v")
        sign = self.random.choice(("<", "<=", ">", ">=", "==", "!="))
        return "false" if name is None else f"(thing.{name} {sign} {self._figure()})"

    def _chain(self) -> str:
        name = self._take("v")
        signs = self.random.choice((("<", "<"), ("<=", "<"), ("<=", "<="), (">", ">="), (">", ">")))
        return "true" if name is None else (
            f"({self._figure()} {signs[0]} thing.{name} {signs[1]} {self._figure()})")

    def _chosen(self) -> str:
        name, truth = self._take("v"), self._take("t")
        if name is None or truth is None:
            return "false"
        sign = self.random.choice(("<", "<=", ">", ">=", "==", "!="))
        choice = f"({self._figure()} if thing.{truth} else {self._figure()})"
        sides = [f"thing.{name}", choice]
        self.random.shuffle(sides)
        return f"({sides[0]} {sign} {sides[1]})"

    def _word(self) -> str:
        name = self._take("w")
        if name is None:
            return "true"
        few = ", ".join(f"'{word}'" for word in self.random.sample(CHOICES, 2))
        return self.random.choice((f"(thing.{name} == 'red')", f"(thing.{name} in ({few}))",
                                   f"(thing.{name} not in ({few}))"))

    def _loop(self) -> str:
        name = self._take("g")
        if name is None:
            return "false"
        return self.random.choice((
            f"all(p.on for p in thing.{name})", f"any(p.x > 1 for p in thing.{name})",
            f"any(p.x > 1 for p in thing.{name} if p.on)",
            f"all(p.x <= 2 for p in thing.{name} if p.on)",
            f"(count(p for p in thing.{name} if p.on) >= 1)",
            f"(count(p for p in thing.{name} if p.on) == 2)",
            f"(max(p.x for p in thing.{name}) <= 2)",
            f"(min(p.x for p in thing.{name}) <= 2)"))


def thing(draws: random.Random) -> dict[str, Any]:
    """A thing with all facts known."""
    return {"id": "thing", **{name: draws.random() < 0.5 for name in _TRUTHS},
            **{name: draws.choice(FIGURES) for name in _NUMBERS},
            **{name: draws.choice(CHOICES) for name in _WORDS},
            **{name: tuple({"id": f"{name}-{place}", "on": draws.random() < 0.5,
                            "x": draws.choice(FIGURES)} for place in range(2))
               for name in _GROUPS}}


Fact = tuple[str, ...]


def facts(text: str) -> list[Fact]:
    """The facts a condition mentions; those of a group's parts each on their own."""
    found: list[Fact] = [(name,) for name in (*_TRUTHS, *_NUMBERS, *_WORDS)
                         if f"thing.{name}" in text]
    for name in _GROUPS:
        if f"thing.{name}" in text:
            loop = text[text.rindex("(", 0, text.index(f"thing.{name}")):
                        text.index(")", text.index(f"thing.{name}"))]
            found += [(name, str(place), field) for place in range(2) for field in ("on", "x")
                      if f"p.{field}" in loop]
    return found


def path(fact: Fact) -> str:
    """The data path of a fact."""
    return f"thing.{fact[0]}" if len(fact) == 1 else f"{fact[0]}-{fact[1]}.{fact[2]}"


def changed(item: Mapping[str, Any], values: Mapping[Fact, Any]) -> dict[str, Any]:
    """The thing with other values for some facts."""
    parts = {name: [dict(part) for part in item[name]] for name in _GROUPS}
    plain = dict(item)
    for fact, value in values.items():
        if len(fact) == 1:
            plain[fact[0]] = value
        else:
            parts[fact[0]][int(fact[1])][fact[2]] = value
    return {**plain, **{name: tuple(several) for name, several in parts.items()}}


def unknown(item: Mapping[str, Any], some: list[Fact]) -> dict[str, Any]:
    """The thing with some facts not recorded."""
    return changed(item, {fact: Unknown.because(NOT_RECORDED, path(fact)) for fact in some})


def completions(some: list[Fact]) -> Iterator[dict[Fact, Any]]:
    """Every way some facts could turn out."""
    ranges = [_range(fact) for fact in some]
    for values in itertools.product(*ranges):
        yield dict(zip(some, values, strict=True))


def _range(fact: Fact) -> tuple[Any, ...]:
    name = fact[-1]
    if name == "x" or name.startswith("v"):
        return FIGURES
    return CHOICES if name.startswith("w") else (False, True)
