"""The working of a finding as text: in an owner's words, or in full."""

from __future__ import annotations

import re
from typing import Any, Final

from garboard.reports.backing import limit_words
from garboard.reports.cautions import CAUTIONS
from garboard.reports.counts import plural
from garboard.reports.figures import figures_of
from garboard.reports.groups import by_missing
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.memory import memory_words
from garboard.reports.names import Names, limits_in, rule_words
from garboard.reports.reasons import because
from garboard.reports.sheet import Sheet
from garboard.reports.summary import date_words, fact_value, pack_name
from garboard.reports.terminal.page import MARKS, STYLES
from garboard.reports.words import (
    ORIGINS,
    RELATIONS,
    TO_DO,
    citation_words,
    method_source_words,
    standing_words,
)
from garboard.reports.working.derivation import Derivations, Fact, Figure
from garboard.reports.working.filled import filled
from garboard.reports.working.remedy import FOUND, Remedy, Tried
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, Finding, Trail, value_from_data
from garboard.values import Unknown
from garboard.values.units import System, format_value

_SPAN: Final = 17
_STEP: Final = 2
_DEEPEST: Final = 12
_MOST_TRIED: Final = 12
_MOST_THINGS: Final = 40
_COUNTED: Final = re.compile(r"\[([0-9]{1,9})\]")
_HOLDS: Final = {True: "holds", False: "does not hold", None: "not known"}


def working_text(trail: Trail, finding: Finding, width: int, colour: bool, *,
                 remedy: Remedy | None = None, full: bool = False, us_units: bool = False) -> str:
    """The working of one finding; with the design change that would do, where one was sought."""
    text = _Working(trail, finding, Sheet(width, colour), "us" if us_units else "metric")
    return str(text.in_full(remedy) if full else text.in_brief(remedy))


