"""The resolved form of a pack: everything a replay needs, the same whatever the files look like."""

from __future__ import annotations

import json
import pickle
from copy import deepcopy
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from garboard.errors import PackRefused
from garboard.packs import Pack, pack_from_data, read_pack, read_pack_text
from packs.bad_shapes import GOOD, HEAD, LIMITS, RULE

FULL = GOOD.replace("  least:", """\
  chemistries: {value: [LFP, NMC], citation: {basis: house}}
  most_in_series: {value: 4, citation: {basis: house}}
  reach: {value: 7 in, citation: {basis: comparison, source: A law, says: Near., status: read}}
  least:""").replace("    severity", "    applies_when: device.rating > least\n    severity") + """\
applies_when: record.has_lithium
decision_rule: simple acceptance
not_examined: [This., That.]
cautions: [Mind the gap.]
needs: [{plugin: garboard, api: 1, quantities: {}}]
questions:
  - {id: q, ask: Really?, how_to_look: Look., answer: {enum: [null, "yes"], default: null}}
"""


def digest(text: str) -> str:
    return read_pack_text(text).digest


def test_the_resolved_form_keeps_both_what_was_written_and_the_canonical_amount() -> None:
    limits = read_pack_text(FULL).as_data()["limits"]
    assert limits["reach"] == {  # type: ignore[index]
        "written": "7 in", "amount": 0.1778, "dimension": "length", "unit": "m",
        "citation": {"basis": "comparison", "source": "A law", "says": "Near.", "status": "read"}}
    assert limits["most_in_series"]["amount"] == 4  # type: ignore[index]
    assert limits["chemistries"]["amount"] == ["LFP", "NMC"]  # type: ignore[index]


def test_defaults_are_filled_in() -> None:
    data: Any = read_pack_text(GOOD).as_data()
    assert data["decision_rule"] == "guarded acceptance"
    assert data["rules"][0]["covers"] == "whole"
    assert "applies_when" not in data


@pytest.mark.parametrize("text", [GOOD, FULL])
def test_a_pack_comes_back_from_its_resolved_form(text: str) -> None:
    pack = read_pack_text(text)
    again = pack_from_data(json.loads(json.dumps(pack.as_data())))
    assert again == pack
    assert again.digest == pack.digest
    assert again.as_data() == pack.as_data()


def test_a_pack_survives_pickling() -> None:
    pack = read_pack_text(FULL)
    assert pickle.loads(pickle.dumps(pack)) == pack


FULL_DATA: Any = read_pack_text(FULL).as_data()
FULL_DIGEST = read_pack_text(FULL).digest


@settings(max_examples=40)
@given(st.permutations(list(FULL_DATA)), st.permutations(list(FULL_DATA["rules"][0])))
def test_the_order_of_keys_leaves_no_trace(keys: list[str], of_the_rule: list[str]) -> None:
    rule = FULL_DATA["rules"][0]
    shuffled = {key: FULL_DATA[key] for key in keys} | {
        "rules": [{key: rule[key] for key in of_the_rule}]}
    assert pack_from_data(shuffled).digest == FULL_DIGEST


@pytest.mark.parametrize("head", list(permutations(FULL.split("\n")[:4]))[::5])
def test_the_order_of_lines_leaves_no_trace(head: tuple[str, ...]) -> None:
    assert digest("\n".join([*head, *FULL.split("\n")[4:]])) == FULL_DIGEST


