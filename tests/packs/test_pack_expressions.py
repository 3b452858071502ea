"""Expressions of a pack are held against the vocabulary, with a caret that is right everywhere."""

from __future__ import annotations

import pickle
from pathlib import Path

import pytest

from garboard.errors import PackRefused, Problem, render
from garboard.expressions import PASSED, Vocabulary
from garboard.packs import check_pack, load_pack, pack_from_data, read_pack_text
from garboard.values import NOT_RECORDED, Unknown
from packs.bad_shapes import GOOD, changed
from packs.small_vocabulary import VOCABULARY

RULE = "device.rating >= least"


def refused(text: str, tmp_path: Path) -> list[tuple[str, int | None, int | None]]:
    """Code, line and column of everything wrong with a pack that is loaded from a file."""
    return [(each.code, each.place.line, each.place.column) for each in problems(text, tmp_path)]


def problems(text: str, tmp_path: Path) -> tuple[Problem, ...]:
    (tmp_path / "tried.yaml").write_bytes(text.encode())
    with pytest.raises(PackRefused) as caught:
        load_pack(tmp_path / "tried.yaml", VOCABULARY)
    return caught.value.problems


# where the caret stands ---------------------------------------------------------------------------
@pytest.mark.parametrize(("written", "line", "column"), [
    ("device.rating >= laest", 9, 33),
    ("'device.rating >= laest'", 9, 34),
    ('"device.rating >= laest"', 9, 34),
    ("'  device.rating >= laest'", 9, 36),
    ('"device\\x2erating >= laest"', 9, 37),
    ('"device.class != \'a\' and device.rating >= laest"', 9, 58),
    ("'device.class != ''a'' and device.rating >= laest'", 9, 60),
    ("device.rating\n      >= laest", 10, 10),
    ('"device.rating\n      >= laest"', 10, 10),
    (">\n      device.rating\n      >= laest\n", 11, 10),
    (">-\n\n      device.rating >= laest", 11, 24),
    ("|\n      device.rating\n      >= laest\n", 11, 10),
    ("|2\n        device.rating\n          >= laest\n", 11, 14),
    ("'device.rating\t>= laest'", 9, 34),
    ("device.rating >= laest   # a remark", 9, 33),
])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_the_caret_stands_under_the_wrong_name(written: str, line: int, column: int, line_end: str,
                                               tmp_path: Path) -> None:
    text = changed(RULE, written).replace("\n", line_end)
    (found,) = problems(text, tmp_path)
    assert (found.code, found.place.line, found.place.column) == ("expression-name", line, column)
    assert found.place.length == len("laest")
    shown, caret = render(found).splitlines()[1:3]
    assert shown[caret.index("^"):caret.rindex("^") + 1] == "laest"
    assert "did you mean 'least'?" in found.hint


def test_the_caret_is_right_in_a_flow_mapping_and_behind_wide_letters(tmp_path: Path) -> None:
    text = changed("    title: First\n", "    title: 'Größe Ω'\n").replace(
        "    must_hold: device.rating >= least\n", "").replace(
        "    citation: {basis: practice}\n",
        "    citation: {basis: practice, source: Ωµ}\n"
        "    must_hold: 'device.class != \"Ω\" and laest'\n")
    (found,) = problems(text, tmp_path)
    assert (found.code, found.place.line, found.place.column) == ("expression-name", 11, 41)


