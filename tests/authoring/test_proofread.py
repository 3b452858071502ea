"""Proofreading: planted rules that look wrong are found, those that do not are left alone."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from authoring.small_pack import ABOUT_A_RULE, CASES, HEAD, bench, planted, workshop
from expressions.drawn import AMOUNTS, INFOS, VOCABULARY, Draw, thing
from garboard.authoring import Proofread, proofread
from garboard.authoring.proofreading.possible import Formula, possible
from garboard.authoring.proofreading.scope import Scope
from garboard.cli.main import run
from garboard.expressions import (
    FAILED,
    PASSED,
    ExpressionRefused,
    RuleSource,
    compile_rules,
    read_expression,
)
from garboard.packs.cases import WARNINGS

LIMITS = """\
limits:
  zero: {value: 0 m, citation: {basis: house}}
  one: {value: 1 m, citation: {basis: house}}
  two: {value: 2 m, citation: {basis: house}}
  ten: {value: 10 A, citation: {basis: house}}
  cold: {value: -20 °C, citation: {basis: house}}
  colder: {value: -273.15 °C, citation: {basis: house}}
  half: {value: 50 %, citation: {basis: house}}
  lithium: {value: [LFP, NMC], citation: {basis: house}}
"""


def rules(*written: str) -> str:
    """Rules of the form ``about | applies_when | must_hold``, called a, b and so on.

    A severity other than caution may follow behind another bar.
    """
    text = "rules:\n"
    for name, each in zip("abcd", written, strict=False):
        about, when, must, *severity = (part.strip() for part in each.split("|"))
        text += f"  - id: {name}\n    title: One of them\n    about: {about}\n"
        text += f"    applies_when: {when}\n" if when else ""
        text += f"    must_hold: {must}\n"
        text += ABOUT_A_RULE.replace("caution", severity[0] if severity else "caution")
    return text


def read(folder: Path, text: str, cases: str = "") -> Proofread:
    pack = folder / "planted"
    (pack / "cases").mkdir(parents=True)
    (pack / "pack.yaml").write_text(HEAD + LIMITS + text)
    if cases:
        (pack / "cases" / "one.yaml").write_text(cases)
    desk = bench(pack)
    return proofread(desk.checked, desk.book, workshop().vocabulary)


def found(result: Proofread) -> list[tuple[str, str]]:
    """Rule and code of every warning of the proofreader's own."""
    return [(each.found.split(":")[0], each.code) for each in result.warnings
            if each.code in WARNINGS]


