"""What is wrong with a record is found, all of it, with its code and at its place."""

from __future__ import annotations

import pickle

import pytest

from garboard.errors import CATALOGUE, Problem, RecordRefused, Refused, render
from garboard.errors.codes.record import CODES
from record.bad_inputs import BAD_INPUTS, ELSEWHERE, UNLIKELY, Case
from record.launch import LAUNCH, changed, problems, read, spot, unmarked

ALL_CASES = [*BAD_INPUTS, *UNLIKELY]


def expected(case: Case) -> tuple[str, list[tuple[str, int, int]]]:
    name, old, new = case
    text, spots = unmarked(changed(old, new))
    return text, spots or [ELSEWHERE[name]]


@pytest.mark.parametrize("case", ALL_CASES, ids=lambda case: case[0])
def test_a_wrong_record_is_refused_at_the_place(case: Case) -> None:
    text, spots = expected(case)
    assert [spot(each) for each in problems(text)] == spots


@pytest.mark.parametrize("case", ALL_CASES, ids=lambda case: case[0])
def test_every_problem_says_what_was_found_or_expected(case: Case) -> None:
    for problem in problems(expected(case)[0]):
        assert problem.found or problem.expected
        assert problem.code in render(problem)
        assert len(render(problem).splitlines()) >= 4


def test_the_table_is_as_large_as_it_should_be() -> None:
    assert len({name for name, *_ in ALL_CASES}) == len(ALL_CASES) == 179


def test_every_code_of_this_floor_is_reached() -> None:
    reached = {problem.code for case in ALL_CASES for problem in problems(expected(case)[0])}
    assert set(CODES) - reached == {"more-warnings"}
    assert set(CODES) <= set(CATALOGUE)


@pytest.mark.parametrize("case", UNLIKELY, ids=lambda case: case[0])
def test_what_is_only_unlikely_is_a_warning(case: Case) -> None:
    (warning,) = read(expected(case)[0]).warnings
    assert warning.level == "warning"


@pytest.mark.parametrize(("old", "new", "hint"), [
    ("chemistry: LFP", "chemistry: LiFePO4", "'LFP'"),
    ("chemistry: LFP", "chemistry: lead-acid", "'flooded' or 'AGM' or 'gel'"),
    ("    chemistry: LFP", "    chemisty: LFP", "chemistry"),
    ("chemistry: LFP", "chemistry: lfp", "LFP"),
    ("loads:", "lodas:", "loads"),
    ("place: locker", "place: lokcer", "locker"),
    ("to: inverter.positive", "to: invertor.positive", "inverter"),
    ("from: pack-1.positive", "from: pack-1.plus", "positive"),
    ("id: w2,", "id: W 2.b,", "w-2-b"),
    ("length: 0.35 m", "length: 3 km", "3 m"),
    ("resistance: 0.2 mΩ", "resistance: 300 kΩ", "300 mΩ"),
    ("value: 2.1 mΩ", "value: 2.1 Ω", "2.1 mΩ"),
    ("insulation: 105 °C", "insulation: 105 °F", "105 °C"),
    ("before_disconnect: yes", "before_disconnect: Yes", "yes"),
    ("voltage: 160 V DC", "voltage: 160 kV DC", "160 V"),
    ("    kind: internal", "    inhibits_charge_below: -300 °F", "check the number and its unit"),
    ("cells_in_series: 8", "cells_in_series: '8'", "quotes"),
    ("installation-record/1", "instalation-record/1", "installation-record"),
    ("installation-record/1", "installation-record/7", "update"),
    ("stops: [alternator]", "stops: alternator", "[alternator]"),
])
def test_the_usual_slip_is_hinted_at(old: str, new: str, hint: str) -> None:
    (problem,) = problems(changed(old, new))
    assert hint in problem.hint


@pytest.mark.parametrize(("old", "new"), [
    ("buses:\n  - {id: main-bus, rating: 600 A}", "buses: main-bus"),
    ("  - {id: main-bus, rating: 600 A}", "  - main-bus"),
    ("  - {id: main-bus, rating: 600 A}", "  - {rating: 600 A}"),
    ("buses:\n", "busses:\n"),
])
def test_what_could_not_be_read_is_not_missed_a_second_time(old: str, new: str) -> None:
    assert len(problems(changed(old, new))) == 1


@pytest.mark.parametrize("runs", [
    "all over the place", "[not a run]", "[{id: r, from: n, to: k, through: all over}]",
    "[{id: r, from: n, to: k, through: [all over]}]",
    "[{id: r, from: n, to: k, through: [{isolator: {id: s9}}]}]",
    "[{id: r, from: n, to: k, through: [{switch: {kind: relay}}]}]"])
def test_a_switch_in_a_run_that_could_not_be_read_is_not_missed(runs: str) -> None:
    text = ("format: installation-record/1\nbuses: [{id: n}, {id: k}]\n"
            f"management_systems: [{{id: m, outputs: [{{opens: [s9]}}]}}]\nruns: {runs}\n")
    assert "reference-unknown" not in {each.code for each in problems(text)}
    assert len(problems(text)) == 1


