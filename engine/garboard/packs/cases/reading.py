"""Reading the cases of a pack from its folder."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from garboard.documents import Document, read_document, schema_problems
from garboard.errors import DocumentRefused, PackRefused, Problem, did_you_mean
from garboard.packs.cases.base import BaseFiles
from garboard.packs.cases.case import Case, CaseBook, Expected
from garboard.packs.cases.schema import case_schema
from garboard.packs.dispensations import dispensations_at
from garboard.packs.files import HEAD
from garboard.packs.pack import Pack
from garboard.packs.spot import Spot

CASES_FOLDER: Final = "cases"
NO_ITEM: Final = "*"
_YES: Final = ("yes", True)


def read_cases(path: Path, pack: Pack) -> CaseBook:
    """The cases of the pack in a folder; a pack that is a single file has none.

    PackRefused with every problem of every file: a shape that is wrong, a rule the pack has not, a
    name used twice, a base file that is missing or stands outside the folder of cases.
    """
    folder = (path.parent if path.name == HEAD else path) / CASES_FOLDER
    reader = _Reader(pack, BaseFiles(folder))
    if path.is_dir() and folder.is_dir():
        for file in sorted(folder.glob("*.yaml")):
            reader.file(file)
    if any(problem.level == "error" for problem in reader.problems):
        raise PackRefused(reader.problems)
    return CaseBook(tuple(reader.cases), reader.not_possible, reader.explained)


@dataclass
class _Reader:
    pack: Pack
    bases: BaseFiles
    cases: list[Case] = field(default_factory=list)
    not_possible: dict[tuple[str, str], tuple[str, Spot]] = field(default_factory=dict)
    explained: dict[tuple[str, str], tuple[str, Spot]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    names: dict[str, Spot] = field(default_factory=dict)

    def file(self, file: Path) -> None:
        try:
            self.bases.inside(file)
            document = read_document(file, expect="mapping")
        except (DocumentRefused, PackRefused) as refused:
            self.problems += refused.problems
            return
        wrong = schema_problems(document, case_schema())
        self.problems += wrong
        if not wrong:
            self._content(document)

    def _content(self, document: Document) -> None:
        top = Spot(document, (), document.data)
        for spot in top.at("cases").items():
            case = self._case(spot)
            if case is not None:
                self.cases.append(case)
        for part, into in (("not_possible", self.not_possible), ("explained", self.explained)):
            for rule, spot in top.at(part).entries():
                self._known(rule, spot, key=True)
                for name, why in spot.entries():
                    into[rule, name] = (str(why.data), why)

    def _case(self, spot: Spot) -> Case | None:
        name = str(spot.at("case").data)
        before = len(self.problems)
        if name in self.names:
            self.problems.append(Problem("case-twice", spot.at("case").place(), found=name,
                                         hint=f"also at {self.names[name].place()}"))
        self.names.setdefault(name, spot.at("case"))
        rules = tuple(str(each.data) for each in spot.at("rules").items())
        for each in spot.at("rules").items():
            self._known(str(each.data), each)
        base = self._base(spot)
        expected = tuple(self._expected(spot, rules))
        dispensations, wrong = dispensations_at(spot.at("dispensations"))
        self.problems += wrong
        accepted = spot.at("accepted").data
        if accepted is not None and self.pack.header.acceptance is None:
            self.problems.append(Problem("case-no-acceptance", spot.at("accepted").place(),
                                         found=f"{self.pack.name} states no acceptance"))
        if base is None or len(self.problems) > before:
            return None
        quantities = {key: str(each.data) for key, each in spot.at("quantities").entries()}
        return Case(name, rules, base, expected, quantities,
                    spot.at("nothing_else").data in _YES, spot, _text(spot.at("on")),
                    dispensations, _text(spot.at("accepted")))

    def _base(self, spot: Spot) -> Mapping[str, Any] | None:
        if isinstance(spot.at("record").data, dict):
            record: dict[str, Any] = spot.data["record"]  # type: ignore[index]
            return record
        try:
            return self.bases.data(spot.at("base"))
        except (DocumentRefused, PackRefused) as refused:
            self.problems += refused.problems
            return None

    def _expected(self, case: Spot, rules: tuple[str, ...]) -> Iterator[Expected]:
        for spot in case.at("expect").items():
            rule = spot.at("rule")
            name = rules[0] if rule.data is None else str(rule.data)
            if rule.data is None and len(rules) > 1:
                self.problems.append(Problem("case-rule-missing", spot.place(),
                                             found=f"a case about {len(rules)} rules",
                                             expected="rule: one of them"))
            elif name not in rules:
                self.problems.append(Problem("case-rule-unknown", rule.place(), found=name,
                                             expected=", ".join(rules)))
            item, reason = str(spot.at("item").data), spot.at("reason").data
            dispensed = spot.at("dispensed").data
            yield Expected(name, None if item == NO_ITEM else item, str(spot.at("outcome").data),
                           None if reason is None else str(reason), spot,
                           None if dispensed is None else dispensed in _YES)

    def _known(self, rule: str, spot: Spot, *, key: bool = False) -> None:
        known = [each.id for each in self.pack.rules]
        if rule not in known:
            self.problems.append(Problem(
                "case-rule-unknown", spot.place(key=key), found=rule,
                expected=f"a rule of {self.pack.name}", hint=did_you_mean(rule, known)))


def _text(spot: Spot) -> str | None:
    return None if spot.data is None else str(spot.data)
