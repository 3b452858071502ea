"""Where two assessments differ: each place by its path, with what stands there in either.

Lists of findings are held side by side by their ids, all others by their places. A number that
differs by no more than ``TOLERANCE`` of its size is *near*: figures are kept with twelve digits,
and another processor may round the last of them otherwise.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final, NamedTuple

#: Relative; a thousand times the last digit that figures are kept with.
TOLERANCE: Final = 1e-9
#: The parts of an assessment in the order in which one follows from another.
_PARTS: Final = ("date", "date_from", "previous", "record", "packs", "dispensations", "quantities",
                 "irregularities", "derivations", "findings", "outcome")


class Nothing:
    """Stands for what is not there on one side."""

    def __repr__(self) -> str:
        return "not there"


NOTHING: Final = Nothing()


class Difference(NamedTuple):
    """A place where two assessments differ; ``near``: two numbers within the tolerance."""

    path: str
    before: Any
    after: Any
    near: bool = False

    @property
    def part(self) -> str:
        """The part of the assessment it stands in."""
        return self.path.partition(".")[0].partition("[")[0]


def differences(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[Difference]:
    """Every difference between two ``assessment`` parts, causes before what follows from them."""
    names = sorted({*before, *after},
                   key=lambda name: (_PARTS.index(name) if name in _PARTS else len(_PARTS), name))
    for name in names:
        one, other = before.get(name, NOTHING), after.get(name, NOTHING)
        if name == "findings":
            one, other = _by_id(one), _by_id(other)
        yield from _between(name, one, other)


def _between(path: str, one: Any, other: Any) -> Iterator[Difference]:
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        for key in sorted({*one, *other}):
            yield from _between(_step(path, key), one.get(key, NOTHING), other.get(key, NOTHING))
    elif _is_list(one) and _is_list(other) and len(one) == len(other):
        for place, (each, its_other) in enumerate(zip(one, other, strict=True)):
            yield from _between(f"{path}[{place}]", each, its_other)
    elif _is_number(one) and _is_number(other):
        if one != other:
            yield Difference(path, one, other, math.isclose(one, other, rel_tol=TOLERANCE))
    elif type(one) is not type(other) or one != other:
        yield Difference(path, one, other)


def _step(path: str, key: str) -> str:
    return f"{path}.{key}" if key.isidentifier() else f'{path}["{key}"]'


def _by_id(findings: Any) -> Any:
    return {each["id"]: each for each in findings} if _is_list(findings) else findings


def _is_list(thing: Any) -> bool:
    return isinstance(thing, Sequence) and not isinstance(thing, str)


def _is_number(thing: Any) -> bool:
    return isinstance(thing, (int, float)) and not isinstance(thing, bool)