class _Working:
    def __init__(self, trail: Trail, finding: Finding, sheet: Sheet, system: System) -> None:
        self._trail, self._finding, self._sheet, self._system = trail, finding, sheet, system
        self._names = Names(trail)
        self._rule: Any = trail.rule_of(finding)
        self._operands = trail.operands(finding)
        self._derivations = Derivations(trail)
        keys = tuple(key for operand in self._operands for key in operand.of)
        self._figures, self._facts, self._missing = self._derivations.of(keys)

    def in_brief(self, remedy: Remedy | None) -> Sheet:
        """In an owner's words."""
        sheet, rule = self._sheet, self._rule
        self._head()
        sheet.field("What must hold", _in_words(rule["must_hold"], rule["about"]), 0, _SPAN)
        if self._finding["outcome"] == NOT_APPLICABLE and rule.get("applies_when"):
            sheet.field("Applies when", _in_words(rule["applies_when"], rule["about"]), 0, _SPAN)
        self._deciding()
        sheet.field("Why it matters", harmless(rule["why"]), 0, _SPAN)
        if self._finding["outcome"] == FAILED:
            sheet.field("What to do", harmless(rule["recommendation"]), 0, _SPAN)
        self._worked_out()
        recorded = list({each.path: each for each in (
            *self._facts, *self._derivations.facts_below(self._figures))}.values())
        if recorded:
            sheet.heading(f"WHAT IT RESTS ON: {plural(len(recorded), 'fact of the record')}")
            things: dict[str, list[Fact]] = {}
            for fact in recorded:
                things.setdefault(fact.path.partition(".")[0], []).append(fact)
            for thing, facts in list(things.items())[:_MOST_THINGS]:
                sheet.bullet("•", self._of_thing(thing, facts))
            if len(things) > _MOST_THINGS:
                sheet.paragraph(f"and of {len(things) - _MOST_THINGS} things more; --full gives "
                                "each")
        self._remedy(remedy)
        return self._close("--full gives the expression, every statement, method and table row.")

    def in_full(self, remedy: Remedy | None) -> Sheet:
        """Everything the trail holds about it."""
        sheet, rule = self._sheet, self._rule
        self._head()
        for label, text in (("Applies when", rule.get("applies_when")),
                            ("Must hold", rule["must_hold"])):
            part = "condition" if label == "Applies when" else "requirement"
            if text:
                sheet.field(label, harmless(text), 0, _SPAN)
                used = [each for each in self._operands if each.part == part]
                if used or part == "requirement":
                    sheet.field("  with values", filled(text, used, self._system) if used else
                                "not looked at", 0, _SPAN)
        sheet.field("Source", f"{citation_words(rule['citation'])}; "
                              f"{standing_words(rule['citation'])}".removeprefix("; "), 0, _SPAN)
        self._statements()
        self._deciding()
        self._limits()
        if self._figures or self._facts or self._missing:
            sheet.heading("WORKED OUT FROM")
            for figure in self._figures:
                self._figure(figure, 0)
            for fact in self._facts:
                sheet.bullet("•", self._fact(fact, full=True))
            for path in self._missing:
                sheet.bullet("?", f"{self._names.fact(path)}: not recorded")
        self._remedy(remedy)
        return self._close(f"Trail {self._trail.digest}")

    def _head(self) -> None:
        finding, rule = self._finding, self._rule
        outcome = finding["outcome"]
        self._sheet.title(f"WORKING OF {harmless_name(finding['rule'])}",
                          self._names.item(finding))
        self._sheet.field("Rule", f"{harmless(rule['title'])} "
                                  f"({pack_name(self._trail.pack_of(finding))})", 0, _SPAN)
        self._sheet.field("Item", f"{self._names.item(finding)}{self._names.place(finding)}; "
                                  f"assessed for {date_words(self._trail)}", 0, _SPAN)
        said = f", {because(self._names, *self._open())}" if outcome == NOT_ASSESSED else ""
        if outcome == NOT_APPLICABLE:
            said = f", {harmless(finding['reason'])}"
        self._sheet.field("Outcome", f"{MARKS[outcome]} {outcome.upper()}{said}; severity "
                                     f"{rule['severity']}", 0, _SPAN, STYLES[outcome])

    def _open(self) -> Any:
        return by_missing([self._finding])[0]

    def _deciding(self) -> None:
        """What the outcome rests on, and how far it is from the limit."""
        for figure in figures_of(self._trail, self._finding, self._system):
            text = figure.words
            if figure.margin is not None:
                text += f"; {figure.margin.words(self._system)}"
            if figure.basis:
                text += f" (the bounds rest on {figure.basis})"
            self._sheet.field("Decided by", text, 0, _SPAN)

    def _statements(self) -> None:
        statements = self._trail.statements(self._finding)
        if statements:
            self._sheet.heading("STATEMENTS")
        for each in statements:
            text = f"{harmless(each.left.text)} = {self._value(each.left.value, each.left)}"
            if each.right is not None and each.relation is not None:
                text += f" {RELATIONS[each.relation]} {harmless(each.right.text)} = "
                text += self._value(each.right.value, each.right)
            mark = "*" if each.decides else "-"
            self._sheet.bullet(mark, f"{each.left.part}: {text}: {_HOLDS[each.holds]}")
        if any(each.decides for each in statements):
            self._sheet.paragraph("* the outcome rests on this", 0, "faint")

    def _limits(self) -> None:
        limits = self._trail.pack_of(self._finding)["resolved"]["limits"]
        for name in dict.fromkeys(name for operand in self._operands
                                  for name in limits_in(operand) if name in limits):
            self._sheet.field("Limit", limit_words(name, limits[name]), 0, _SPAN)

    # figures and facts ---------------------------------------------------------------------------
    def _worked_out(self) -> None:
        told = [each for each in self._figures if each.data["kind"] != "opaque"]
        if told:
            self._sheet.heading("HOW THE FIGURES WERE FOUND")
        for each in told:
            method = harmless(each.quantity["method"]) if each.quantity is not None else ""
            self._sheet.bullet("•", f"{self._names.fact(each.key)}: {self._figure_value(each)}. "
                                    f"{method}")
            for remark in each.data["remarks"]:
                self._sheet.bullet("-", harmless(remark), _STEP)
        for path in self._missing:
            self._sheet.bullet("?", f"{self._names.fact(path)}: not recorded")
        memory = memory_words(self._trail, [self._finding])
        if memory:
            self._sheet.bullet("!", memory)

    def _figure(self, each: Figure, depth: int) -> None:
        indent = _STEP * min(depth, _DEEPEST)
        value = "" if each.data["kind"] == "opaque" else f": {self._figure_value(each)}"
        name = f"{self._names.fact(each.key)}{value}"
        if each.again:
            self._sheet.bullet("=", f"{name} (as above)", indent)
            return
        self._sheet.bullet("=", name, indent, "strong")
        if each.quantity is not None:
            method = harmless(each.quantity["method"])
            self._sheet.paragraph(
                f"{method} ({method_source_words(each.quantity['citation'])}; "
                f"{harmless_name(each.data['quantity'])}, version {each.data['version']})",
                indent + _STEP, "faint")
        for row in each.data["table_rows"]:
            self._sheet.bullet("-", f"table row: {harmless(row)}", indent + _STEP)
        for remark in each.data["remarks"]:
            self._sheet.bullet("-", f"remark: {harmless(remark)}", indent + _STEP)
        for fact in each.facts:
            self._sheet.bullet("•", self._fact(fact, full=True), indent + _STEP)
        for path in each.missing:
            self._sheet.bullet("?", f"{self._names.fact(path)}: not recorded", indent + _STEP)
        for below in each.figures:
            self._figure(below, depth + 1)

    def _figure_value(self, each: Figure) -> str:
        value = value_from_data(each.data["value"], each.data["kind"])
        if isinstance(value, Unknown):
            return _not_known(value)
        return harmless(format_value(value, each.data["dimension"], self._system))

    def _value(self, value: object, operand: Any) -> str:
        if isinstance(value, Unknown):
            return _not_known(value)
        return harmless(format_value(value, operand.dimension, self._system))

    def _of_thing(self, thing: str, facts: list[Fact]) -> str:
        """The facts of one thing on a line, and where it stands in the record."""
        place = harmless_name(facts[0].place)
        said = ", ".join(self._fact(each).removeprefix(f"{self._names.thing(thing)}: ")
                         for each in facts)
        return f"{self._names.thing(thing)}{f' ({place})' if place else ''}: {said}"

    def _fact(self, fact: Fact, *, full: bool = False) -> str:
        data = fact.data
        value = data["value"]
        if isinstance(value, dict) and "unknown" in value:
            shown = "; ".join(dict.fromkeys(
                f"{each['reason']}{': ' + harmless(each['detail']) if each['detail'] else ''}"
                for each in value["unknown"]))
        else:
            shown = harmless(fact_value(data, self._system))
        text = f"{self._names.fact(_COUNTED.sub(_number, fact.path))}: {shown}"
        said = [ORIGINS.get(data["from"], harmless(data["from"]))] if data.get("from") else []
        if data.get("method"):
            said.append(f"method: {harmless(data['method'])}")
        if full:
            written = harmless(data.get("written") or "")
            said += [f"written as {written}"] if written and written != shown else []
            said += [f"note: {harmless(data['note'])}"] if data.get("note") else []
            said += [f"evidence: {', '.join(map(harmless_name, data['evidence']))}"] if (
                data.get("evidence")) else []
            said += [harmless_name(fact.path)]
            said += [harmless_name(fact.place)] if fact.place else []
        return f"{text} ({'; '.join(said)})" if said else text

    # what would do -------------------------------------------------------------------------------
    def _remedy(self, remedy: Remedy | None) -> None:
        if remedy is None:
            return
        sheet = self._sheet
        sheet.heading("THE SMALLEST DESIGN CHANGE THAT WOULD PASS")
        chosen = remedy.chosen
        if chosen is not None:
            sheet.bullet("✓", f"{self._change(chosen)}", style="passed")
            sheet.paragraph("Proven by assessing the whole record again with it: this finding "
                            "passes, and nothing fails that did not fail before.", _STEP)
            self._open_after(chosen)
        else:
            sheet.bullet("✗" if remedy.tried or remedy.word != FOUND else "–",
                         f"{remedy.word[0].upper()}{remedy.word[1:]}.")
        others = [each for each in remedy.tried if each is not chosen]
        if others:
            sheet.paragraph("Tried before it:" if chosen is not None else "Tried:", _STEP)
        for each in others[:_MOST_TRIED]:
            sheet.bullet("-", f"{self._change(each)}: {_result(each)}", _STEP)
        if len(others) > _MOST_TRIED:
            sheet.paragraph(f"and {len(others) - _MOST_TRIED} more", _STEP * 2)
        for note in remedy.notes:
            sheet.bullet("!", harmless(note), _STEP)
        if remedy.tried:
            sheet.paragraph(
                "Only changes that the pack permits were tried. None makes a lead longer or a fuse "
                "bigger, declares a rating higher, or takes a recorded value for another. It is a "
                "proposal to be checked and carried out by competent people, subject to local code "
                "and the makers' instructions.", _STEP, "faint")

    def _change(self, tried: Tried) -> str:
        return harmless(tried.change[0].upper() + tried.change[1:])

    def _open_after(self, tried: Tried) -> None:
        if tried.newly_open:
            self._sheet.paragraph(
                "What could be assessed before and could not be with it, until more is known: "
                f"{', '.join(map(_short, tried.newly_open))}.", _STEP)

    def _close(self, last: str) -> Sheet:
        self._sheet.heading("CAUTIONS", "faint")
        for each in CAUTIONS:
            self._sheet.bullet("•", each)
        self._sheet.paragraph(last, 0, "faint")
        return self._sheet