# what is found -----------------------------------------------------------------------------------
@pytest.mark.parametrize(("old", "new", "expected"), [
    ("about: device", "about: devcie", [("about-unknown", 8, 12)]),
    ("about: device", "about: battery", [("expression-out-of-scope", 9, 16)]),
    ("device.rating >= least", "device.ratign >= least", [("expression-field", 9, 23)]),
    ("device.rating >= least", "device.rating >= 5 A", [("expression-unit", 9, 33)]),
    ("device.rating >= least", "device.rating >= 5", [("expression-dimension", 9, 33)]),
    ("device.rating >= least", "device.voltage_rating >= least", [("expression-dimension", 9, 41)]),
    ("device.rating >= least", "device.rating", [("expression-not-a-condition", 9, 16)]),
    ("device.rating >= least", "device.rating >=", [("expression-incomplete", 9, 32)]),
    ("device.rating >= least", "device.ratign >= laest",
     [("expression-field", 9, 23), ("expression-name", 9, 33)]),
    ("    must_hold:", "    applies_when: device.on_paht\n    must_hold:",
     [("expression-field", 9, 26)]),
    ("limits:", "applies_when: record.has_lihtium\nlimits:", [("expression-field", 14, 22)]),
    ("limits:", "applies_when: device.on_path\nlimits:", [("expression-out-of-scope", 14, 15)]),
    ("limits:", "applies_when: record.energy\nlimits:", [("expression-not-a-condition", 14, 15)]),
    # names of limits
    ("  least:", "  battery: {value: 1 A, citation: {basis: house}}\n  least:",
     [("limit-name-taken", 15, 3)]),
    ("  least:", "  max: {value: 1 A, citation: {basis: house}}\n  least:",
     [("limit-name-taken", 15, 3)]),
    ("  least:", "  not: {value: 1 A, citation: {basis: house}}\n  least:",
     [("limit-name-taken", 15, 3)]),
    ("  least:", "  answer: {value: 1 A, citation: {basis: house}}\n  least:",
     [("limit-name-taken", 15, 3)]),
    # with a wrong shape beside it
    ("severity: warning\n    citation: {basis: practice}",
     "severity: grave\n    applies_when: device.on_paht\n    citation: {basis: practise}",
     [("choice-unknown", 10, 15), ("expression-field", 11, 26), ("choice-unknown", 12, 23)]),
    ("{value: 5 A,", "{value: 5 Amps,", [("unit-unknown", 15, 20)]),
    ("{value: 5 A,", "{valeu: 5 A,", [("key-unknown", 15, 11)]),
    # needs
    ("limits:", "needs: [{plugin: garboard, api: 7}]\nlimits:", [("need-unmet", 14, 33)]),
    ("limits:", "needs: [{plugin: other, api: 1}]\nlimits:", [("key-missing", 14, 9)]),
    ("limits:", "needs: [{plugin: other, api: 1, quantities: {devise.heat: W}}]\nlimits:",
     [("need-unmet", 14, 46)]),
    ("limits:", "needs: [{plugin: other, api: 1, quantities: {device.heat: furlongs}}]\nlimits:",
     [("need-unmet", 14, 59)]),
    ("limits:", "needs: [{plugin: garboard, api: 1, quantities: {device.heat: W}}]\nlimits:",
     [("need-unmet", 14, 49)]),
    ("limits:", "needs: [{plugin: other, api: 1, quantities: {device.rating: V}}]\nlimits:",
     [("need-unmet", 14, 61)]),
    ("limits:", "needs: [{plugin: other, api: 1, quantities: {device.on_path: V}}]\nlimits:",
     [("need-unmet", 14, 62)]),
])
def test_what_is_wrong_is_found_at_its_place(old: str, new: str, expected: list[object],
                                             tmp_path: Path) -> None:
    assert refused(changed(old, new), tmp_path) == expected


def test_a_pack_of_good_expressions_loads_without_a_word(tmp_path: Path) -> None:
    text = changed("limits:", "applies_when: record.has_lithium\n"
                   "needs: [{plugin: other, api: 1, quantities: {device.rating: A}}]\nlimits:")
    (tmp_path / "tried.yaml").write_text(text)
    assert load_pack(tmp_path / "tried.yaml", VOCABULARY).warnings == ()


def test_limits_of_all_kinds_can_be_used() -> None:
    text = changed(RULE, "device.rating >= least and device.class in classes and device.poles < 3 "
                   "and device.poles <= most").replace("limits:\n", "limits:\n"
                   "  classes: {value: [T, gG], citation: {basis: house}}\n"
                   "  most: {value: 2, citation: {basis: house}}\n")
    checked = check_pack(read_pack_text(text), VOCABULARY)
    device = {"id": "f1", "rating": 6.0, "class": "T", "poles": 2}
    ((rule, item, outcome, *_),) = checked.program.run({"device": [device]})
    assert (rule, item, outcome) == (0, "f1", PASSED)


def test_an_unused_limit_is_a_warning_at_its_name() -> None:
    text = changed("  least:", "  spare: {value: 1 V, citation: {basis: house}}\n  least:")
    (warning,) = check_pack(read_pack_text(text), VOCABULARY).warnings
    assert (warning.code, warning.level) == ("limit-unused", "warning")
    assert (warning.place.line, warning.place.column) == (15, 3)


