"""Reading one leaf, in either of its forms, into facts and problems.

The mapping form of a leaf:

    {value, plus_minus | uncertainty, from, method, evidence, note, further keys of the field}
    {not_determinable: why, from, method, evidence, note, further keys of the field}
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType
from typing import Any, Final, Literal

from garboard.errors import ReadingError, did_you_mean
from garboard.record.fact import NO_EXTRAS, Fact
from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.measure import Measure
from garboard.record.leaves.reference import References
from garboard.record.leaves.words import Choice, Words
from garboard.values import (
    NOT_DETERMINABLE,
    TOLERANCE,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
)
from garboard.values.units import with_tolerance

ORIGINS: Final = ("measured", "nameplate", "datasheet", "manual", "device readout", "drawing",
                  "owner", "estimated")
#: The keys every mapping form allows besides ``value`` and the two spreads.
REMARKS: Final[Mapping[str, LeafKind]] = MappingProxyType({
    "not_determinable": Words("Why it could not be found out"),
    "from": Choice("How it was found out", among=ORIGINS),
    "method": Words("How it was measured or worked out"),
    "evidence": References("Evidence it rests on", to=("evidence",)),
    "note": Words("Anything else worth writing down about it"),
})
SPREADS: Final[Mapping[str, Literal["tolerance", "uncertainty"]]] = MappingProxyType(
    {"plus_minus": "tolerance", "uncertainty": "uncertainty"})
_UNREAD: Final = object()


@dataclass(frozen=True, slots=True)
class LeafProblem:
    """What is wrong with a leaf; ``path`` starts at the leaf, ``key`` means the key itself."""

    code: str
    path: tuple[str | int, ...] = ()
    found: str = ""
    expected: str = ""
    hint: str = ""
    offset: int | None = None
    key: bool = False


@dataclass(slots=True)
class LeafReading:
    """The facts of one leaf by name, its problems, and what about it is unlikely."""

    facts: list[tuple[str, Fact]] = field(default_factory=list)
    problems: list[LeafProblem] = field(default_factory=list)
    unlikely: list[LeafProblem] = field(default_factory=list)
    evidence: list[tuple[tuple[str | int, ...], tuple[str, ...]]] = field(default_factory=list)


def read_leaf(leaf: LeafKind, written: object, name: str, thing_id: str = "") -> LeafReading:
    """Read a leaf as written under the field ``name`` of a thing."""
    reading = LeafReading()
    _read(reading, leaf, written, name, thing_id, ())
    return reading


def _read(reading: LeafReading, leaf: LeafKind, written: object, name: str, thing_id: str,
          at: tuple[str | int, ...]) -> object:
    """Read a leaf at ``at`` into ``reading``; its value, or ``_UNREAD``."""
    if isinstance(written, dict) and leaf.has_mapping:
        return _mapping(reading, leaf, written, name, thing_id, at)
    value = _scalar(reading, leaf, written, f"{thing_id}.{name}", at)
    if value is not _UNREAD:
        reading.facts.extend((part, Fact(each, _as_text(written)))
                             for part, each in leaf.parts(name, value))
    return value


def _scalar(reading: LeafReading, leaf: LeafKind, written: object, fact_path: str,
            at: tuple[str | int, ...]) -> object:
    if isinstance(written, dict):
        reading.problems.append(LeafProblem("scalar-expected", at, "a mapping", "a single value"))
        return _UNREAD
    if written is None:
        reading.problems.append(LeafProblem(
            "value-empty", at, "nothing", leaf.meaning,
            "leave the key out if it is not recorded", key=True))
        return _UNREAD
    try:
        value = leaf.read(written)
    except ReadingError as error:
        reading.problems.append(_located(error, at, written))
        return _UNREAD
    hint = leaf.unlikely(written, value)
    if hint is not None:
        reading.unlikely.append(LeafProblem("value-unlikely", at, _as_text(written),
                                            _likely_words(leaf), hint))
    if isinstance(value, Bounds):
        return Bounds(value.lo, value.hi, basis=(TOLERANCE,),
                      causes=(Cause(WITHIN_UNCERTAINTY, fact_path),))
    return value


def _mapping(reading: LeafReading, leaf: LeafKind, written: dict[str, Any], name: str,
             thing_id: str, at: tuple[str | int, ...]) -> object:
    allowed = mapping_keys(leaf)
    extras: dict[str, Any] = {}
    remarks: dict[str, Any] = {}
    for key, each in written.items():
        if key not in allowed:
            reading.problems.append(LeafProblem(
                "key-unknown", (*at, key), f"{key!r}", f"one of {', '.join(allowed)}",
                did_you_mean(str(key), allowed), key=True))
        elif key in leaf.extras:
            extra = _read(reading, leaf.extras[key], each, f"{name}.{key}", thing_id, (*at, key))
            if extra is not _UNREAD:
                extras[key] = extra
        elif key in REMARKS:
            remark = _scalar(reading, REMARKS[key], each, f"{thing_id}.{name}", (*at, key))
            if remark is not _UNREAD:
                remarks[key] = remark
    if remarks.get("evidence"):
        reading.evidence.append(((*at, "evidence"), remarks["evidence"]))
    remarks["method"] = extras.get("method", remarks.get("method"))
    value = _value(reading, leaf, written, remarks, f"{thing_id}.{name}", at)
    if value is _UNREAD:
        return _UNREAD
    text = _written_text(written)
    reading.facts.extend(
        (part, Fact(each, text, remarks.get("from"), remarks["method"],
                    remarks.get("evidence", ()), remarks.get("note"),
                    MappingProxyType(extras) if extras else NO_EXTRAS))
        for part, each in leaf.parts(name, value))
    return value


def _value(reading: LeafReading, leaf: LeafKind, written: dict[str, Any],
           remarks: dict[str, Any], fact_path: str, at: tuple[str | int, ...]) -> object:
    """The value of a mapping form: from ``value``, its spread, or ``not_determinable``."""
    if "not_determinable" in written:
        if "value" in written:
            reading.problems.append(LeafProblem(
                "leaf-two-answers", (*at, "not_determinable"), "value and not_determinable",
                "one of the two", key=True))
            return _UNREAD
        _refuse_spread(reading, leaf, written, at, "a spread without a value")
        if "not_determinable" not in remarks:
            return _UNREAD
        return Unknown.because(NOT_DETERMINABLE, fact_path, remarks["not_determinable"])
    if "value" not in written:
        reading.problems.append(LeafProblem(
            "leaf-without-value", at, f"only {', '.join(map(str, written)) or 'an empty mapping'}",
            "value, or not_determinable with the reason"))
        return _UNREAD
    value = _scalar(reading, leaf, written["value"], fact_path, (*at, "value"))
    if value is _UNREAD:
        return _UNREAD
    if not isinstance(leaf, Measure):
        return value
    return _spread(reading, leaf, written, value, fact_path, at)


def _spread(reading: LeafReading, leaf: Measure, written: dict[str, Any], value: object,
            fact_path: str, at: tuple[str | int, ...]) -> object:
    given = [key for key in SPREADS if key in written]
    if not given:
        return value
    key = given[-1]
    if len(given) > 1:
        reading.problems.append(LeafProblem(
            "leaf-two-spreads", (*at, key), "plus_minus and uncertainty",
            "one of the two", "plus_minus is a tolerance, uncertainty a 95 % expanded one",
            key=True))
        return _UNREAD
    if isinstance(value, Bounds):
        _refuse_spread(reading, leaf, written, at, "a spread on a range")
        return _UNREAD
    try:
        spread = with_tolerance(written["value"], written[key], leaf.of, SPREADS[key], fact_path)
    except ReadingError as error:
        reading.problems.append(_located(error, (*at, key), written[key]))
        return _UNREAD
    if not isinstance(spread, Bounds) or leaf.lowest == "any" or spread.lo > 0:
        return spread
    reading.unlikely.append(LeafProblem(
        "spread-through-zero", (*at, key), _as_text(written[key]), "less than the figure itself",
        "what lies below zero is left out; check the spread"))
    return leaf.cut_at_zero(spread)


def _refuse_spread(reading: LeafReading, leaf: LeafKind, written: dict[str, Any],
                   at: tuple[str | int, ...], found: str) -> None:
    for key in SPREADS:
        if key in written and leaf.spreads:
            reading.problems.append(LeafProblem(
                "leaf-spread-unfit", (*at, key), found,
                "plus_minus or uncertainty beside one number", key=True))


@cache
def mapping_keys(leaf: LeafKind) -> tuple[str, ...]:
    """The keys that the mapping form of a leaf allows."""
    if leaf.mapping_keys is not None:
        return leaf.mapping_keys
    return ("value", *(SPREADS if leaf.spreads else ()), *REMARKS,
            *(key for key in leaf.extras if key not in REMARKS))


def _located(error: ReadingError, at: tuple[str | int, ...], written: object) -> LeafProblem:
    offset = (error.offset or None) if isinstance(written, str) else None
    return LeafProblem(error.code, at, error.found, error.expected, error.hint, offset)


def _likely_words(leaf: LeafKind) -> str:
    ends = leaf.likely_range() if isinstance(leaf, Measure) else None
    return "" if ends is None else f"something between {ends[0]} and {ends[1]}"


def _as_text(written: object) -> str:
    if isinstance(written, str):
        return written
    if isinstance(written, bool):
        return "yes" if written else "no"
    if isinstance(written, list):
        return ", ".join(map(str, written))
    return str(written)


def _written_text(written: dict[str, Any]) -> str:
    if "value" not in written:
        return f"not determinable: {written['not_determinable']}"
    spread = next((written[key] for key in SPREADS if key in written), None)
    text = _as_text(written["value"])
    return text if spread is None else f"{text} ± {spread}"