def _in_words(expression: str, subject: str) -> str:
    """An expression with its names and comparisons in words."""
    text = rule_words(expression, subject)
    for sign in sorted(RELATIONS, key=len, reverse=True):
        text = text.replace(f" {sign} ", f" {RELATIONS[sign].replace('must be', 'is')} ".replace(
            "must not be", "is not"))
    return text


def _number(found: re.Match[str]) -> str:
    """``breaks[0]`` is ``breaks 1`` to people."""
    return f"_{int(found[1]) + 1}"


def _result(tried: Tried) -> str:
    if tried.refused:
        return f"the record with it is refused: {harmless(tried.refused)}"
    if tried.passes:
        return (f"passes, but {', '.join(map(_short, tried.newly_failing))} would newly fail")
    after = tried.outcome or "no longer there"
    more = f"; {', '.join(map(_short, tried.newly_failing))} would newly fail" if (
        tried.newly_failing) else ""
    return f"{after}{more}"


def _short(identity: str) -> str:
    """``rule/item`` of a finding's id."""
    return harmless_name(identity.partition("/")[2])


def _not_known(value: Unknown) -> str:
    causes = dict.fromkeys(_cause(each) for each in value.causes)
    return f"not known ({'; '.join(causes)})"


def _cause(cause: Any) -> str:
    what = TO_DO.get(cause.reason, harmless(cause.reason))
    return f"{harmless_name(cause.path)}: {what}" if cause.path else what