def test_a_limit_of_the_packs_own_condition_is_used() -> None:
    text = changed("limits:\n", "applies_when: record.energy > threshold\nlimits:\n"
                   "  threshold: {value: 600 Wh, citation: {basis: house}}\n")
    assert check_pack(read_pack_text(text), VOCABULARY).warnings == ()


def test_an_answer_has_the_kind_its_schema_names() -> None:
    question = ("questions: [{id: fitted-well, ask: Fitted well?, answer: {type: boolean}}]\n"
                "limits:")
    text = changed("limits:", question).replace(RULE, f"answer.fitted-well and {RULE}")
    checked = check_pack(read_pack_text(text), VOCABULARY)
    device = {"id": "f1", "rating": 6.0}
    ((_, _, outcome, unknown, *_),) = checked.program.run({"device": [device]})
    assert outcome == "not assessed"
    assert unknown is not None
    assert unknown.reason == "awaits answer"
    wrong = changed("limits:", question).replace(RULE, f"answer.fitted-well > 3 and {RULE}")
    with pytest.raises(PackRefused):
        check_pack(read_pack_text(wrong), VOCABULARY)


# whether a pack applies --------------------------------------------------------------------------
@pytest.mark.parametrize(("lithium", "expected"), [(True, True), (False, False)])
def test_a_pack_applies_where_its_condition_holds(lithium: bool, expected: bool) -> None:
    text = changed("limits:", "applies_when: record.has_lithium\nlimits:")
    checked = check_pack(read_pack_text(text), VOCABULARY)
    assert checked.applies({"record": [{"id": "record", "has_lithium": lithium}]}) is expected


def test_whether_a_pack_applies_may_not_be_known() -> None:
    text = changed("limits:", "applies_when: record.has_lithium\nlimits:")
    checked = check_pack(read_pack_text(text), VOCABULARY)
    missing = Unknown.because(NOT_RECORDED, "pack-1.chemistry")
    answer = checked.applies({"record": [{"id": "record", "has_lithium": missing}]})
    assert isinstance(answer, Unknown)
    assert answer.paths == ("pack-1.chemistry",)


def test_a_pack_without_a_condition_always_applies() -> None:
    assert check_pack(read_pack_text(GOOD), VOCABULARY).applies({}) is True


# compiled once -----------------------------------------------------------------------------------
def test_a_pack_is_compiled_once_however_it_is_written() -> None:
    one = check_pack(read_pack_text(GOOD), VOCABULARY)
    other = check_pack(read_pack_text("# a remark\n" + GOOD, "elsewhere.yaml"), VOCABULARY)
    assert one.program is other.program
    assert check_pack(read_pack_text(GOOD.replace("5 A", "6 A")), VOCABULARY).program \
        is not one.program


def test_what_is_kept_is_not_used_with_another_vocabulary() -> None:
    check_pack(read_pack_text(GOOD), VOCABULARY)
    bare = Vocabulary({**VOCABULARY.subjects, "device": {}})
    with pytest.raises(PackRefused):
        check_pack(read_pack_text(GOOD), bare)


def test_the_warnings_of_a_kept_pack_are_those_of_its_own_file() -> None:
    text = changed("  least:", "  spare: {value: 1 V, citation: {basis: house}}\n  least:")
    check_pack(read_pack_text(text, "one.yaml"), VOCABULARY)
    (warning,) = check_pack(read_pack_text(text, "two.yaml"), VOCABULARY).warnings
    assert warning.place.file == "two.yaml"


def test_a_pack_from_a_trail_is_checked_like_any_other() -> None:
    pack = pack_from_data(read_pack_text(GOOD).as_data())
    assert [trace.operands[0].text for trace in check_pack(pack, VOCABULARY).program.traces] == [
        "device.rating"]
    data = read_pack_text(changed(RULE, "device.rating >= laest")).as_data()
    with pytest.raises(PackRefused) as caught:
        check_pack(pack_from_data(data), VOCABULARY)
    (problem,) = caught.value.problems
    assert (problem.code, problem.place.path) == ("expression-name", "rules[0].must_hold")


def test_a_checked_pack_survives_pickling() -> None:
    checked = pickle.loads(pickle.dumps(check_pack(read_pack_text(GOOD), VOCABULARY)))
    ((_, _, outcome, *_),) = checked.program.run({"device": [{"id": "f1", "rating": 5.0}]})
    assert outcome == PASSED
