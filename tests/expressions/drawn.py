"""Expressions drawn at random over things with plain numbers, and the same things for Python."""

from __future__ import annotations

import math
import random
from collections.abc import Iterable
from types import SimpleNamespace
from typing import Any, Final

from garboard.expressions import NameInfo, Vocabulary

_RATIO: Final = NameInfo("number", "ratio")
_COUNT: Final = NameInfo("count")
_TRUTH: Final = NameInfo("truth")
WORDS: Final = ("red", "green", "blue", "größe")

_FIELDS: Final = {
    "id": NameInfo("text"), "x": _RATIO, "y": _RATIO, "z.low": _RATIO, "n": _COUNT, "m": _COUNT,
    "on": _TRUTH, "off": _TRUTH, "colour": NameInfo("text", choices=WORDS)}
VOCABULARY: Final = Vocabulary({
    "thing": {**_FIELDS, "parts": NameInfo("many", target="part"),
              "partner": NameInfo("one", target="part")},
    "part": {**_FIELDS, "parts": NameInfo("many", target="part")},
})
LIMITS: Final = {"half": (_RATIO, 0.5), "two": (_COUNT, 2)}
INFOS: Final = {name: info for name, (info, _) in LIMITS.items()}
AMOUNTS: Final = {name: value for name, (_, value) in LIMITS.items()}


