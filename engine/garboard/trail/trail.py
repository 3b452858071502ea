"""A trail in hand: a view of the document with what its readers look up most."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from garboard.trail.findings import Finding
from garboard.trail.value_data import value_from_data

Data = Mapping[str, Any]
_NO_TRACE: Final[Data] = {"operands": [], "statements": []}


@dataclass(frozen=True, slots=True, eq=False)
class Operand:
    """One operand of a finding: what it is, and its value for the item.

    ``part`` is ``condition`` or ``requirement``; ``constant`` marks what is the same for every
    item, ``limit`` names the limit it is. ``of`` are the keys of the figures and recorded facts it
    was read from (``f0.prospective_current``).
    """

    text: str
    part: str
    kind: str
    dimension: str | None
    unit: str | None
    constant: bool
    limit: str | None
    value: Any
    of: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Statement:
    """A statement of a rule for the item of a finding: a comparison, or a plain truth.

    ``relation`` and ``right`` are ``None`` for a plain truth; ``holds`` is ``None`` where that is
    not known; ``decides`` says whether the outcome rests on it.
    """

    left: Operand
    relation: str | None
    right: Operand | None
    holds: bool | None
    decides: bool


@dataclass(frozen=True, slots=True, eq=False)
class Trail:
    """A trail document; treat it as frozen. ``canonical`` are the bytes that the digest covers.

    ``brought_up_from`` is the older format of one that was brought up, ``None`` for all others;
    its digest and canonical bytes are still those of its file.
    """

    document: Data
    canonical: bytes = field(repr=False)
    brought_up_from: str | None = field(default=None, kw_only=True)
    _rules: Mapping[tuple[str, str], Data] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        rules = {(pack["pack"], rule["id"]): rule
                 for pack in self.packs for rule in pack["resolved"]["rules"]}
        object.__setattr__(self, "_rules", rules)

    @property
    def digest(self) -> str:
        """``sha256:`` and the hexadecimal digest of what the trail says."""
        return str(self.document["digest"])

    @property
    def assessment(self) -> Data:
        part: Data = self.document["assessment"]
        return part

    @property
    def about(self) -> Data:
        part: Data = self.document["about"]
        return part

    @property
    def date(self) -> str:
        """The day the assessment is made for."""
        return str(self.assessment["date"])

    @property
    def previous(self) -> str | None:
        """The digest of the vessel's previous trail, where one was named."""
        named: str | None = self.assessment.get("previous")
        return named

    @property
    def vessel(self) -> str | None:
        """The name of the vessel, where it is recorded."""
        fact = self.fact("vessel.name")
        return fact["value"] if fact is not None and isinstance(fact["value"], str) else None

    @property
    def written(self) -> Data:
        """The record's data as they were written."""
        part: Data = self.assessment["record"]["written"]
        return part

    @property
    def packs(self) -> Sequence[Data]:
        part: Sequence[Data] = self.assessment["packs"]
        return part

    @property
    def findings(self) -> Sequence[Finding]:
        part: Sequence[Finding] = self.assessment["findings"]
        return part

    @property
    def outcome(self) -> Data:
        part: Data = self.assessment["outcome"]
        return part

    @property
    def word(self) -> str:
        """The overall word."""
        return str(self.outcome["word"])

    @property
    def exit_code(self) -> int:
        """The exit code of the assessment: 0, 1, 2 or 4."""
        return int(self.outcome["exit_code"])

    def pack_of(self, finding: Finding) -> Data:
        """The pack a finding is of."""
        return next(pack for pack in self.packs if pack["pack"] == finding["pack"])

    def rule_of(self, finding: Finding) -> Data:
        """The rule a finding is of."""
        return self._rules[finding["pack"], finding["rule"]]

    def fact(self, path: str) -> Data | None:
        """A recorded fact by data path (``pack-1.capacity``)."""
        found: Data | None = self.assessment["record"]["read"].get(path)
        return found

    def derivation(self, key: str) -> Data | None:
        """How a figure came about (``f0.prospective_current``)."""
        found: Data | None = self.assessment["derivations"].get(key)
        return found

    def operands(self, finding: Finding) -> tuple[Operand, ...]:
        """The operands of a finding with their values, as far as they were needed."""
        return tuple(
            Operand(**named, value=value_from_data(value, named["kind"]), of=tuple(keys))
            for named, value, keys in zip(self._trace(finding)["operands"], finding["operands"],
                                          finding["of"], strict=False))

    def statements(self, finding: Finding) -> tuple[Statement, ...]:
        """The statements of a finding whose operands are there, in the order of the rule."""
        operands = self.operands(finding)
        return tuple(
            Statement(operands[each["left"]], each["relation"],
                      None if each["right"] is None else operands[each["right"]],
                      holds, number in finding["decides"])
            for number, (each, holds) in enumerate(zip(self._trace(finding)["statements"],
                                                       finding["holds"], strict=False)))

    def _trace(self, finding: Finding) -> Data:
        trace: Data = self.pack_of(finding)["traces"].get(finding["rule"], _NO_TRACE)
        return trace