@pytest.mark.parametrize(("old", "new"), [
    ("title: First", "title: 'First'   # a remark"),
    ("title: First", "title:\n      First"),
    ("must_hold: device.rating >= least", 'must_hold: "device.rating >= least"'),
    ("must_hold: device.rating >= least", "must_hold: >\n      device.rating\n      >= least\n"),
    ("must_hold: device.rating >= least", "must_hold: |\n      device.rating\n        >= least\n"),
    ("why: Because.", "why: |\n      Because.\n"),
    ("citation: {basis: house}", "citation:\n      basis: house"),
    ("pack: tried", "# a remark\npack:   tried"),
])
def test_how_it_is_written_leaves_no_trace(old: str, new: str) -> None:
    if "citation:\n" in new:
        text = GOOD.replace("least: {value: 5 A, citation: {basis: house}}",
                            "least:\n    value: 5 A\n    citation:\n      basis: house")
    else:
        text = GOOD.replace(old, new)
    assert text != GOOD
    assert digest(text) == digest(GOOD)


def test_which_file_a_rule_stands_in_leaves_no_trace(tmp_path: Path) -> None:
    second = RULE.replace("id: one", "id: two")
    for name, files in {
        "a": {"pack.yaml": HEAD + RULE + second.removeprefix("rules:\n") + LIMITS},
        "b": {"pack.yaml": HEAD, "rules/z.yaml": RULE, "rules/a.yaml": second,
              "limits.yaml": LIMITS},
        "c": {"pack.yaml": HEAD + LIMITS + second, "rules/one.yaml": RULE},
    }.items():
        for file, text in files.items():
            (tmp_path / name / file).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / name / file).write_text(text)
    packs = [read_pack(tmp_path / name) for name in "abc"]
    assert packs[0] == packs[1] == packs[2]
    assert len({pack.digest for pack in packs}) == 1


@pytest.mark.parametrize(("old", "new"), [
    ("0.1.0", "0.1.1"), ("id: one", "id: two"), ("severity: warning", "severity: danger"),
    ("5 A", "6 A"), ("5 A", "5000 mA"), ("rating >= least", "rating > least"),
    ("why: Because.", "why: Because it burns."), ("basis: house", "basis: practice"),
])
def test_what_it_says_changes_the_digest(old: str, new: str) -> None:
    assert old in GOOD
    assert digest(GOOD.replace(old, new)) != digest(GOOD)


@pytest.mark.parametrize(("change", "codes"), [
    (lambda data: data["limits"]["reach"].update(amount=0.2), ["pack-data-differs"]),
    (lambda data: data["limits"]["reach"].update(dimension="area"), ["pack-data-differs"]),
    (lambda data: data["limits"]["reach"].pop("unit"), ["pack-data-differs"]),
    (lambda data: data["limits"]["reach"].update(colour="blue"),
     ["key-missing", *["key-unknown"] * 5]),
    (lambda data: data["limits"].update(reach="7 in"), ["mapping-expected"]),
    (lambda data: data.pop("decision_rule"), ["pack-data-differs"]),
    (lambda data: data["rules"][0].pop("covers"), ["pack-data-differs"]),
    (lambda data: data["rules"][0].pop("why"), ["key-missing"]),
    (lambda data: data["rules"].append(data["rules"][0]), ["rule-twice"] * 2),
    (lambda data: data.update(builds_on=[]), ["pack-data-differs"]),
    (lambda data: data.update(changes=[]), ["pack-data-differs"]),
    (lambda data: data.update(limits=None), ["mapping-expected"]),
    (lambda data: data.update(rules=3), ["pack-empty", "list-expected"]),
    (lambda data: data.clear(), ["key-missing"] * 4 + ["pack-empty"]),
])
def test_a_resolved_form_that_does_not_agree_with_itself_is_refused(change: Any,
                                                                    codes: list[str]) -> None:
    data = deepcopy(FULL_DATA)
    change(data)
    with pytest.raises(PackRefused) as refused:
        pack_from_data(data)
    found = [each.code for each in refused.value.problems if each.level == "error"]
    assert sorted(found) == sorted(codes)


def test_equality_looks_at_the_content_only() -> None:
    pack: Pack = read_pack_text(GOOD)
    assert pack == read_pack_text("# a remark\n" + GOOD, "elsewhere.yaml")
    assert pack != read_pack_text(GOOD.replace("5 A", "6 A"))
