"""Findings and figures of a trail as rows of text and numbers, the same for all tables."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from garboard.reports.figures import figures_of
from garboard.reports.groups import OfRule, by_missing
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.memory import memory_of, memory_words
from garboard.reports.names import Names
from garboard.reports.reasons import because, flag_words, why_not
from garboard.reports.summary import pack_name
from garboard.reports.words import citation_words, method_source_words, standing_words
from garboard.trail import (
    FAILED,
    FLAGS,
    NOT_APPLICABLE,
    NOT_ASSESSED,
    Finding,
    Trail,
    value_from_data,
)
from garboard.values import Bounds, Unknown
from garboard.values.units import System, format_value


@dataclass(frozen=True, slots=True)
class FindingRow:
    """One finding in words; ``found`` are its figures, ``because`` why it is open or idle."""

    id: str
    outcome: str
    severity: str
    pack: str
    rule: str
    title: str
    item: str
    place: str
    found: str
    because: str
    remark: str
    dispensation: str
    work: str
    source: str


@dataclass(frozen=True, slots=True)
class FigureRow:
    """One figure: in words for people, in its canonical unit for programs.

    ``least`` and ``most`` are None where they are not known or have no end; of an exact number both
    are that number.
    """

    key: str
    thing: str
    name: str
    shown: str
    least: float | None
    most: float | None
    nominal: float | None
    unit: str
    method: str
    source: str


def finding_rows(trail: Trail, system: System) -> Iterator[FindingRow]:
    """A row for every finding, in the order of the trail."""
    names = Names(trail)
    for finding in trail.findings:
        rule, pack = trail.rule_of(finding), trail.pack_of(finding)
        group = OfRule(rule, pack, (finding,), 1)
        yield FindingRow(
            id=harmless(finding["id"]), outcome=finding["outcome"], severity=rule["severity"],
            pack=pack_name(pack), rule=harmless_name(rule["id"]), title=harmless(rule["title"]),
            item=names.item(finding), place=names.place(finding).removeprefix(", in "),
            found=_found(trail, finding, system), because=_because(names, group, finding),
            remark=_remark(trail, group, finding),
            dispensation=harmless_name(finding.get("dispensation") or ""),
            work=harmless(rule["recommendation"]) if finding["outcome"] == FAILED else "",
            source=_source(rule["citation"]))


def _remark(trail: Trail, group: OfRule, finding: Finding) -> str:
    said = [flag_words(group, flag, [finding]) for flag in FLAGS if flag in finding["flags"]]
    memory = memory_words(trail, [finding])
    return "; ".join([*said, memory] if memory else said)


def _found(trail: Trail, finding: Finding, system: System) -> str:
    texts = []
    for figure in figures_of(trail, finding, system):
        text = figure.words
        if figure.margin is not None:
            text += f", {figure.margin.words(system)}"
        texts.append(text)
    return harmless("; ".join(texts))


def _because(names: Names, group: OfRule, finding: Finding) -> str:
    if finding["outcome"] == NOT_ASSESSED:
        [(missing, same)] = by_missing([finding])
        return harmless(because(names, missing, same))
    if finding["outcome"] == NOT_APPLICABLE:
        items = [names.thing(finding["item"])] if finding["item"] is not None else []
        return harmless(why_not(group, finding["reason"], items))
    return ""


def _source(citation: dict[str, Any]) -> str:
    source = citation_words(citation)
    return f"{source}; {standing_words(citation)}" if source else standing_words(citation)


def figure_rows(trail: Trail, system: System) -> Iterator[FigureRow]:
    """A row for every figure that was worked out, in the order of its keys."""
    names = Names(trail)
    for key, each in sorted(trail.assessment["derivations"].items()):
        value = value_from_data(each["value"], each["kind"])
        least, most, nominal = _numbers(value)
        known = trail.assessment["quantities"].get(each["quantity"])
        yield FigureRow(
            key=harmless(key), thing=names.thing(key.partition(".")[0]),
            name=harmless_name(key.partition(".")[2]).replace("_", " "),
            shown="not known" if isinstance(value, Unknown) else harmless(
                format_value(value, each["dimension"], system)),
            least=least, most=most, nominal=nominal, unit=each["unit"] or "",
            method=harmless(known["method"]) if known else "",
            source=_method_source(trail, key, known["citation"]) if known else "")


def _method_source(trail: Trail, key: str, citation: dict[str, Any]) -> str:
    memory = memory_of(trail, [key])
    return "; ".join([method_source_words(citation), *filter(None, [memory])])


def _numbers(value: object) -> tuple[float | None, float | None, float | None]:
    if isinstance(value, Bounds):
        return _finite(value.lo), _finite(value.hi), _finite(value.nominal)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None, None, None
    return _finite(value), _finite(value), None


def _finite(number: float | None) -> float | None:
    return float(number) if number is not None and math.isfinite(number) else None