ALONE = [
    ("conductor || conductor.length >= zero", "rule-cannot-fail"),
    ("conductor || conductor.length > zero", "rule-cannot-fail"),
    ("conductor || conductor.length < zero", "rule-cannot-pass"),
    ("conductor || conductor.length * half >= zero", "rule-cannot-fail"),
    ("conductor || conductor.length > one and conductor.length < one", "rule-cannot-pass"),
    ("conductor || conductor.length > two and conductor.length < one", "rule-cannot-pass"),
    ("conductor || one > conductor.length > two", "rule-cannot-pass"),
    ("conductor || conductor.length > one or conductor.length < two", "rule-cannot-fail"),
    ("conductor || not conductor.length > one or conductor.length > one", "rule-cannot-fail"),
    ("conductor | conductor.length < one | conductor.length < two", "rule-cannot-fail"),
    ("conductor | conductor.length > two | conductor.length < one", "rule-cannot-pass"),
    ("conductor | conductor.length < zero | conductor.length < one", "rule-never-applies"),
    ("device | device.kind == \"fuse\" and device.kind == \"breaker\" | device.rating > ten",
     "rule-never-applies"),
    ("device || device.kind in (\"fuse\", \"breaker\")", "rule-cannot-fail"),
    ("device || device.kind == \"fuse\" or device.kind == \"breaker\"", "rule-cannot-fail"),
    ("device || device.rating >= device.rating", "rule-cannot-fail"),
    ("device || device.rating > device.breaking_capacity > device.rating", "rule-cannot-pass"),
    ("device || device.trip_free or not device.trip_free", "rule-cannot-fail"),
    ("device || device.trip_free and not device.trip_free", "rule-cannot-pass"),
    ("device || max(device.rating, ten) >= ten", "rule-cannot-fail"),
    ("device || min(device.rating, ten) > ten", "rule-cannot-pass"),
    ("device || abs(device.rating - ten) >= ten - ten", "rule-cannot-fail"),
    ("device || count(device.banks) >= 0", "rule-cannot-fail"),
    ("device || count(device.banks) > 0 and count(device.banks) < 1", "rule-cannot-pass"),
    ("device || (device.rating if device.trip_free else ten) >= ten - ten", "rule-cannot-fail"),
    ("bank || all(b.capacity >= b.capacity for b in bank.batteries)", "rule-cannot-fail"),
    ("bank || any(b.is_lithium and not b.is_lithium for b in bank.batteries)",
     "rule-cannot-pass"),
    ("bank || all(b.is_lithium for b in bank.batteries) or "
     "not all(x.is_lithium for x in bank.batteries)", "rule-cannot-fail"),
    ("battery || battery.chemistry in lithium and battery.chemistry == \"AGM\"",
     "rule-cannot-pass"),
    ("battery || battery.in_service_since > \"2026-01-01\" "
     "and battery.in_service_since < \"2026-01-02\"", "rule-cannot-pass"),
    ("management_system || management_system.inhibits_charge_below >= colder", "rule-cannot-fail"),
    # nothing is wrong with these
    ("management_system || management_system.inhibits_charge_below > cold", None),
    ("conductor || conductor.length <= one", None),
    ("conductor || conductor.length >= one and conductor.length <= one", None),
    ("conductor || conductor.ampacity * half >= conductor.protection_rating", None),
    ("device || device.rating >= device.breaking_capacity", None),
    ("device || count(device.banks) > 0 and count(device.banks) < 2", None),
    ("battery || battery.in_service_since > \"2026-01-01\" "
     "and battery.in_service_since < \"2026-01-03\"", None),
    ("bank || all(b.is_lithium for b in bank.batteries)", None),
    ("battery || battery.chemistry not in lithium", None),
]


@pytest.mark.parametrize(("rule", "code"), ALONE)
def test_a_rule_by_itself(tmp_path: Path, rule: str, code: str | None) -> None:
    assert found(read(tmp_path, rules(rule))) == ([] if code is None else [("a", code)])


TOGETHER = [
    (("conductor || conductor.length < two", "conductor || conductor.length < one"),
     [("a", "rule-covered")]),
    (("conductor || conductor.length < one", "conductor || conductor.length < one"),
     [("b", "rule-covered")]),
    (("conductor || conductor.length <= one", "conductor || conductor.length < one"),
     [("a", "rule-covered")]),
    (("conductor || conductor.length > two", "conductor || conductor.length < one"),
     [("b", "rule-contrary")]),
    (("conductor || conductor.length <= one", "conductor || conductor.length > one"),
     [("b", "rule-contrary")]),
    (("device || device.rating >= device.breaking_capacity",
      "device || device.breaking_capacity > device.rating"), [("b", "rule-contrary")]),
    (("device || device.trip_free and device.manual_reset", "device || device.trip_free"),
     [("b", "rule-covered")]),
    (("device || device.trip_free", "device || not device.trip_free"), [("b", "rule-contrary")]),
    (("device | device.kind == \"fuse\" | device.rating > ten", "device || device.rating > ten"),
     [("a", "rule-covered")]),
    # the weaker rule is the graver one, and stays
    (("conductor || conductor.length < two | danger", "conductor || conductor.length < one"), []),
    # other items, or another thing
    (("device | device.kind == \"fuse\" | device.trip_free",
      "device | device.kind == \"breaker\" | not device.trip_free"), []),
    (("conductor || conductor.length <= one", "conductor || conductor.length >= one"), []),
    (("conductor || conductor.length <= one", "run || run.length > two"), []),
    (("device || device.trip_free", "device || device.manual_reset"), []),
]


