"""Cases: what is read, what is refused at which spot, what differs, what is shown."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from authoring.small_pack import CASES, RECORD, bench, planted
from garboard.authoring import covered
from garboard.documents import shipped_folder
from garboard.errors import PackRefused, Problem
from garboard.packs.cases import KINDS, case_schema

#: Lines 3 to 7 of the file of cases hold the case.
CASE = "  - case: strong\n    rules: [strong-fuse]\n    base: base/small.yaml\n"
ACCEPTANCE = """\
acceptance:
  must_have_passed: [strong-fuse]
  declined_when: [{says: A fuse is weak, outcome: failed, rules: [strong-fuse]}]
"""
SECOND = "  - case: other\n    rules: [strong-fuse, short-cable]\n    base: base/small.yaml\n"


def spots(problems: tuple[Problem, ...]) -> list[tuple[str, int | None, int | None]]:
    return [(each.code, each.place.line, each.place.column) for each in problems]


EXCEPTION = ("    dispensations: [{rule: strong-fuse, item: f1, reason: it is, approved_by: us, "
             "from: 2026-03-01, until: 2026-03-31}]\n")

REFUSED = [
    ("no acceptance", CASES + "    accepted: declined\n", [("case-no-acceptance", 8, 15)]),
    ("no such acceptance", CASES + "    accepted: maybe\n", [("schema-choice", 8, 15)]),
    ("a day that is none", CASES + "    on: 18 April\n", [("schema-pattern", 8, 9)]),
    ("days reversed", CASES + EXCEPTION.replace("03-31", "02-28"),
     [("dispensation-days-reversed", 8, 108)]),
    ("an exception without a reason", CASES + EXCEPTION.replace("reason: it is, ", ""),
     [("schema-required", 8, 21)]),
    ("no format", CASES.replace("format: case/1\n", ""), [("schema-required", 1, 1)]),
    ("unknown key", CASES.replace("nothing_else", "nothing-else"), [("schema-unknown-key", 7, 5)]),
    ("both records", CASES + "    record: {}\n", [("schema-other", 3, 5)]),
    ("no outcome such", CASES.replace("passed", "safe"), [("schema-choice", 6, 34)]),
    ("same name", CASES + CASE, [("case-twice", 8, 11)]),
    ("no such rule", CASES.replace("[strong-fuse]", "[strong-fusee]"),
     [("case-rule-unknown", 4, 13)]),
    ("a rule that is not said", CASES + SECOND + "    expect: [{item: w1, outcome: passed}]\n",
     [("case-rule-missing", 11, 14)]),
    ("a rule the case is not about",
     CASES.replace("{item: f1", "{rule: short-cable, item: f1"), [("case-rule-unknown", 6, 21)]),
    ("no such base", CASES.replace("small.yaml", "smal.yaml"), [("case-base-missing", 5, 11)]),
    ("climbing", CASES.replace("base/small.yaml", "base/../../pack.yaml"),
     [("pack-path-climbs", 5, 11)]),
    ("absolute", CASES.replace("base/small.yaml", "/etc/hosts"), [("pack-path-climbs", 5, 11)]),
    ("backslashes", CASES.replace("base/small.yaml", "..\\pack.yaml"),
     [("pack-path-climbs", 5, 11)]),
    ("unknown rule that cannot", CASES + "not_possible: {weak-fuse: {failed: it is}}\n",
     [("case-rule-unknown", 8, 16)]),
    ("unknown kind", CASES + "not_possible: {strong-fuse: {lost: it is}}\n",
     [("schema-unknown-key", 8, 30)]),
]


@pytest.mark.parametrize(("cases", "expected"), [each[1:] for each in REFUSED],
                         ids=[each[0] for each in REFUSED])
def test_refused(tmp_path: Path, cases: str, expected: list[tuple[str, int, int]]) -> None:
    with pytest.raises(PackRefused) as refused:
        bench(planted(tmp_path, cases))
    assert spots(refused.value.problems) == expected


def test_a_link_out_of_the_folder_is_refused(tmp_path: Path) -> None:
    pack = planted(tmp_path)
    (tmp_path / "elsewhere.yaml").write_text(RECORD)
    (pack / "cases" / "base" / "small.yaml").unlink()
    (pack / "cases" / "base" / "small.yaml").symlink_to(tmp_path / "elsewhere.yaml")
    with pytest.raises(PackRefused) as refused:
        bench(pack)
    assert spots(refused.value.problems) == [("pack-path-climbs", 5, 11)]


LOW = "    set: {f1.rating: 5 A}\n"
DIFFERENT = [
    ("not in force any more", CASES.replace("passed", "failed, dispensed: yes") + LOW + EXCEPTION
     + "    on: 2026-04-01\n", [("case-finding-differs", 6, 53)]),
    ("in force", CASES.replace("passed", "failed, dispensed: no") + LOW + EXCEPTION,
     [("case-finding-differs", 6, 53)]),
    ("outcome", CASES.replace("passed", "failed"), [("case-finding-differs", 6, 34)]),
    ("reason", CASES.replace("passed", "not applicable, reason: none aboard")
     + "    set: {f1.rating: 5 A}\n", [("case-finding-differs", 6, 34)]),
    ("no such finding", CASES.replace("item: f1", "item: f2"),
     [("case-finding-missing", 6, 21), ("case-finding-more", 7, 19)]),
    ("one more", CASES.replace("strong-fuse]", "strong-fuse, short-cable]")
     .replace("{item: f1", "{rule: strong-fuse, item: f1"), [("case-finding-more", 7, 19)]),
    ("a figure", CASES + "    quantities: {pack.fault_current: 13 kA within 1 %}\n",
     [("case-figure-differs", 8, 38)]),
    ("a figure that is none", CASES + "    quantities: {pack.fault_current: 13 kA}\n",
     [("case-figure-unreadable", 8, 38)]),
    ("a wrong unit", CASES + "    quantities: {pack.fault_current: 13 V within 1 V}\n",
     [("case-figure-unreadable", 8, 38)]),
    ("no such figure", CASES + "    quantities: {pack.fault_curent: 13 kA within 1 %}\n",
     [("case-figure-unknown", 8, 18)]),
    ("no such thing", CASES + "    quantities: {pick.fault_current: 13 kA within 1 %}\n",
     [("case-figure-unknown", 8, 18)]),
    ("set nowhere", CASES + "    set: {f2.rating: 5 A}\n", [("case-path-unknown", 8, 11)]),
    ("remove nothing", CASES + "    remove: [f1.breaks]\n", [("case-path-unknown", 8, 14)]),
    ("add to no list", CASES + "    add: {f1.rating: [5 A]}\n", [("case-path-unknown", 8, 11)]),
    ("not a path", CASES + "    set: {f1..rating: 5 A}\n", [("case-path-unknown", 8, 11)]),
    ("a record that is none", CASES + "    set: {f1.rating: 5 V}\n",
     [("case-record-refused", 3, 11)]),
]


@pytest.mark.parametrize(("cases", "expected"), [each[1:] for each in DIFFERENT],
                         ids=[each[0] for each in DIFFERENT])
def test_differs(tmp_path: Path, cases: str, expected: list[tuple[str, int, int]]) -> None:
    [proof] = bench(planted(tmp_path, cases)).proofs()
    assert spots(proof.differences) == expected
    assert not proof.holds


HOLD = [
    "    quantities: {pack.fault_current: 14 kA within 0.1 %}\n",
    "    quantities: {pack.fault_current: 14.1 kA within 0.1 kA}\n",
    "    quantities: {f1.rating: 125 A within 0 A}\n",
    "    quantities: {f1.kind: fuse, lead.carries: positive}\n",
    "    quantities: {f1.breaking_capacity: not known, f1.on_path_of_a_battery: yes}\n",
    "    set: {pack.internal_resistance: {value: 2 mΩ, plus_minus: 10 %}}\n"
    "    quantities: {pack.fault_current: 12.727 kA .. 15.556 kA within 0.01 %}\n",
    "    set: {f1.breaks: [{current: 5 kA}], 'f1.breaks[0].voltage': 24 V DC}\n"
    "    quantities: {f1.voltage_rating: 24 V within 0 V}\n",
    "    set: {vessel.fuel: gasoline}\n",
    "    remove: [w1, buses]\n    set: {lead.to: pump}\n    add: {loads: [{id: pump}]}\n",
]


@pytest.mark.parametrize("more", HOLD)
def test_holds(tmp_path: Path, more: str) -> None:
    [proof] = bench(planted(tmp_path, CASES + more)).proofs()
    assert spots(proof.differences) == []
    assert [seen.outcome for seen in proof.shown] == ["passed"]


@pytest.mark.parametrize(("day", "said"), [
    ("2026-02-28", "no"), ("2026-03-01", "yes"), ("2026-03-31", "yes"), ("2026-04-01", "no")])
def test_an_exception_holds_on_its_days(tmp_path: Path, day: str, said: str) -> None:
    cases = CASES.replace("passed", f"failed, dispensed: {said}") + LOW + EXCEPTION
    [proof] = bench(planted(tmp_path, f"{cases}    on: {day}\n")).proofs()
    assert spots(proof.differences) == []
    assert [seen.outcome for seen in proof.shown] == ["failed"]


@pytest.mark.parametrize(("word", "expected"), [
    ("declined", []), ("referred", [("case-acceptance-differs", 9, 15)])])
def test_the_acceptance_of_a_whole_record(tmp_path: Path, word: str,
                                          expected: list[tuple[str, int, int]]) -> None:
    pack = planted(tmp_path, CASES.replace("passed", "failed") + LOW + f"    accepted: {word}\n")
    (pack / "pack.yaml").write_text((pack / "pack.yaml").read_text() + ACCEPTANCE)
    [proof] = bench(pack).proofs()
    assert spots(proof.differences) == expected


def test_a_change_leaves_the_base_alone(tmp_path: Path) -> None:
    weak = CASE.replace("strong\n", "weak\n") + "    set: {f1.rating: 5 A}\n" \
        "    expect: [{item: f1, outcome: failed}]\n"
    again = CASE.replace("strong\n", "again\n") + "    expect: [{item: f1, outcome: passed}]\n"
    proofs = list(bench(planted(tmp_path, CASES + weak + again)).proofs())
    assert [proof.holds for proof in proofs] == [True, True, True]


def one(name: str, outcome: str, change: str = "", item: str = "f1") -> str:
    return (CASE.replace("strong\n", f"{name}\n") + f"{change}"
            f"    expect: [{{item: {item}, outcome: {outcome}}}]\n")


SHOWS = [
    ("", "passed", {"passed"}),
    ("    set: {f1.rating: 100 A}\n", "passed", {"passed", "at the limit"}),
    ("    set: {f1.rating: {value: 110 A, plus_minus: 10 A}}\n", "passed",
     {"passed", "at the limit"}),
    ("    set: {f1.rating: 99.999999 A}\n", "failed", {"failed"}),
    ("    set: {f1.rating: {value: 105 A, plus_minus: 10 A}}\n", "not assessed", set()),
    ("    remove: [f1.rating]\n", "not assessed", {"fact missing"}),
    ("    set: {f1.rating: {not_determinable: gone}}\n", "not assessed", {"fact missing"}),
]


@pytest.mark.parametrize(("change", "outcome", "kinds"), SHOWS)
def test_kinds(tmp_path: Path, change: str, outcome: str, kinds: set[str]) -> None:
    cases = "format: case/1\ncases:\n" + one("it", outcome, change)
    [proof] = bench(planted(tmp_path, cases)).proofs()
    assert {kind for seen in proof.shown for kind in seen.kinds} == kinds


def test_coverage_counts_and_contradictions(tmp_path: Path) -> None:
    cases = ("format: case/1\ncases:\n" + one("it", "passed") + one("weak", "failed",
             "    set: {f1.rating: 5 A}\n")
             + "not_possible:\n  strong-fuse: {failed: it never does, at the limit: no idea}\n")
    desk = bench(planted(tmp_path, cases))
    table, contradictions = covered(desk.rules, desk.book, desk.proofs())
    assert {each.rule: each.missing for each in table} == {
        "strong-fuse": ("fact missing", "not applicable"), "short-cable": KINDS}
    assert spots(contradictions) == [("case-kind-possible", 13, 25)]


def test_a_finding_that_is_not_expected_shows_nothing(tmp_path: Path) -> None:
    cases = "format: case/1\ncases:\n" + CASE + "    expect: []\n"
    desk = bench(planted(tmp_path, cases))
    table, _ = covered(desk.rules, desk.book, desk.proofs())
    assert [sum(each.shown.values()) for each in table] == [0, 0]


def test_the_shipped_schema_is_this_one_and_every_key_is_described() -> None:
    schema = case_schema()
    text = (shipped_folder("schemas") / "case-1.json").read_text("utf-8")
    assert text == json.dumps(schema, indent=2, ensure_ascii=False) + "\n"
    described = [each for part in (schema, *schema["$defs"].values())
                 for each in part.get("properties", {}).values()]
    assert len(described) >= 20
    assert [each for each in described if len(each.get("description", "")) < 10] == []