def test_a_list_of_parts_is_shown_by_its_first_keys() -> None:
    (problem,) = problems(changed("[{current: 20 kA, voltage: 160 V DC}]", "20 kA"))
    assert "[{current: …, voltage: …, time_constant: …}]" in problem.expected


def test_no_hint_is_better_than_a_silly_one() -> None:
    (problem,) = problems(changed("    chemistry: LFP", "    zzzz: LFP"))
    assert problem.hint == ""


def test_all_problems_of_a_record_come_at_once_and_in_order() -> None:
    text = LAUNCH
    for old, new in (("chemistry: LFP", "chemistry: [[choice-unknown]]lfp"),
                     ("rating: 600 A", "rating: [[unit-missing]]600"),
                     ("id: w2,", "id: [[id-twice]]w1,"),
                     ("place: locker", "place: [[reference-unknown]]attic"),
                     ("length: 0.35 m", "length: [[value-unlikely]]3 km"),
                     ("loads:", "[[key-unknown]]lodas:"),
                     ("to: inverter.positive", "to: inverter.[[terminal-unknown]]plus")):
        text = changed(old, new, text)
    plain, spots = unmarked(text)
    with pytest.raises(RecordRefused) as refused:
        read(plain)
    found = [spot(each) for each in refused.value.problems]
    assert found == sorted(spots, key=lambda each: each[1:])
    assert len(found) == 7


def test_a_second_use_of_an_id_names_the_first() -> None:
    (problem,) = problems(changed("id: w2,", "id: w1,"))
    assert "record.yaml:42:25" in problem.found


def test_problems_name_the_data_path() -> None:
    (problem,) = problems(changed("voltage: 160 V DC", "voltage: 160"))
    assert problem.place.path == "runs[0].through[1].fuse.breaks[0].voltage"


@pytest.mark.parametrize("line_end", ["\r\n", "\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_a_byte_order_mark_do_not_move_the_place(line_end: str, mark: str) -> None:
    text, spots = unmarked(changed("made: 2025-02-11", "mass: 23[[unit-comma]],5 kg"))
    assert [spot(each) for each in problems(mark + text.replace("\n", line_end))] == spots


@pytest.mark.parametrize(("text", "code"), [
    ("", "document-empty"), ("# only a comment\n", "document-empty"),
    ("- format: installation-record/1\n", "document-not-a-mapping"),
    ("installation-record/1\n", "document-not-a-mapping"),
    ("format: installation-record/1\nformat: installation-record/1\n", "duplicate-key"),
    ("format: installation-record/1\nvessel:\n\tname: a\n", "yaml-tab"),
])
def test_what_is_no_record_at_all_is_refused(text: str, code: str) -> None:
    assert [each.code for each in problems(text)] == [code]


@pytest.mark.parametrize("data", [None, [], "format", 3, {}])
def test_data_without_a_file_is_refused_too(data: object) -> None:
    from garboard.record import read_record

    with pytest.raises(RecordRefused) as refused:
        read_record(data)  # type: ignore[arg-type]
    assert all(each.place.line is None for each in refused.value.problems)


def test_data_without_a_file_gives_the_data_path() -> None:
    from garboard.record import read_record

    with pytest.raises(RecordRefused) as refused:
        read_record({"format": "installation-record/1", "buses": [{"id": "b", "rating": 5}]})
    assert [each.place.path for each in refused.value.problems] == ["buses[0].rating"]


KEYS_GALORE = "format: installation-record/1\nvessel:\n" + "".join(
    f"  key-{at}: 1\n" for at in range(3_000))
IDS_GALORE = ("format: installation-record/1\nplaces:\n" + "".join(
    f"  - {{id: place-{at}}}\n" for at in range(2_000)) + "batteries:\n" + "".join(
    f"  - {{id: b-{at}, place: plaec-{at}}}\n" for at in range(500)))


@pytest.mark.parametrize("text", [KEYS_GALORE, IDS_GALORE], ids=["keys", "ids"])
def test_a_file_of_nothing_but_slips_is_refused_at_a_hundred(text: str) -> None:
    found = problems(text)
    assert len(found) == 101
    assert [each.code for each in found].count("document-problems") == 1


def test_warnings_beyond_a_hundred_are_counted() -> None:
    things = "".join(f"  - {{id: b-{at}, rating: 600 kA}}\n" for at in range(250))
    warnings = problems(f"format: installation-record/1\nbuses:\n{things}")
    assert len(warnings) == 101
    assert [each.found for each in warnings if each.code == "more-warnings"] == ["150 more"]


def test_a_refusal_survives_pickling() -> None:
    with pytest.raises(Refused) as refused:
        read(changed("rating: 600 A", "rating: 600"))
    again: Refused = pickle.loads(pickle.dumps(refused.value))
    assert again.problems == refused.value.problems


def test_the_launch_itself_reads_without_a_word() -> None:
    assert problems(LAUNCH) == ()
    assert isinstance(Problem("key-unknown"), Problem)
