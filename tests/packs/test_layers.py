"""Packs on top of packs: what is merged, what a change does, what is refused and where."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from garboard.errors import PackRefused
from garboard.packs import CheckedPack, check_pack, pack_from_data
from packs.layered import BASE, ON_BASE, WHY, loaded, on_top, refused, written
from packs.small_vocabulary import VOCABULARY

NEW_RULE = """\
rules:
  - id: extra
    title: Extra
    about: device
    must_hold: device.rating <= most
    severity: notice
    citation: {basis: house}
    why: Because.
    recommendation: Change it.
limits: {most: {value: 9 A, citation: {basis: house}}}
"""
LAW = """\
  - id: law
    title: Law
    about: device
    must_hold: device.rating >= least
    severity: warning
    citation: {basis: regulation, source: A law, says: So., status: read}
    why: Because.
    recommendation: Change it.
    not_dispensable: true
"""


NARROWER = "applies_when: record.has_lithium and record.energy > most\n"
ENERGY = NEW_RULE.replace("value: 9 A", "value: 9 Wh").replace("device.rating <= most",
                                                               "record.energy <= most")


def relaxed(checked: CheckedPack) -> list[tuple[str, str, str | None, str | None]]:
    return [(each.change, each.what, each.before, each.after)
            for each in checked.pack.relaxations]


# what a layer comes to ------------------------------------------------------------------------
def test_a_layer_has_what_lies_below_and_its_own(tmp_path: Path) -> None:
    checked = loaded(tmp_path, top=on_top(more=NEW_RULE))
    pack = checked.pack
    assert [rule.id for rule in pack.rules] == ["extra", "near", "rated", "shared"]
    assert list(pack.limits) == ["classes", "least", "most", "reach", "share"]
    assert pack.header.applies_when == "record.has_lithium"
    assert pack.layering is not None
    assert [(each.pack, each.version) for each in pack.layering.layers] == [("base", "1.2.0")]
    assert pack.layering.setter("rule", "extra", "why") == "top 1.0.0"
    assert pack.layering.setter("rule", "near", "why") == "base 1.2.0"
    assert pack.layering.setter("head", "", "applies_when") == "base 1.2.0"
    assert checked.warnings == ()


@pytest.mark.parametrize(("base", "condition"), [
    (BASE, "record.has_lithium and record.energy > most"),
    (BASE.replace("applies_when: record.has_lithium\n", ""), "record.energy > most")])
def test_a_layer_may_narrow_what_the_packs_below_apply_to(tmp_path: Path, base: str,
                                                          condition: str) -> None:
    checked = loaded(tmp_path, base=base, top=on_top(more=f"applies_when: {condition}\n" + ENERGY))
    assert checked.pack.header.applies_when == condition
    assert checked.pack.layering is not None
    assert checked.pack.layering.setter("head", "", "applies_when") == "top 1.0.0"
    assert checked.pack.relaxations == ()


def test_layers_lie_several_deep(tmp_path: Path) -> None:
    checked = loaded(
        tmp_path,
        one=on_top("rule: rated, severity: danger", name="one"),
        two=on_top("limit: reach, value: 5 in", name="two",
                   below="{pack: one, from: 1.0.0, before: 1.0.1}"),
        top=on_top("rule: rated, title: Rated well",
                   below="{pack: two, from: 0.9.0-rc.1, before: 2.0.0}"))
    layering = checked.pack.layering
    assert layering is not None
    assert [each.pack for each in layering.layers] == ["base", "one", "two"]
    assert [layering.setter("rule", "rated", of) for of in ("why", "severity", "title")] == [
        "base 1.2.0", "one 1.0.0", "top 1.0.0"]
    assert layering.setter("limit", "reach", "value") == "two 1.0.0"
    rule = next(each for each in checked.pack.rules if each.id == "rated")
    assert (rule.severity, rule.title) == ("danger", "Rated well")


def test_the_resolved_form_is_read_back(tmp_path: Path) -> None:
    top = on_top(f"rule: near, retire: true{WHY}", f"limit: least, value: 4 A{WHY}",
                 "rule: rated, severity: danger", more=NEW_RULE)
    checked = loaded(tmp_path, top=top)
    again = pack_from_data(json.loads(json.dumps(checked.pack.as_data())))
    assert again == replace(checked.pack)
    assert again.digest == checked.pack.digest
    assert [each.rule.id for each in again.retired] == ["near"]
    assert len(check_pack(again, VOCABULARY).program.traces) == 3


@pytest.mark.parametrize("change", [
    lambda data: data["layers"].append("base"), lambda data: data.pop("set_by"),
    lambda data: data["relaxations"][0].update(colour="blue"),
    lambda data: data["rules"][0].pop("retired"),
])
def test_a_resolved_form_with_broken_layers_is_refused(tmp_path: Path, change: object) -> None:
    data = json.loads(json.dumps(
        loaded(tmp_path, top=on_top(f"rule: near, retire: true{WHY}")).pack.as_data()))
    assert callable(change)
    change(data)
    with pytest.raises(PackRefused):
        pack_from_data(data)


def test_two_lines_that_meet_again_are_merged(tmp_path: Path) -> None:
    checked = loaded(
        tmp_path, one=on_top("rule: rated, severity: danger", name="one"),
        two=on_top("rule: rated, title: Rated well", "limit: reach, value: 5 in", name="two"),
        top=on_top(below="{pack: one, from: 1.0.0, before: 2.0.0}, "
                         "{pack: two, from: 1.0.0, before: 2.0.0}"))
    rule = next(each for each in checked.pack.rules if each.id == "rated")
    assert (rule.severity, rule.title) == ("danger", "Rated well")
    assert checked.pack.limits["reach"].written == "5 in"


# which way a change goes --------------------------------------------------------------------
@pytest.mark.parametrize(("requirement", "condition", "up"), [
    ("device.rating >= x", None, "tightened"), ("device.rating > x", None, "tightened"),
    ("device.rating <= x", None, "relaxed"), ("x >= device.rating", None, "relaxed"),
    ("x < device.rating", None, "tightened"), ("not device.rating >= x", None, "relaxed"),
    ("not (device.rating < x)", None, "tightened"), ("device.rating == x", None, "relaxed"),
    ("device.rating != x", None, "relaxed"), ("device.rating + x <= y", None, "tightened"),
    ("device.rating - x <= y", None, "relaxed"), ("y - (device.rating - x) > y", None, "relaxed"),
    ("-x <= device.rating", None, "relaxed"), ("device.rating * 2 <= x / 3", None, "relaxed"),
    ("device.rating / x <= 1", None, "relaxed"), ("x / device.rating <= 1", None, "tightened"),
    ("(x - y) * device.rating <= (y - x) * y", None, "tightened"),
    ("max(x, y) >= device.rating", None, "relaxed"),
    ("min(x, y) < device.rating", None, "tightened"),
    ("abs(device.rating - x) < y", None, "relaxed"),
    ("all(d.rating >= x for d in device.run.devices)", None, "tightened"),
    ("any(d.rating >= x for d in device.run.devices)", None, "tightened"),
    ("all(d.rating >= y for d in device.run.devices if d.rating >= x)", None, "relaxed"),
    ("any(d.on_path for d in device.run.devices if d.rating <= x)", None, "relaxed"),
    ("count(d for d in device.run.devices if d.rating <= x) <= 2", None, "tightened"),
    ("sum(d.rating for d in device.run.devices if d.rating <= x) <= y", None, "tightened"),
    ("device.rating <= x if device.on_path else device.rating <= y", None, "relaxed"),
    ("device.on_path if device.rating <= x else device.rating <= y", None, "relaxed"),
    ("y <= device.rating <= x", None, "relaxed"), ("x <= device.rating <= x", None, "relaxed"),
    ("device.on_path", "device.rating <= x", "tightened"),
    ("device.on_path", "device.rating >= x", "relaxed"),
    ("device.rating >= x", "device.rating >= x", "relaxed"),
    ("device.rating <= y", None, "reworded"),
])
def test_the_direction_of_a_limit_is_found_in_the_rules(
        tmp_path: Path, requirement: str, condition: str | None, up: str) -> None:
    base = f"""\