class Draw:
    """Draws texts; ``names`` are the things in scope, ``depth`` bounds how far parts nest."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.names = ["thing", "thing.partner"]
        self.loops = 0

    def truth(self, depth: int) -> str:
        if depth <= 0:
            return f"{self.name()}.{self.random.choice(('on', 'off'))}"
        return self.random.choice((
            self._logic, self._logic, self._not, self._compared, self._compared, self._chain,
            self._member, self._word, self._quantified, self._either_truth))(depth - 1)

    def number(self, depth: int) -> str:
        if depth <= 0 or self.random.random() < 0.15:
            return self._leaf()
        return self.random.choice((
            self._sum, self._sum, self._product, self._product, self._negative, self._call,
            self._gathered, self._either_number))(depth - 1)

    def name(self) -> str:
        return self.random.choice(self.names)

    # truths --------------------------------------------------------------------------------------
    def _logic(self, depth: int) -> str:
        word = self.random.choice((" and ", " or "))
        return self._bracketed(word.join(self.truth(depth)
                                         for _ in range(self.random.randint(2, 3))))

    def _not(self, depth: int) -> str:
        return self._bracketed(f"not {self.truth(depth)}")

    def _compared(self, depth: int) -> str:
        sign = self.random.choice(("<", "<=", ">", ">=", "==", "!="))
        return self._bracketed(f"{self.number(depth)} {sign} {self.number(depth)}")

    def _chain(self, depth: int) -> str:
        signs = [self.random.choice(("<", "<=", ">", ">=", "==", "!="))
                 for _ in range(self.random.randint(2, 3))]
        return self._bracketed(self.number(depth - 1) + "".join(
            f" {sign} {self.number(depth - 1)}" for sign in signs))

    def _member(self, depth: int) -> str:
        word = self.random.choice(("in", "not in"))
        few = self.random.sample(range(6), self.random.randint(1, 3))
        opening, closing = self.random.choice(("()", "[]"))
        return self._bracketed(f"{self.number(depth)} {word} {opening}"
                               f"{', '.join(map(str, few))},{closing}")

    def _word(self, depth: int) -> str:
        field = f"{self.name()}.colour"
        if self.random.random() < 0.5:
            sign = self.random.choice(("==", "!="))
            return self._bracketed(f'{field} {sign} "{self.random.choice(WORDS)}"')
        few = ", ".join(f"'{word}'" for word in self.random.sample(WORDS, 2))
        return self._bracketed(f"{field} {self.random.choice(('in', 'not in'))} ({few})")

    def _quantified(self, depth: int) -> str:
        return self._loop(self.random.choice(("all", "any")), "truth", depth)

    def _either_truth(self, depth: int) -> str:
        return f"({self.truth(depth)} if {self.truth(depth)} else {self.truth(depth)})"

    # numbers -------------------------------------------------------------------------------------
    def _leaf(self) -> str:
        kind = self.random.random()
        if kind < 0.25:
            return str(self.random.choice((0, 1, 2, 3, 0.5, 0.1, 2.5, "1e3", 12.75)))
        if kind < 0.35:
            return self.random.choice(("half", "two"))
        return f"{self.name()}.{self.random.choice(('x', 'y', 'z.low', 'n', 'm'))}"

    def _sum(self, depth: int) -> str:
        return self._bracketed(self.number(depth) + "".join(
            f" {self.random.choice('+-')} {self.number(depth)}"
            for _ in range(self.random.randint(1, 3))))

    def _product(self, depth: int) -> str:
        return self._bracketed(self.number(depth) + "".join(
            f" {self.random.choice('**/')} {self.number(depth)}"
            for _ in range(self.random.randint(1, 2))))

    def _negative(self, depth: int) -> str:
        return self._bracketed(f"-{self.number(depth)}")

    def _call(self, depth: int) -> str:
        name = self.random.choice(("abs", "min", "max", "max", "sqrt", "count"))
        if name == "count":
            return f"count({self.name()}.parts)" if "partner" not in self.names[-1] else "2"
        several = self.random.randint(2, 3) if name in ("min", "max") else 1
        return f"{name}({', '.join(self.number(depth) for _ in range(several))})"

    def _gathered(self, depth: int) -> str:
        name = self.random.choice(("sum", "min", "max", "count"))
        return self._loop(name, "number" if name != "count" else "", depth)

    def _either_number(self, depth: int) -> str:
        return f"({self.number(depth)} if {self.truth(depth)} else {self.number(depth)})"

    def _loop(self, function: str, kind: str, depth: int) -> str:
        if self.loops == 2:
            return "thing.on" if kind == "truth" else "thing.x"
        collection = f"{self.name()}.parts"
        variable = f"p{self.loops}"
        self.loops += 1
        self.names.append(variable)
        element = variable if not kind else (
            self.truth(depth) if kind == "truth" else self.number(depth))
        filtered = f" if ({self.truth(depth)})" if self.random.random() < 0.5 else ""
        self.names.pop()
        self.loops -= 1
        return f"{function}({element} for {variable} in {collection}{filtered})"

    def _bracketed(self, text: str) -> str:
        """Mostly in brackets; now and then not, so that precedence decides; odd white space."""
        if self.random.random() < 0.3:
            return text
        inside = self.random.choice(("", " ", "\n  ", "\t"))
        return f"({inside}{text})"


# things ------------------------------------------------------------------------------------------
def thing(draws: random.Random) -> dict[str, Any]:
    """A thing with a partner and parts, all values exact."""
    return {**values(draws, "t"), "partner": _part(draws, "q", 1),
            "parts": tuple(_part(draws, f"p{place}", 1) for place in range(draws.randrange(4)))}


def _part(draws: random.Random, identity: str, level: int) -> dict[str, Any]:
    inside = tuple(_part(draws, f"{identity}-{place}", level - 1)
                   for place in range(draws.randrange(3))) if level else ()
    return {**values(draws, identity), "parts": inside}


def values(draws: random.Random, identity: str) -> dict[str, Any]:
    return {"id": identity, "x": draws.choice((0.0, 0.5, 1.0, -1.5, 0.1, 3.7, 1e6)),
            "y": round(draws.uniform(-3, 3), 3), "z.low": draws.choice((0.0, 2.0, 0.3)),
            "n": draws.randrange(5), "m": draws.randrange(1, 4), "on": draws.random() < 0.5,
            "off": draws.random() < 0.5, "colour": draws.choice(WORDS)}


def for_python(item: dict[str, Any]) -> SimpleNamespace:
    """The same thing with attributes in place of keys."""
    plain = {key: value for key, value in item.items() if "." not in key}
    for key in ("parts",):
        plain[key] = [for_python(part) for part in item[key]]
    if "partner" in item:
        plain["partner"] = for_python(item["partner"])
    return SimpleNamespace(**plain, z=SimpleNamespace(low=item["z.low"]))


def summed(numbers: Iterable[Any]) -> Any:
    """A sum rounded once, as the language has it; Python's own rounds at every step."""
    parts = list(numbers)
    return math.fsum(parts) if any(isinstance(part, float) for part in parts) else sum(parts)


#: What Python knows besides its own names.
PYTHON: Final = {"count": lambda several: len(list(several)), "sqrt": math.sqrt, "sum": summed,
                 **AMOUNTS}
