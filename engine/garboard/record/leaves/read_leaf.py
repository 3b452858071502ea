"""Reading one leaf, in either of its forms, into facts and problems."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

from garboard.errors import ReadingError, did_you_mean
from garboard.record.fact import Fact
from garboard.record.leaves.base import LeafKind
from garboard.record.leaves.leaf_reading import LeafPath, LeafProblem, LeafReading
from garboard.record.leaves.measure import Measure
from garboard.record.leaves.remarks import REMARKS, SPREADS, mapping_keys
from garboard.values import (
    NOT_DETERMINABLE,
    TOLERANCE,
    WITHIN_UNCERTAINTY,
    Bounds,
    Cause,
    Unknown,
    rounded_value,
)
from garboard.values.units import with_tolerance

_UNREAD: Final = object()


def read_leaf(leaf: LeafKind, written: object, name: str, thing_id: str = "") -> LeafReading:
    """Read a leaf as written under the field ``name`` of a thing."""
    reading = LeafReading()
    _Leaf(reading, leaf, name, thing_id, ()).read(written)
    return reading


@dataclass(frozen=True, slots=True, eq=False)
class _Leaf:
    """A leaf being read: into ``reading``, standing at ``at`` within the outermost leaf."""

    reading: LeafReading
    leaf: LeafKind
    name: str
    thing_id: str
    at: LeafPath

    def read(self, written: object) -> object:
        """Read either form; the value, or ``_UNREAD`` after noting what is wrong."""
        if isinstance(written, dict) and self.leaf.has_mapping:
            return self._mapping(written)
        value = self._scalar(self.leaf, written)
        if value is not _UNREAD:
            self.reading.facts.extend((part, Fact(each, _as_text(written)))
                                      for part, each in self.leaf.parts(self.name, value))
        return value

    def _mapping(self, written: dict[str, Any]) -> object:
        extras, remarks = self._remarks(written)
        value = self._value(written, remarks)
        if value is _UNREAD:
            return _UNREAD
        text = _written_text(written)
        method = extras.get("method", remarks.get("method"))
        self.reading.facts.extend(
            (part, Fact(each, text, remarks.get("from"), method, remarks.get("evidence", ()),
                        remarks.get("note"), extras))
            for part, each in self.leaf.parts(self.name, value))
        return value

    def _remarks(self, written: dict[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
        """The values of the extra keys, and of the remarks that every leaf may have."""
        allowed = mapping_keys(self.leaf)
        extras: dict[str, Any] = {}
        remarks: dict[str, Any] = {}
        for key, each in written.items():
            if key not in allowed:
                self._refuse("key-unknown", key, repr(key), f"one of {', '.join(allowed)}",
                             did_you_mean(str(key), allowed))
            elif key in self.leaf.extras:
                extra = _Leaf(self.reading, self.leaf.extras[key], f"{self.name}.{key}",
                              self.thing_id, (*self.at, key)).read(each)
                if extra is not _UNREAD:
                    extras[key] = extra
            elif key in REMARKS:
                remark = self._scalar(REMARKS[key], each, key)
                if remark is not _UNREAD:
                    remarks[key] = remark
        if remarks.get("evidence"):
            self.reading.evidence.append(((*self.at, "evidence"), remarks["evidence"]))
        return extras, remarks

    def _value(self, written: dict[str, Any], remarks: dict[str, Any]) -> object:
        """The value of a mapping form: from ``value`` and its spread, or ``not_determinable``."""
        if "not_determinable" in written:
            if "value" in written:
                return self._refuse("leaf-two-answers", "not_determinable",
                                    "value and not_determinable", "one of the two")
            self._refuse_spreads(written, "a spread without a value")
            if "not_determinable" not in remarks:
                return _UNREAD
            return Unknown.because(NOT_DETERMINABLE, self._path, remarks["not_determinable"])
        if "value" not in written:
            keys = ", ".join(map(str, written))
            self.reading.problems.append(LeafProblem(
                "leaf-without-value", self.at, f"only {keys}" if keys else "an empty mapping",
                "value, or not_determinable with the reason"))
            return _UNREAD
        value = self._scalar(self.leaf, written["value"], "value")
        if value is _UNREAD or not isinstance(self.leaf, Measure):
            return value
        return self._spread(self.leaf, written, value)

    def _scalar(self, leaf: LeafKind, written: object, *key: str) -> object:
        """The value of a scalar that stands under ``key`` within this leaf."""
        at = (*self.at, *key)
        if isinstance(written, dict):
            return self._note(LeafProblem("scalar-expected", at, "a mapping", "a single value"))
        if written is None:
            return self._note(LeafProblem("value-empty", at, "nothing", leaf.meaning,
                                          "leave the key out if it is not recorded", key=True))
        try:
            value = _rounded(leaf.read(written))
        except ReadingError as error:
            return self._note(_located(error, at, written))
        hint = leaf.unlikely(written, value)
        if hint is not None:
            self.reading.unlikely.append(LeafProblem(
                "value-unlikely", at, _as_text(written), _likely_words(leaf), hint))
        if isinstance(value, Bounds):
            return Bounds(value.lo, value.hi, basis=(TOLERANCE,),
                          causes=(Cause(WITHIN_UNCERTAINTY, self._path),))
        return value

    def _spread(self, leaf: Measure, written: dict[str, Any], value: object) -> object:
        given = [key for key in SPREADS if key in written]
        if not given:
            return value
        key = given[-1]
        if len(given) > 1:
            return self._refuse(
                "leaf-two-spreads", key, "plus_minus and uncertainty", "one of the two",
                "plus_minus is a tolerance, uncertainty a 95 % expanded one")
        if isinstance(value, Bounds):
            return self._refuse_spreads(written, "a spread on a range")
        try:
            spread = with_tolerance(written["value"], written[key], leaf.of, SPREADS[key],
                                    self._path)
        except ReadingError as error:
            return self._note(_located(error, (*self.at, key), written[key]))
        if not isinstance(spread, Bounds):
            return spread
        if leaf.lowest == "above zero" and spread.lo <= 0:
            self.reading.unlikely.append(LeafProblem(
                "spread-through-zero", (*self.at, key), _as_text(written[key]),
                "less than the figure itself", "what lies below zero is left out"))
        return leaf.cut_at_zero(_rounded(spread))

    def _refuse_spreads(self, written: dict[str, Any], found: str) -> object:
        if self.leaf.spreads:
            for key in SPREADS:
                if key in written:
                    self._refuse("leaf-spread-unfit", key, found,
                                 "plus_minus or uncertainty beside one number")
        return _UNREAD

    def _refuse(self, code: str, key: str, found: str, expected: str, hint: str = "") -> object:
        """Note that a key itself is wrong."""
        return self._note(LeafProblem(code, (*self.at, key), found, expected, hint, key=True))

    def _note(self, problem: LeafProblem) -> object:
        self.reading.problems.append(problem)
        return _UNREAD

    @property
    def _path(self) -> str:
        """The data path of the fact, as causes name it."""
        return f"{self.thing_id}.{self.name}"


def _rounded(value: Any) -> Any:
    """A value whose numbers have the 12 significant digits that rules compare."""
    if isinstance(value, tuple):
        return tuple(map(_rounded, value))
    return rounded_value(value)


def _located(error: ReadingError, at: LeafPath, written: object) -> LeafProblem:
    offset = (error.offset or None) if isinstance(written, str) else None
    return LeafProblem(error.code, at, error.found, error.expected, error.hint, offset)


def _likely_words(leaf: LeafKind) -> str:
    ends = leaf.likely_range()
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
