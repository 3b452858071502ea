"""A record as read: things, lists, parts, runs and their ends, answers, evidence, places."""

from __future__ import annotations

from datetime import date

import pytest

from garboard.documents import read_text
from garboard.record import SUBJECTS, Record, read_record
from garboard.values import NOT_DETERMINABLE, Unknown
from record.launch import LAUNCH, changed, read

FORMAT = "format: installation-record/1\n"


@pytest.fixture(scope="module")
def launch() -> Record:
    return read(LAUNCH)


def test_every_thing_is_found_by_its_id(launch: Record) -> None:
    assert {thing.id: thing.subject for thing in launch.things.values()} == {
        "record": "record", "vessel": "vessel", "survey": "survey", "wiring": "wiring",
        "locker": "place", "engine-room": "place", "pack-1": "battery", "pack-2": "battery",
        "bms-1": "management_system", "main-bus": "bus", "alternator": "source",
        "inverter": "load", "pack-1-feed": "run", "w1": "conductor", "f1": "device",
        "w2": "conductor", "pack-2-feed": "run", "w3": "conductor", "inverter-feed": "run",
        "b1": "device", "s1": "switch", "w9": "conductor", "alternator-feed": "run"}
    assert all(key == thing.id for key, thing in launch.things.items())


def test_lists_keep_the_order_written(launch: Record) -> None:
    ids = {subject: [thing.id for thing in listed or ()] for subject, listed in
           launch.lists.items()}
    assert ids["conductor"] == ["w1", "w2", "w3", "w9"]
    assert ids["device"] == ["f1", "b1"]
    assert ids["battery"] == ["pack-1", "pack-2"]
    assert ids["vessel"] == ["vessel"]


def test_every_subject_that_is_recorded_has_a_list(launch: Record) -> None:
    assert set(launch.lists) == {name for name, subject in SUBJECTS.items()
                                 if not subject.derived and subject.part_of is None}


def test_a_list_left_out_is_not_recorded_and_an_empty_one_is_none_aboard() -> None:
    record = read(FORMAT + "batteries: []\n")
    assert record.lists["battery"] == ()
    for subject in ("load", "run", "conductor", "device", "switch", "vessel", "survey", "wiring"):
        assert record.lists[subject] is None


def test_runs_that_are_recorded_without_parts_have_none() -> None:
    record = read(FORMAT + "runs: []\n")
    assert record.lists["run"] == record.lists["device"] == record.lists["switch"] == ()


def test_things_without_a_list_are_there_even_where_nothing_is_recorded() -> None:
    record = read(FORMAT)
    for name in ("vessel", "survey", "wiring"):
        assert record.things[name].facts == {}
    assert record.things["record"].value("format") == "installation-record/1"


def test_a_run_keeps_its_parts_in_order(launch: Record) -> None:
    run = launch.things["pack-1-feed"]
    assert [part.id for part in run.groups["through"]] == ["w1", "f1", "w2"]
    assert launch.things["alternator-feed"].groups["through"] == ()


@pytest.mark.parametrize(("run", "ends"), [
    ("pack-1-feed", ("pack-1.positive", "main-bus")),
    ("pack-2-feed", ("pack-2.positive", "main-bus")),
    ("inverter-feed", ("main-bus", "inverter.positive")),
])
def test_the_ends_of_a_run_read_in_full(launch: Record, run: str, ends: tuple[str, str]) -> None:
    thing = launch.things[run]
    assert (thing.value("from"), thing.value("to")) == ends


def test_the_end_of_a_run_keeps_its_words(launch: Record) -> None:
    assert launch.things["pack-2-feed"].facts["from"].written == "pack-2"


def test_devices_say_what_they_are(launch: Record) -> None:
    assert launch.things["f1"].value("kind") == "fuse"
    assert launch.things["b1"].value("kind") == "breaker"


@pytest.mark.parametrize(("written", "value", "also"), [
    ("as outgoing", "as outgoing", {}), ("neglected", "neglected", {}),
    ("{size: 35 mm2, length: 2 m}", "stated", {"return.length": 2.0}),
    ("{resistance: 0.3 mΩ}", "stated", {"return.resistance": 0.0003}),
    ("{run: inverter-feed}", "own run", {"return.run": "inverter-feed"}),
])
def test_a_return_is_a_word_or_says_more(written: str, value: str, also: dict[str, object]) -> None:
    run = read(changed("{size: 50 mm2, length: 1.2 m}", written)).things["pack-2-feed"]
    assert run.value("return") == value
    assert {name: run.value(name) for name in also} == also


def test_a_return_may_be_not_determinable() -> None:
    run = read(changed("{size: 50 mm2, length: 1.2 m}",
                       "{not_determinable: behind the lining}")).things["pack-2-feed"]
    value = run.value("return")
    assert isinstance(value, Unknown)
    assert value.reason == NOT_DETERMINABLE
    assert value.paths == ("pack-2-feed.return",)


def test_a_return_that_is_not_recorded_gives_no_fact(launch: Record) -> None:
    assert "return" not in launch.things["pack-1-feed"].facts


