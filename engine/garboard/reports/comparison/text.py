"""A comparison as text: what fails now, what was repaired, what moved, and the conversion."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from garboard.reports.cautions import CAUTIONS
from garboard.reports.comparison import circuits as parts
from garboard.reports.comparison.circuits import CircuitView, Conductor, Looked
from garboard.reports.comparison.comparing import Comparison
from garboard.reports.comparison.figures import Step, value_words
from garboard.reports.comparison.outcomes import (
    GONE,
    NEWLY_FAILING,
    NEWLY_OPEN,
    NEWLY_PASSED,
    REPAIRED,
    STILL_FAILING,
    STILL_OPEN,
    UNCHANGED,
    Moved,
)
from garboard.reports.counts import plural
from garboard.reports.figures import figures_of
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import Names
from garboard.reports.sheet import Sheet
from garboard.reports.summary import fact_value, pack_name, result_words
from garboard.reports.words import subjects_word
from garboard.trail import FAILED, NOT_ASSESSED, SEVERITIES, Finding
from garboard.values import Truth, Unknown
from garboard.values.units import System

_MOST_STEPS: Final = 8
_MOST_NAMED: Final = 6
_LISTED: Final = ((NEWLY_FAILING, "✗", "failed"), (STILL_FAILING, "✗", "failed"),
                  (REPAIRED, "✓", "passed"), (NEWLY_OPEN, "?", "open"), (GONE, "–", "faint"))
_COUNTED: Final = (STILL_OPEN, NEWLY_PASSED, UNCHANGED)
_ABSENT: Final = "not there"
_TOPICS: Final = (parts.PROTECTION, parts.WITHSTAND, parts.SELECTIVITY, parts.WINDOW)
_SAID: Final = {
    "breaking_capacity": ("breaking capacity", "against a fault current of"),
    "voltage_rating": ("voltage rating", "against a system voltage of up to"),
    "let_through_share": ("heat of a fault as a share of what the conductor withstands", ""),
    "opens_before_those_before_it": ("opens before the devices before it", ""),
    "works_at_all_voltages": ("works at every voltage the bank can have", ""),
}


def comparison_text(compared: Comparison, width: int, colour: bool, *,
                    us_units: bool = False) -> str:
    """The comparison for a terminal."""
    return str(_Text(compared, Sheet(width, colour), "us" if us_units else "metric").written())


class _Text:
    def __init__(self, compared: Comparison, sheet: Sheet, system: System) -> None:
        self._of, self._sheet, self._system = compared, sheet, system
        self._names = Names(compared.after)
        self._names_before = Names(compared.before)

    def written(self) -> Sheet:
        self._head()
        if self._of.shown:
            for word, mark, style in _LISTED:
                self._findings(word, mark, style)
            self._figures()
            self._circuits()
        self._sheet.heading("CAUTIONS", "faint")
        for each in CAUTIONS:
            self._sheet.bullet("•", each)
        return self._sheet

    def _head(self) -> None:
        sheet, before, after = self._sheet, self._of.before, self._of.after
        sheet.title("TWO ASSESSMENTS COMPARED", f"garboard {after.about['garboard']}")
        for label, trail in (("Before", before), ("After", after)):
            name = trail.fact("vessel.name")
            vessel = harmless_name(name["value"]) if name is not None else "vessel not named"
            packs = ", ".join(map(pack_name, trail.packs))
            sheet.field(label, f"{vessel}, assessed for {trail.date} with {packs}: "
                               f"{result_words(trail)}")
        if self._of.incomparable:
            sheet.heading("NOT COMPARABLE", "failed")
            for each in self._of.incomparable:
                sheet.bullet("!", each)
            sheet.paragraph("What follows is shown because it was asked for; read it with that "
                            "in mind." if self._of.shown else
                            "Nothing was compared. Assess both records with the same packs, or "
                            "see --anyway.")
        for each in self._of.remarks:
            sheet.bullet("!", each)
        if self._of.shown:
            sheet.heading("WHAT BECAME OF THE FINDINGS")
            counts = self._of.counts()
            for word, mark, style in _LISTED:
                sheet.bullet(mark, f"{counts[word]} {word}{self._severities(word)}",
                             mark_style=style)
            sheet.bullet("–", ", ".join(f"{counts[word]} {word}" for word in _COUNTED),
                         mark_style="faint")

    def _severities(self, word: str) -> str:
        counts = {severity: sum(each.severity == severity for each in self._of.of(word))
                  for severity in SEVERITIES}
        shown = ", ".join(f"{count} {severity}" for severity, count in counts.items() if count)
        return f": {shown}" if shown else ""

    # findings ------------------------------------------------------------------------------------
    def _findings(self, word: str, mark: str, style: str) -> None:
        by_rule: dict[tuple[str, str], list[Moved]] = {}
        for each in self._of.of(word):
            finding = each.after or each.before
            assert finding is not None
            by_rule.setdefault((finding["pack"], finding["rule"]), []).append(each)
        if not by_rule:
            return
        self._sheet.heading(f"{word.upper()}: {plural(len(self._of.of(word)), 'finding')}", style)
        for group in by_rule.values():
            finding = group[0].after or group[0].before
            assert finding is not None
            trail = self._of.after if group[0].after is not None else self._of.before
            rule = trail.rule_of(finding)
            self._sheet.bullet(mark, f"{group[0].severity.upper()} {harmless(rule['title'])}",
                               style=group[0].severity, mark_style=style)
            for each in group:
                self._sheet.bullet("•", self._moved(each), 2)

    def _moved(self, each: Moved) -> str:
        trail, finding, names = ((self._of.after, each.after, self._names)
                                 if each.after is not None else
                                 (self._of.before, each.before, self._names_before))
        assert finding is not None
        text = names.item(finding)
        before = each.outcomes[0]
        if each.word == GONE:
            return f"{text} (before: {before}; after: {each.outcomes[1] or _ABSENT})"
        if each.word in (NEWLY_FAILING, NEWLY_OPEN):
            text += self._before(finding, before)
        if finding["outcome"] == FAILED:
            shown = [figure.words for figure in figures_of(trail, finding, self._system)]
            text += f": {'; '.join(shown)}" if shown else ""
        if finding["outcome"] == NOT_ASSESSED:
            text += f": {harmless(finding['reason'])}"
        return text

    def _before(self, finding: Finding, outcome: str | None) -> str:
        """What was found before; nothing where the pack did not apply, which is said once."""
        if any(each["pack"] == finding["pack"] and each["applies"] is not True
               for each in self._of.before.packs):
            return ""
        return f" (before: {outcome or _ABSENT})"

    # figures -------------------------------------------------------------------------------------
    def _figures(self) -> None:
        if not self._of.figures:
            return
        self._sheet.heading("FIGURES THAT MOVED MOST")
        self._sheet.paragraph("Computed by this program from both records, whatever the packs "
                              "asked for.")
        by_quantity: dict[str, list[Step]] = {}
        for each in self._of.figures:
            by_quantity.setdefault(each.quantity, []).append(each)
        for steps in list(by_quantity.values())[:_MOST_STEPS]:
            subject, _, name = steps[0].quantity.partition(".")
            self._sheet.bullet("•", f"{harmless_name(name).replace('_', ' ')} of "
                                    f"{subjects_word(subject)}")
            for each in steps[:_MOST_NAMED]:
                self._sheet.bullet("-", f"{self._names.thing(each.item)}: "
                                        f"{each.words(self._system)}", 2)
            if len(steps) > _MOST_NAMED:
                self._sheet.paragraph(f"and {len(steps) - _MOST_NAMED} more; --json gives each", 4)
        more = len(by_quantity) - _MOST_STEPS
        if more > 0:
            self._sheet.paragraph(f"{plural(more, 'kind')} of figures moved less; --json gives "
                                  "each")

    # circuits ------------------------------------------------------------------------------------
    def _circuits(self) -> None:
        found = self._of.circuits
        self._sheet.heading("MUST THE CABLES OF THE LOADS CHANGE?")
        if not found:
            self._sheet.paragraph("Neither record has a traced run to a load; it cannot be said.")
            return
        same = sum(each.state == parts.UNCHANGED for each in found)
        self._sheet.paragraph(
            f"Load circuits whose conductors are unchanged as recorded: {same} of {len(found)}. "
            "What a conductor may carry does not change with the bank. What a fault puts through "
            "it, whether its device can still break that, and whether the load bears the voltage "
            "may: that was looked at again, and stands apart.")
        for topic in _TOPICS:
            self._tally(topic, found)
        for each in found:
            self._circuit(each)

    def _tally(self, topic: str, found: Sequence[CircuitView]) -> None:
        answers = [each.answer(topic) for each in found]
        self._sheet.field(topic, f"holds for {answers.count(True)}, does not for "
                                 f"{answers.count(False)}, is not known for "
                                 f"{answers.count(None)}", 2, 17)

    def _circuit(self, each: CircuitView) -> None:
        self._sheet.blank()
        self._sheet.bullet("•", f"{harmless_name(each.run)} to {self._names.thing(each.load)}: "
                                f"conductors {each.state}", style="strong")
        if each.load_facts:
            self._sheet.field("load", f"changed: {self._changed(each.load_facts)}", 2, 17)
        for conductor in each.conductors:
            self._sheet.field("conductor", self._conductor(conductor), 2, 17)
        for topic in _TOPICS:
            looked = each.of(topic)
            for one in looked:
                self._sheet.field(topic, self._looked(one), 2, 17)
            if not looked and each.state != parts.REMOVED:
                self._sheet.field(topic, "nothing in this circuit to look at", 2, 17)

    def _conductor(self, each: Conductor) -> str:
        text = f"{harmless_name(each.id)} {each.state}"
        if each.facts:
            text += f": {self._changed(each.facts)}"
        if each.not_recorded:
            text += f"; not recorded in both: {', '.join(each.not_recorded)}"
        before, after = each.ampacity
        shown = [value_words(known, self._system) for known in (before, after)]
        if each.state == parts.UNCHANGED and shown[0] == shown[1]:
            return f"{text}, and so is its ampacity: {shown[1]}"
        return f"{text}; ampacity {shown[0]} before, {shown[1]} after"

    def _changed(self, facts: Sequence[tuple[str, object, object]]) -> str:
        return ", ".join(
            f"{harmless_name(name).replace('_', ' ')} from {self._fact(before)} to "
            f"{self._fact(after)}" for name, before, after in facts)

    def _fact(self, fact: object) -> str:
        if not isinstance(fact, dict):
            return "not recorded"
        value = fact["value"]
        if isinstance(value, dict) and "unknown" in value:
            return "not known"
        return harmless(fact_value(fact, self._system))

    def _looked(self, each: Looked) -> str:
        name, against = _SAID[each.check.figure]
        left, right = each.figures
        text = f"{harmless_name(each.item)} {name}"
        if each.check.relation and left[1] is not None and not isinstance(left[1].value, Unknown):
            text += f" {value_words(left[1], self._system)}"
        if against:
            text += f" {against} {value_words(right[1], self._system)}"
            if right[0] is not None and not isinstance(right[0].value, Unknown):
                text += f" ({value_words(right[0], self._system)} before)"
        return f"{text}: {_truth(each.after)} (before: {_truth(each.before, brief=True)})"



def _truth(truth: Truth | None, *, brief: bool = False) -> str:
    if isinstance(truth, Unknown):
        reasons = dict.fromkeys(
            f"{cause.reason}{f' ({harmless_name(cause.path)})' if cause.path else ''}"
            for cause in truth.causes)
        return "not known" if brief else f"not known, {'; '.join(list(reasons)[:2])}"
    if truth is None:
        return _ABSENT
    return "holds" if truth else "does not hold"
