"""Every finding by place aboard: full cards for what failed or is open, rows for the rest."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from garboard.reports.backing import backing_of, remarks_of
from garboard.reports.figures import Figure, figures_of
from garboard.reports.groups import OfRule, by_missing, by_rule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.html.drawing.limit_bar import limit_bar
from garboard.reports.html.views.things import Things
from garboard.reports.language import told_in
from garboard.reports.memory import memory_words
from garboard.reports.names import rule_words
from garboard.reports.reasons import because, flag_words, why_not
from garboard.reports.summary import pack_name
from garboard.reports.words import (
    FLAGS,
    citation_words,
    standing_words,
    subject_word,
    subjects_word,
)
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Finding
from garboard.values import WITHIN_UNCERTAINTY

#: The texts of a rule that can be in a language of their own.
_TOLD = ("title", "why", "recommendation", "left_to_a_person")
_PARTS = {FAILED: "failed", NOT_ASSESSED: "open", PASSED: "passed", NOT_APPLICABLE: "idle"}


class FindingsByPlace:
    """The findings of one trail, grouped by place, then by outcome and rule."""

    def __init__(self, book: Book, things: Things) -> None:
        self._book, self._things = book, things
        self._backing: dict[tuple[str, str], list[tuple[str, str]]] = {}

    def places(self) -> list[dict[str, Any]]:
        """The places that have findings, each with its cards and rows."""
        places: dict[str, dict[str, Any]] = {}
        for outcome, part in _PARTS.items():
            for group in by_rule(self._book.trail, outcome):
                for place, findings in self._by_place(group.findings).items():
                    here = places.setdefault(place, {each: [] for each in _PARTS.values()})
                    here[part].append(self._card(group, findings, outcome))
        order = self._book.places.order()
        named = sorted(places, key=lambda place: (order.index(place) if place in order
                                                  else len(order), place))
        return [self._place(number, name, places[name]) for number, name in enumerate(named, 1)]

    def _place(self, number: int, name: str, parts: dict[str, list[Any]]) -> dict[str, Any]:
        counts = {part: sum(card["count"] for card in cards) for part, cards in parts.items()}
        kind = self._book.trail.fact(f"{name}.kind")
        return {"number": number, "name": name, "counts": counts, **parts,
                "kind": harmless_name(kind["value"]) if kind is not None else ""}

    def _by_place(self, findings: Iterable[Finding]) -> dict[str, list[Finding]]:
        places: dict[str, list[Finding]] = {}
        for finding in findings:
            places.setdefault(self._book.places.of(finding), []).append(finding)
        return places

    def _card(self, group: OfRule, findings: list[Finding], outcome: str) -> dict[str, Any]:
        rule = group.rule
        card = {"severity": group.severity, "outcome": outcome, "count": len(findings),
                "title": self._book.title_of(rule, group.pack), "rows": [],
                "lang": {name: harmless_name(told_in(rule, name)) for name in _TOLD},
                "rule": harmless_name(rule["id"]), "pack": pack_name(group.pack),
                "memory": memory_words(self._book.trail, findings)}
        if outcome == FAILED:
            card["rows"] = self._failed_rows(findings)
            card |= self._texts(group, findings)
        elif outcome == NOT_ASSESSED:
            card["rows"] = self._open_rows(findings)
            card["left"] = harmless(rule.get("left_to_a_person") or "")
            card["source"] = citation_words(rule["citation"]) or standing_words(rule["citation"])
        elif outcome == PASSED:
            card["rows"] = self._passed_rows(findings)
            card["flags"] = [flag_words(group, flag, flagged) for flag in FLAGS
                             if (flagged := [each for each in findings if flag in each["flags"]])]
        else:
            card["rows"] = self._idle_rows(group, findings)
        return card

    # rows ----------------------------------------------------------------------------------------
    def _failed_rows(self, findings: Iterable[Finding]) -> list[dict[str, Any]]:
        """The items that failed with their figures; those that have the same ones together."""
        alike: dict[tuple[Any, ...], list[Finding]] = {}
        for finding in findings:
            figures = tuple(figures_of(self._book.trail, finding, self._book.system))
            notes = [f"set aside by dispensation {harmless_name(finding['dispensation'])}"
                     ] if finding.get("dispensation") else []
            notes += remarks_of(self._book.trail, finding)
            alike.setdefault((figures, tuple(notes)), []).append(finding)
        return [self._row(same, figures, notes) for (figures, notes), same in alike.items()]

    def _open_rows(self, findings: Sequence[Finding]) -> list[dict[str, Any]]:
        rows = []
        for missing, same in by_missing(findings):
            why = because(self._book.names, missing, same)
            each: list[list[Finding]] = [[one] for one in same] if (
                same[0]["reason"] == WITHIN_UNCERTAINTY) else [list(same)]
            for some in each:
                figures = tuple(figures_of(self._book.trail, some[0], self._book.system)) if (
                    some[0]["reason"] == WITHIN_UNCERTAINTY) else ()
                rows.append({**self._row(some, figures, ()), "because": why})
        return rows

    def _passed_rows(self, findings: Iterable[Finding]) -> list[dict[str, Any]]:
        """The items that passed with their figures; those that have the same ones together."""
        alike: dict[tuple[Figure, ...], list[Finding]] = {}
        for finding in findings:
            figures = tuple(figures_of(self._book.trail, finding, self._book.system))
            alike.setdefault(figures, []).append(finding)
        return [self._row(same, figures, ()) for figures, same in alike.items()]

    def _idle_rows(self, group: OfRule, findings: Iterable[Finding]) -> list[dict[str, Any]]:
        reasons: dict[str, list[Finding]] = {}
        for finding in findings:
            reasons.setdefault(str(finding["reason"]), []).append(finding)
        return [{**self._row(same, (), ()), "because": why_not(group, reason, [])}
                for reason, same in reasons.items()]

    def _row(self, findings: Sequence[Finding], figures: tuple[Figure, ...],
             notes: Sequence[str]) -> dict[str, Any]:
        items = [each["item"] for each in findings]
        return {
            "items": [self._item(each) for each in findings], "count": len(findings),
            "things": " ".join(str(self._things.number_of[each]) for each in items
                               if each is not None),
            "figures": [self._figure(each) for each in figures], "notes": list(notes)}

    def _item(self, finding: Finding) -> dict[str, Any]:
        return {"name": self._book.names.item(finding),
                "number": self._book.number_of[finding["id"]],
                "letter": self._things.letters.get(finding["item"] or "", ""),
                "thing": self._things.number_of.get(finding["item"] or ""),
                "working": bool(finding["operands"])}

    def _figure(self, figure: Figure) -> dict[str, Any]:
        margin = figure.margin
        return {"name": figure.name, "value": figure.value, "relation": figure.relation,
                "limit": figure.limit, "basis": figure.basis,
                "margin": margin.words(self._book.system) if margin is not None else "",
                "bar": limit_bar(figure.sides) if margin is not None and figure.sides else ""}

    # texts ---------------------------------------------------------------------------------------
    def _texts(self, group: OfRule, findings: Sequence[Finding]) -> dict[str, Any]:
        """Why it matters, what to do, and what the requirement rests on."""
        rule = group.rule
        noun = subject_word if group.among == 1 else subjects_word
        return {
            "among": f"Fails for {len(group.findings)} of {group.among} {noun(rule['about'])} it "
                     f"applies to{'' if len(findings) == len(group.findings) else ' aboard'}.",
            "in_full": rule_words(rule["must_hold"], rule["about"])
            if " or " in rule["must_hold"] else "",
            "why": harmless(rule["why"]), "what": harmless(rule["recommendation"]),
            "source": citation_words(rule["citation"]),
            "standing": standing_words(rule["citation"]),
            "left": harmless(rule.get("left_to_a_person") or ""),
            "backing": self._backing_of(group)}

    def _backing_of(self, group: OfRule) -> list[tuple[str, str]]:
        """Methods and limits of the requirement, found once for a rule."""
        key = (group.pack["pack"], group.rule["id"])
        if key not in self._backing:
            said: dict[tuple[str, str], None] = {}
            for finding in group.findings:
                for operand in self._book.trail.operands(finding):
                    if operand.part == "requirement":
                        said.update(dict.fromkeys(backing_of(
                            self._book.trail, operand, group.pack["resolved"]["limits"],
                            group.rule["citation"])))
            self._backing[key] = list(said)
        return self._backing[key]