def test_parts_have_an_id_that_leads_to_them(launch: Record) -> None:
    (output,) = launch.things["bms-1"].groups["outputs"]
    assert output.id == "bms-1.outputs[0]"
    assert output.subject == "management_system.outputs"
    assert output.value("stops") == ("alternator",)
    assert output.subject in SUBJECTS


def test_parts_inside_a_group_are_found_under_their_dotted_name() -> None:
    steps = "current_by_temperature: [{temperature: 0 .. 10 °C, current_max: 20 A}],"
    record = read(changed("current_max: 100 A,", steps))
    (step,) = record.things["pack-1"].groups["charge.current_by_temperature"]
    assert step.id == "pack-1.charge.current_by_temperature[0]"
    assert step.value("temperature.high") == 10.0


def test_answers_are_read_with_their_days(launch: Record) -> None:
    (answer,) = launch.answers["vent-path"]
    assert (answer.value, answer.by, answer.about) == ("yes", "A. Rower", None)
    assert (answer.on, answer.until) == (date(2026, 4, 18), date(2026, 10, 18))
    assert answer.evidence == ("photo-1",)


@pytest.mark.parametrize(("day", "holds"), [
    (date(2026, 4, 17), False), (date(2026, 4, 18), True), (date(2026, 10, 18), True),
    (date(2026, 10, 19), False)])
def test_an_answer_holds_from_its_first_day_to_the_end_of_its_last(
        launch: Record, day: date, holds: bool) -> None:
    assert launch.answers["vent-path"][0].holds_on(day) is holds


def test_an_answer_may_be_anything_and_about_several_things() -> None:
    text = FORMAT + ("batteries: [{id: a}, {id: b}]\n"
                     "answers:\n  pack/labels:\n    - {about: a, value: {words: [1, 2]}}\n"
                     "    - {about: b, value: null}\n")
    one, other = read(text).answers["pack/labels"]
    assert (one.about, one.value) == ("a", {"words": [1, 2]})
    assert (other.about, other.value) == ("b", None)


def test_evidence_stands_apart_from_what_is_aboard(launch: Record) -> None:
    assert launch.evidence["photo-1"].value("shows") == "the locker"
    assert "photo-1" not in launch.things


@pytest.mark.parametrize(("thing", "name", "line"), [
    ("f1", None, 43), ("f1", "rating", 43), ("pack-1", "charge.voltage_max", 17),
    ("pack-1", None, 9), ("pack-1", "charge.temperature.low", 17), ("vessel", "fuel", 2)])
def test_a_record_knows_where_things_stand(launch: Record, thing: str, name: str | None,
                                           line: int) -> None:
    place = launch.place(thing, name)
    assert (place.file, place.line) == ("record.yaml", line)


def test_data_without_a_file_reads_the_same() -> None:
    document = read_text(LAUNCH, "record.yaml")
    assert isinstance(document.data, dict)
    record = read_record(document.data)
    assert record.document is None
    assert set(record.things) == set(read(LAUNCH).things)
    assert record.place("f1", "rating").path == "runs[0].through[1].fuse.rating"


def test_the_data_as_written_is_kept_and_left_alone() -> None:
    document = read_text(LAUNCH, "record.yaml")
    before = repr(document.data)
    record = read_record(document)
    assert record.written is document.data
    assert repr(document.data) == before


@pytest.mark.parametrize("run", ["{id: link, from: a.negative, to: b.positive, through: []}",
                                 "{id: link, from: a.positive, to: b.positive, through: []}"])
def test_batteries_in_series_and_in_parallel_read(run: str) -> None:
    assert read(FORMAT + f"batteries: [{{id: a}}, {{id: b}}]\nruns:\n  - {run}\n").warnings == ()


@pytest.mark.parametrize(("runs", "ring"), [
    ([("a", "b"), ("b", "a")], "a to b to a"),
    ([("b", "c"), ("c", "a"), ("a", "b")], "a to b to c to a"),
    ([("d", "a"), ("b", "c"), ("c", "b")], "b to c to b"),
])
def test_a_ring_of_batteries_is_named_in_order(runs: list[tuple[str, str]], ring: str) -> None:
    from record.launch import problems

    text = FORMAT + "batteries: [{id: a}, {id: b}, {id: c}, {id: d}]\nruns:\n" + "".join(
        f"  - {{id: r{at}, from: {one}.negative, to: {other}.positive, through: []}}\n"
        for at, (one, other) in enumerate(runs))
    (problem,) = problems(text)
    assert (problem.code, problem.found) == ("series-circular", ring)


def test_batteries_in_parallel_strings_are_no_ring() -> None:
    text = FORMAT + "batteries: [{id: a}, {id: b}, {id: c}, {id: d}]\nruns:\n" + "".join(
        f"  - {{id: r{at}, from: {one}, to: {other}, through: []}}\n" for at, (one, other) in
        enumerate([("a.negative", "b.positive"), ("c.negative", "d.positive"),
                   ("a.positive", "c.positive"), ("b.negative", "d.negative")]))
    assert read(text).warnings == ()