@pytest.mark.parametrize(("pair", "expected"), TOGETHER)
def test_two_rules(tmp_path: Path, pair: tuple[str, str],
                   expected: list[tuple[str, str]]) -> None:
    assert found(read(tmp_path, rules(*pair))) == expected


CANNOT = rules("conductor || conductor.length >= zero")


def test_the_spot_is_that_of_the_requirement_or_condition(tmp_path: Path) -> None:
    [warning] = [each for each in read(tmp_path, CANNOT).warnings if each.code in WARNINGS]
    assert (warning.place.line, warning.place.column, warning.level) == (18, 16, "warning")


def test_a_warning_that_is_explained_is_told_apart(tmp_path: Path) -> None:
    cases = CASES.replace("strong-fuse", "a").replace("base: base/small.yaml", "record: {}")
    result = read(tmp_path, CANNOT, cases + "explained: {a: {rule-cannot-fail: a lesson}}\n")
    assert found(result) == []
    [(warning, why)] = result.explained
    assert (warning.code, why) == ("rule-cannot-fail", "a lesson")


def test_an_explanation_in_vain_is_a_warning(tmp_path: Path) -> None:
    cases = CASES.replace("strong-fuse", "a").replace("base: base/small.yaml", "record: {}")
    result = read(tmp_path, CANNOT, cases + "explained: {a: {rule-covered: a lesson}}\n")
    assert found(result) == [("a", "rule-cannot-fail")]
    assert [(each.code, each.place.line) for each in result.warnings
            if each.code == "explained-in-vain"] == [("explained-in-vain", 8)]


def test_what_cannot_be_tried_is_said(tmp_path: Path) -> None:
    fields = ("trip_free", "manual_reset", "polarity_sensitive", "spare_aboard",
              "on_path_of_a_battery")
    wide = " or ".join(f"(device.rating > ten * {number} and device.{field})"
                       for number, field in enumerate((*fields, *fields, *fields), 2))
    wide += " or " + " or ".join(
        f"device.{name} > ten" for name in ("breaking_capacity", "prospective_current",
                                            "through_current", "setting"))
    result = read(tmp_path, rules(f"device || {wide}"))
    assert result.not_tried == ("a",)


def test_warnings_leave_a_pack_usable(tmp_path: Path) -> None:
    pack = planted(tmp_path, CASES.replace("strong-fuse", "a").replace(
        "base: base/small.yaml", "record: {}"), CANNOT.replace("zero", "most_length - most_length"))
    assert run(["pack", "proofread", str(pack)]) == 0


def test_a_pack_that_does_not_load_is_refused(tmp_path: Path) -> None:
    pack = planted(tmp_path, rules=rules("conductor || conductor.lenght > most_length"))
    assert run(["pack", "proofread", str(pack)]) == 3


def test_the_shipped_pack_has_no_warning_without_a_reason() -> None:
    desk = bench(Path("small-craft-lithium"))
    result = proofread(desk.checked, desk.book, workshop().vocabulary)
    assert result.warnings == ()
    assert result.not_tried == ()
    assert [each.code for each, _ in result.explained] == ["rule-covered"]


@pytest.mark.parametrize("seed", range(120))
def test_no_item_contradicts_what_is_possible(seed: int) -> None:
    """Whatever a drawn rule gives for a drawn thing is among what the analysis holds possible."""
    draw, draws = Draw(seed), random.Random(seed)
    try:
        checked = read_expression(draw.truth(3), VOCABULARY, "thing", INFOS)
    except ExpressionRefused:
        return
    allowed = possible([Formula(Scope(VOCABULARY, "thing", AMOUNTS), None, checked.root)])
    if allowed is None:
        return
    program = compile_rules([RuleSource("drawn", checked, None, AMOUNTS)])
    things = [{**thing(draws), "id": f"t{number}"} for number in range(60)]
    for row in program.run({"thing": things}):
        if row[2] in (PASSED, FAILED):
            assert (row[2] == PASSED,) in allowed, checked.text
