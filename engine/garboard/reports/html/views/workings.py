"""How every finding came about: its statements, and each figure down to recorded facts.

A figure is worked out in full where it is first needed and has a number; where it is needed again,
its number is given.
"""

from __future__ import annotations

from collections.abc import Iterable
from string import ascii_lowercase
from typing import Any, Final

from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.html.book import Book
from garboard.reports.html.views.facts import Facts, named
from garboard.reports.html.views.things import Things
from garboard.reports.names import limits_in
from garboard.reports.summary import pack_name
from garboard.reports.words import RELATIONS, TO_DO
from garboard.trail import SEVERITIES, Finding, Statement, value_from_data
from garboard.values import Cause, Unknown
from garboard.values.units import DIMENSIONS, format_value

#: Figures nested deeper than this are given by their number and worked out at the end.
DEEPEST: Final = 10
_NETWORK: Final = "network"
_IDENTITY: Final = "id"


class Workings:
    """The workings of one trail."""

    def __init__(self, book: Book, things: Things, methods: dict[str, int]) -> None:
        self._book, self._things, self._methods = book, things, methods
        self._facts = Facts(book)
        self._number: dict[str, int] = {}
        self._values: dict[str, str] = {}
        self._deeper: list[str] = []

    def rules(self) -> list[dict[str, Any]]:
        """The rules with operands, worst severity first, each with its findings."""
        trail = self._book.trail
        findings: dict[tuple[str, str], list[Finding]] = {}
        for finding in trail.findings:
            if finding["operands"]:
                findings.setdefault((finding["pack"], finding["rule"]), []).append(finding)
        groups = sorted(findings.values(), key=lambda each: SEVERITIES.index(
            self._book.severity_of(each[0])))
        return [self._rule(each) for each in groups]

    def rest(self) -> list[dict[str, Any]]:
        """Figures that lie too deep to be nested; to be asked for after ``rules``."""
        return [self._figure(key, 0, "") for key in self._deeper]  # which grows meanwhile

    def _rule(self, findings: list[Finding]) -> dict[str, Any]:
        trail = self._book.trail
        rule, pack = trail.rule_of(findings[0]), trail.pack_of(findings[0])
        limits = pack["resolved"]["limits"]
        named = dict.fromkeys(name for finding in findings for operand in trail.operands(finding)
                              for name in limits_in(operand) if name in limits)
        return {
            "title": self._book.title_of(rule, pack), "severity": rule["severity"],
            "id": harmless_name(rule["id"]), "pack": pack_name(pack),
            "applies_when": rule.get("applies_when"), "must_hold": rule["must_hold"],
            "limits": [(name, limits[name]) for name in named],
            "asked": (asked := _Asked()).spelled,
            "findings": [self._finding(each, asked) for each in findings]}

    def _finding(self, finding: Finding, asked: _Asked) -> dict[str, Any]:
        trail = self._book.trail
        keys = dict.fromkeys(key for operand in trail.operands(finding) for key in operand.of)
        return {
            "number": self._book.number_of[finding["id"]], "item": self._book.names.item(finding),
            "letter": self._things.letters.get(finding["item"] or "", ""),
            "outcome": finding["outcome"],
            "statements": [self._statement(each, asked) for each in trail.statements(finding)],
            "kind": "", **self._of(keys, 0, finding["item"] or "")}

    def _statement(self, statement: Statement, asked: _Asked) -> dict[str, Any]:
        left, right = statement.left, statement.right
        compared = right is not None and statement.relation is not None
        relation = RELATIONS[statement.relation] if compared and statement.relation else ""
        return {
            "letter": asked.letter(left.part, left.text, relation,
                                   right.text if right is not None else ""),
            "left_value": self._value(left.value, left.dimension), "relation": relation,
            "right_value": self._value(right.value, right.dimension) if right is not None else "",
            "holds": {True: "holds", False: "does not hold", None: "not known"}[statement.holds],
            "decides": statement.decides}

    # figures -------------------------------------------------------------------------------------
    def _of(self, keys: Iterable[str], depth: int, of: str) -> dict[str, Any]:
        """What stands behind some keys; ids go without saying.

        ``given`` are facts and figures that are worked out elsewhere, ``missing`` what is not
        recorded, ``figures`` what is worked out here. Things of the item ``of`` are named without
        it.
        """
        entries = [self._entry(key, depth, of) for key in keys
                   if key.rpartition(".")[2] != _IDENTITY]
        return {"given": [each for each in entries if each["kind"] not in ("figure", "missing")],
                "missing": [each["name"] for each in entries if each["kind"] == "missing"],
                "figures": [each for each in entries if each["kind"] == "figure"]}

    def _entry(self, key: str, depth: int, of: str) -> dict[str, Any]:
        derivation = self._book.trail.derivation(key)
        if derivation is None:
            if key == _NETWORK:
                return {"kind": "traced", "name": "the network traced from the runs"}
            return self._facts.entry(key, of)
        if key in self._number or depth > DEEPEST:
            if key not in self._number:
                self._number[key] = len(self._number) + 1
                self._deeper.append(key)
            return {"kind": "again", "number": self._number[key], **self._named(key, of)}
        self._number[key] = len(self._number) + 1
        return self._figure(key, depth, of)

    def _figure(self, key: str, depth: int, of: str) -> dict[str, Any]:
        derivation = self._book.trail.assessment["derivations"][key]
        inputs = self._of(dict.fromkeys(each for given in derivation["inputs"]
                                        for each in given["of"]), depth + 1, _thing(key))
        quantity = self._book.trail.assessment["quantities"].get(derivation["quantity"])
        return {"kind": "figure", "number": self._number[key], **self._named(key, of), **inputs,
                "method": harmless(quantity["method"]) if quantity is not None else "",
                "method_number": self._methods.get(derivation["quantity"]),
                "table_rows": derivation["table_rows"], "remarks": derivation["remarks"]}

    def _named(self, key: str, of: str) -> dict[str, str]:
        if key not in self._values:
            derivation = self._book.trail.assessment["derivations"][key]
            kind = derivation["kind"]
            value = value_from_data(derivation["value"], kind)
            self._values[key] = "" if kind == "opaque" else self._value(
                value, derivation["dimension"])
        return {"name": named(self._book.names, key, of), "value": self._values[key]}

    def _value(self, value: object, dimension: str | None) -> str:
        if isinstance(value, Unknown):
            return f"not known ({'; '.join(dict.fromkeys(map(_cause, value.causes)))})"
        known = dimension if dimension in DIMENSIONS else None
        text = harmless(format_value(value, known, self._book.system))
        nominal = getattr(value, "nominal", None)
        if nominal is not None:
            text += f" (nominal {format_value(nominal, known, self._book.system)})"
        return text


class _Asked:
    """The statements of a rule, each spelled once and known by a letter in its workings."""

    def __init__(self) -> None:
        self.spelled: list[dict[str, str]] = []
        self._letters: dict[tuple[str, ...], str] = {}

    def letter(self, part: str, left: str, relation: str, right: str) -> str:
        """The letter of a statement: a to z, then a1 to z1, and so on."""
        key = (part, left, relation, right)
        if key not in self._letters:
            round_, number = divmod(len(self._letters), len(ascii_lowercase))
            letter = f"{ascii_lowercase[number]}{round_ or ''}"
            self._letters[key] = letter
            self.spelled.append({"letter": letter, "part": part, "left": left,
                                 "relation": relation, "right": right})
        return self._letters[key]


def _thing(key: str) -> str:
    return key.partition(".")[0]


def _cause(cause: Cause) -> str:
    return TO_DO.get(cause.reason, harmless(cause.reason))