format: rule-pack/1
pack: base
version: 1.0.0
title: One rule
limits:
  x: {{value: 5 A, citation: {{basis: house}}}}
  y: {{value: 7 A, citation: {{basis: house}}}}
rules:
  - id: one
    title: First
    about: device
    {f'applies_when: "{condition}"' if condition else ""}
    must_hold: "{requirement}"
    severity: warning
    citation: {{basis: practice}}
    why: Because.
    recommendation: Change it.
"""
    outcomes = {}
    for value in ("6 A", "4 A"):
        codes = [each[0] for each in refused(tmp_path, base=base,
                                             top=on_top(f"limit: x, value: {value}"))]
        assert set(codes) <= {"change-unexplained"}
        found = loaded(tmp_path, base=base, top=on_top(f"limit: x, value: {value}{WHY}"))
        assert [each.change for each in found.pack.relaxations] == ["relaxed"] * len(codes)
        outcomes[value] = "relaxed" if codes else "not relaxed"
    both = {"6 A": "relaxed", "4 A": "relaxed"}
    assert outcomes in ({"relaxed": [both, {"6 A": "relaxed", "4 A": "not relaxed"}],
                         "tightened": [{"6 A": "not relaxed", "4 A": "relaxed"}],
                         "reworded": [{"6 A": "not relaxed", "4 A": "not relaxed"}]}[up])


@pytest.mark.parametrize(("change", "what"), [
    ("limit: least, value: 6 A", None), ("limit: least, value: 5000 mA", None),
    ("limit: least, value: 4 A", "limit least"), ("limit: reach, value: 6 in", None),
    ("limit: reach, value: 8 in", "limit reach"), ("limit: share, value: 70 %", None),
    ("limit: share, value: 90 %", "limit share"), ("limit: classes, value: [T]", None),
    ("limit: classes, value: [T, ANL, MRBF]", "limit classes"),
    ("limit: classes, value: [T, MRBF]", "limit classes"),
    ("limit: least, citation: {basis: practice}", None),
    ("rule: near, severity: warning", "severity of rule near"),
    ("rule: rated, severity: danger", None),
    ("rule: rated, must_hold: device.rating >= least and device.poles > 1", None),
    ("rule: rated, must_hold: device.poles > 1 and device.rating >=  least", None),
    ("rule: rated, must_hold: device.rating >= least or device.poles > 1",
     "must hold of rule rated"),
    ("rule: near, applies_when: run.length > reach", "applies when of rule near"),
    ('rule: near, applies_when: "any(d.on_path for d in run.devices) or run.length > reach"', None),
    ("rule: rated, applies_when: device.on_path", "applies when of rule rated"),
    ("rule: rated, title: Other words", None), ("rule: rated, why: Other words", None),
    ("rule: rated, covers: part, left_to_a_person: Much", None),
    ("rule: near, retire: true", "rule near"),
    ("decision_rule: simple acceptance", "decision rule of head"),
    ("dispensable_danger: counts apart", "dispensable danger of head"),
])
def test_what_relaxes_needs_a_reason_and_an_author(tmp_path: Path, change: str,
                                                   what: str | None) -> None:
    bare = refused(tmp_path, top=on_top(change))
    assert bare == ([] if what is None else [("change-unexplained", "top", 7)])
    for part in (", reason: So", ", author: A. Person"):
        assert (refused(tmp_path, top=on_top(change + part)) == []) is (what is None)
    found = loaded(tmp_path, top=on_top(change + WHY)).pack.relaxations
    assert [each.what for each in found] == ([] if what is None else [what])
    assert {(each.by, each.author, each.why) for each in found} <= {
        ("top 1.0.0", "A. Person", "It is so")}


def test_a_relaxation_below_is_still_told_and_goes_when_it_is_taken_back(tmp_path: Path) -> None:
    one = on_top(f"limit: reach, value: 9 in{WHY}", name="one")
    below = "{pack: one, from: 1.0.0, before: 2.0.0}"
    told = [("relaxed", "limit reach", "7 in", "9 in")]
    assert relaxed(loaded(tmp_path, one=one, top=on_top(below=below))) == told
    for value, kept in (("8 in", [("relaxed", "limit reach", "7 in", "8 in")]), ("6 in", [])):
        top = on_top(f"limit: reach, value: {value}, replaces: [one]", below=below)
        assert relaxed(loaded(tmp_path, one=one, top=top)) == kept


# what is refused ------------------------------------------------------------------------------
TWO = "{pack: one, from: 1.0.0, before: 2.0.0}, {pack: two, from: 1.0.0, before: 2.0.0}"
REFUSED: list[tuple[str, dict[str, str], list[tuple[str, str, int]]]] = [
    ("a rule written again", {"top": on_top(more=NEW_RULE.replace("extra", "near"))},
     [("layer-conflict", "base", 20), ("layer-conflict", "top", 7)]),
    ("a limit written again", {"top": on_top(more="limits: {reach: {value: 8 in, citation: "
                                                  "{basis: house}}}\n")},
     [("layer-conflict", "base", 8), ("layer-conflict", "top", 6)]),
    ("an id used again after its rule was retired",
     {"one": on_top(f"rule: near, retire: true{WHY}", name="one"),
      "top": on_top(below="{pack: one, from: 1.0.0, before: 2.0.0}",
                    more=NEW_RULE.replace("extra", "near"))},
     [("layer-conflict", "base", 20), ("layer-conflict", "top", 7)]),
    ("a change on a change",
     {"one": on_top("limit: reach, value: 6 in", name="one"),
      "top": on_top("limit: reach, value: 5 in",
                    below="{pack: one, from: 1.0.0, before: 2.0.0}")},
     [("layer-conflict", "one", 7), ("layer-conflict", "top", 7)]),
    ("a change of what was retired",
     {"one": on_top(f"rule: near, retire: true{WHY}", name="one"),
      "top": on_top("rule: near, title: Gone", below="{pack: one, from: 1.0.0, before: 2.0.0}")},
     [("layer-conflict", "one", 7), ("layer-conflict", "top", 7)]),
    ("two lines that change one thing",
     {"one": on_top("limit: reach, value: 6 in", name="one"),
      "two": on_top("limit: reach, value: 5 in", name="two"), "top": on_top(below=TWO)},
     [("layer-conflict", "one", 7), ("layer-conflict", "two", 7)]),
    ("one line that retires what the other changes",
     {"one": on_top(f"rule: near, retire: true{WHY}", name="one"),
      "two": on_top("rule: near, title: Gone", name="two"), "top": on_top(below=TWO)},
     [("layer-conflict", "one", 7), ("layer-conflict", "two", 7)]),
    ("two changes of one thing in a layer",
     {"top": on_top("limit: reach, value: 6 in", "limit: reach, value: 5 in")},
     [("layer-conflict", "top", 7), ("layer-conflict", "top", 8)]),
    ("no such rule", {"top": on_top("rule: nears, severity: danger")},
     [("change-target-unknown", "top", 7)]),
    ("no such limit", {"top": on_top("limit: rich, value: 5 in")},
     [("change-target-unknown", "top", 7)]),
    ("a change of its own", {"top": on_top("rule: extra, severity: danger", more=NEW_RULE)},
     [("change-target-unknown", "top", 7)]),
    ("another kind of limit", {"top": on_top("limit: reach, value: 5 A")},
     [("change-kind", "top", 7)]),
    ("a limit without unit", {"top": on_top("limit: reach, value: '5'")},
     [("unit-missing", "top", 7)]),
    ("nothing to change", {"top": on_top("rule: near")}, [("change-empty", "top", 7)]),
    ("a severity of a limit", {"top": on_top("limit: reach, severity: danger")},
     [("change-field", "top", 7)]),
    ("another subject", {"top": on_top("rule: near, about: device")}, [("key-unknown", "top", 7)]),
    ("a rule and a limit", {"top": on_top("rule: near, limit: reach, severity: danger")},
     [("change-of-several", "top", 7)]),
    ("retired and changed", {"top": on_top(f"rule: near, retire: true, title: Gone{WHY}")},
     [("change-of-several", "top", 7)]),
    ("a cover that contradicts", {"top": on_top("rule: near, left_to_a_person: All")},
     [("covers-contradicts", "top", 7)]),
    ("a name that is not known", {"top": on_top(f"rule: rated, must_hold: device.ratin > least"
                                                f"{WHY}")},
     [("expression-field", "top", 7)]),
    ("changes without a pack below", {"top": on_top("limit: reach, value: 5 in").replace(
        "builds_on: [{pack: base, from: 1.0.0, before: 2.0.0}]\n", "") + NEW_RULE},
     [("change-without-base", "top", 6)]),
    ("a condition of its own", {"top": on_top(more="applies_when: record.energy > most\n"
                                              + NEW_RULE)},
     [("layer-condition", "top", 6)]),
    ("a condition that widens", {"top": on_top(
        more="applies_when: record.has_lithium or record.energy > most\n" + NEW_RULE)},
     [("layer-condition", "top", 6)]),
    ("a narrower condition over a law", {"base": BASE.replace("rules:\n", "rules:\n" + LAW),
                                         "top": on_top(more=NARROWER + NEW_RULE)},
     [("layer-condition", "top", 6)]),
    ("a looser decision rule in the head",
     {"top": on_top(more="decision_rule: simple acceptance\n")},
     [("change-unexplained", "top", 6)]),
    ("a pack that is not there", {"top": on_top(below=ON_BASE.replace("base", "bass"))},
     [("base-missing", "top", 5)]),
    ("too old", {"top": on_top(below="{pack: base, from: 1.2.1, before: 2.0.0}")},
     [("base-version", "top", 5)]),
    ("too new", {"top": on_top(below="{pack: base, from: 1.0.0, before: 1.2.0}")},
     [("base-version", "top", 5)]),
    ("a bare version", {"top": on_top(below="{pack: base, from: 1.0, before: 2.0.0}")},
     [("pack-version", "top", 5)]),
    ("on itself", {"top": on_top(below="{pack: top, from: 1.0.0, before: 2.0.0}")},
     [("base-circular", "top", 5)]),
    ("in a circle",
     {"one": on_top(name="one", below="{pack: top, from: 1.0.0, before: 2.0.0}"),
      "top": on_top(below="{pack: one, from: 1.0.0, before: 2.0.0}")},
     [("base-circular", "one", 5), ("base-circular", "top", 5)]),
    ("all retired",
     {"top": on_top(*(f"rule: {each}, retire: true{WHY}"
                      for each in ("near", "rated", "shared")))},
     [("pack-empty", "top", 1)]),
    ("a pack below that is broken", {"base": BASE.replace("    title: Near\n", ""),
                                     "top": on_top()}, [("key-missing", "base", 20)]),
    ("a pack below that is no YAML", {"base": BASE.replace("title: Near", "title: [Near"),
                                      "top": on_top()}, [("yaml-bracket", "base", 22)]),
    *((f"not dispensable, {change}", {"base": BASE + LAW, "top": on_top(change + WHY)},
       [("change-not-dispensable", "top", 7)]) for change in (
           "rule: law, retire: true", "rule: law, severity: notice",
           "rule: law, must_hold: device.rating > least or device.on_path",
           "rule: law, citation: {basis: regulation, source: B, says: C, status: read}",
           "limit: least, value: 4 A", "decision_rule: simple acceptance")),
]


@pytest.mark.parametrize(("packs", "problems"), [each[1:] for each in REFUSED],
                         ids=[each[0] for each in REFUSED])
def test_refused(tmp_path: Path, packs: dict[str, str],
                 problems: list[tuple[str, str, int]]) -> None:
    assert refused(tmp_path, **packs) == problems


@pytest.mark.parametrize("change", ["rule: law, severity: danger", "limit: least, value: 6 A",
                                    "limit: reach, value: 9 in, reason: So, author: A. Person"])
def test_what_cannot_be_dispensed_with_may_be_tightened(tmp_path: Path, change: str) -> None:
    assert refused(tmp_path, base=BASE + LAW, top=on_top(change)) == []


@pytest.mark.parametrize("packs", [
    {"one": on_top("limit: reach, value: 6 in", name="one"),
     "top": on_top("limit: reach, value: 5 in, replaces: [one]",
                   below="{pack: one, from: 1.0.0, before: 2.0.0}")},
    {"one": on_top("limit: reach, value: 6 in", name="one"),
     "two": on_top("limit: reach, value: 4 in", name="two"),
     "top": on_top("limit: reach, value: 5 in, replaces: [one, two]", below=TWO)},
    {"one": on_top("limit: reach, value: 6 in", name="one"),
     "two": on_top("limit: reach, value: 5 in, replaces: [one]", name="two"),
     "top": on_top(below=TWO)},
])
def test_one_that_names_what_it_replaces_counts(tmp_path: Path, packs: dict[str, str]) -> None:
    assert loaded(tmp_path, **packs).pack.limits["reach"].written == "5 in"


# where packs are found -----------------------------------------------------------------------
def test_a_named_pack_comes_before_one_beside(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    other = written(tmp_path / "elsewhere", other=BASE.replace("1.2.0", "1.3.0"))
    layering = loaded(tmp_path, other, top=on_top()).pack.layering
    assert layering is not None
    assert [each.version for each in layering.layers] == ["1.3.0"]
    layering = loaded(tmp_path, other, top=on_top(below=ON_BASE.replace("2.0.0", "1.3.0"))
                      ).pack.layering
    assert layering is not None
    assert [each.version for each in layering.layers] == ["1.2.0"]


def test_all_files_are_known(tmp_path: Path) -> None:
    pack = loaded(tmp_path, one=on_top("rule: rated, severity: danger", name="one"),
                  top=on_top(below="{pack: one, from: 1.0.0, before: 2.0.0}")).pack
    assert [file.name for file in pack.files] == ["base.yaml", "one.yaml", "top.yaml"]


@pytest.mark.parametrize("lower", ["1.0.0-alpha", "1.0.0-alpha.1", "1.0.0-alpha.beta", "1.0.0-beta",
                                   "1.0.0-beta.2", "1.0.0-beta.11", "1.0.0-rc.1", "1.0.0", "1.0.1",
                                   "1.2.0", "1.10.0"])
def test_versions_are_ordered(lower: str) -> None:
    from garboard.packs.base import Base, version_order

    listed = ["1.0.0-alpha", "1.0.0-alpha.1", "1.0.0-alpha.beta", "1.0.0-beta", "1.0.0-beta.2",
              "1.0.0-beta.11", "1.0.0-rc.1", "1.0.0", "1.0.1", "1.2.0", "1.10.0", "2.0.0"]
    upper = listed[listed.index(lower) + 1]
    assert version_order(lower) < version_order(upper)
    assert version_order(f"{lower}+build.7") == version_order(lower)
    base = Base.model_validate({"pack": "a", "from": lower, "before": upper})
    assert (base.accepts(lower), base.accepts(upper)) == (True, False)
