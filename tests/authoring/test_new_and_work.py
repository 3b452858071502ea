"""Starting a pack and trying a rule: what is written, what is worked out, what is refused."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from authoring.small_pack import bench, planted, workshop
from garboard.authoring import new_pack, proofread, work_on_given, work_on_record
from garboard.cli.main import run
from garboard.cli.pack_watch import stamps, watched
from garboard.documents import read_document, schema_problems, shipped_folder
from garboard.errors import CommandRefused, OutputRefused
from garboard.expressions import FAILED, NOT_ASSESSED, PASSED
from garboard.packs.files import pack_files
from garboard.packs.sealing.stray import stray_problems

LAUNCH = Path(__file__).parents[2] / "examples" / "river-survey-launch" / "after-as-fitted.yaml"


# new ---------------------------------------------------------------------------------------------
def test_a_new_pack_proves_itself(tmp_path: Path) -> None:
    new_pack("house-rules", tmp_path)
    assert run(["pack", "prove", str(tmp_path / "house-rules"), "--complete"]) == 0


def test_a_new_pack_has_no_warnings(tmp_path: Path) -> None:
    new_pack("house-rules", tmp_path)
    desk = bench(tmp_path / "house-rules")
    assert proofread(desk.checked, desk.book, workshop().vocabulary).warnings == ()
    assert (desk.checked.pack.name, len(desk.book.cases)) == ("house-rules", 9)


def test_every_file_names_a_schema_that_it_satisfies(tmp_path: Path) -> None:
    files = [file for file in new_pack("house-rules", tmp_path) if file.suffix == ".yaml"]
    assert len(files) == 4
    for file in files:
        _, _, named = file.read_text().partition("\n")[0].partition("$schema=")
        path, _, part = named.partition("#")
        schema = read_document(file.parent / path).data
        assert isinstance(schema, dict)
        if part:
            schema = {"$defs": schema["$defs"], "$ref": f"#{part}"}
        assert schema_problems(read_document(file), schema) == [], file


def test_its_schemas_are_those_that_are_shipped(tmp_path: Path) -> None:
    schemas = [file for file in new_pack("house-rules", tmp_path) if file.suffix == ".json"]
    assert len(schemas) == 3
    for file in schemas:
        assert file.read_bytes() == (shipped_folder("schemas") / file.name).read_bytes()


def test_nothing_is_written_over(tmp_path: Path) -> None:
    (tmp_path / "house-rules").mkdir()
    with pytest.raises(OutputRefused) as refused:
        new_pack("house-rules", tmp_path)
    assert [each.code for each in refused.value.problems] == ["pack-exists"]
    assert list((tmp_path / "house-rules").iterdir()) == []


@pytest.mark.parametrize("name", ["House", "house rules", "../house", "", ".", "a/b", "a_b"])
def test_a_name_no_pack_can_have(tmp_path: Path, name: str) -> None:
    with pytest.raises(CommandRefused) as refused:
        new_pack(name, tmp_path)
    assert [each.code for each in refused.value.problems] == ["pack-name-unfit"]
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    with pytest.raises(OutputRefused) as refused:
        new_pack("house-rules", tmp_path / "file")
    assert [each.code for each in refused.value.problems] == ["pack-not-written"]


# work --------------------------------------------------------------------------------------------
SHIPPED = Path("small-craft-lithium")
ON_PATH = "device.on_path_of_a_battery=yes"
DECLARED = ("device.undeclared_machine_current=0 A", "device.undeclared_charger_current=0 A")
OWN = "battery.own_device."
WORKED = [
    ("breaking-capacity", (ON_PATH, "device.breaking_capacity=20 kA", *DECLARED,
                           "device.prospective_current=20 kA"), PASSED),
    ("breaking-capacity", (ON_PATH, "device.breaking_capacity=20 kA", *DECLARED,
                           "device.prospective_current=20.1 kA"), FAILED),
    ("breaking-capacity", (ON_PATH, "device.breaking_capacity=20 kA", *DECLARED,
                           "device.prospective_current=19 kA .. 21 kA"), NOT_ASSESSED),
    ("breaking-capacity", (ON_PATH, "device.breaking_capacity=20 kA"), NOT_ASSESSED),
    ("breaking-capacity", ("device.on_path_of_a_battery=no",), "not applicable"),
    ("unprotected-length", ("battery.unprotected_length=8 in",
                            "battery.unprotected_zone_sheathed=no"), FAILED),
    ("unprotected-length", ("battery.unprotected_length=8 in", "unprotected_length_open=9 in",
                            "battery.unprotected_zone_sheathed=no"), PASSED),
    ("own-device-in-parallel", ("battery.is_paralleled=yes", "battery.own_device=none"), FAILED),
    ("own-device-in-parallel", ("battery.is_paralleled=yes", f"{OWN}breaking_capacity=20 kA",
                                f"{OWN}prospective_current=10 kA",
                                f"{OWN}undeclared_machine_current=1 kA",
                                f"{OWN}undeclared_charger_current=0 A"), PASSED),
    ("bus-carries-devices", ("bus.rating=100 A", "bus.runs[0].devices[0].rating=90 A",
                             "bus.runs[1].devices[1].rating=95 A"), NOT_ASSESSED),
    ("bus-carries-devices", ("bus.rating=100 A", "bus.current_let_by_devices=95 A",
                             "bus.runs[0].devices[0].rating=90 A"), PASSED),
    ("breaker-both-ways", ("device.kind=breaker", "device.run.use=charging",
                           "device.polarity_sensitive=not known"), NOT_ASSESSED),
    ("crew-instructed", ("wiring.crew_instructed=yes",), PASSED),
]


@pytest.mark.parametrize(("rule", "given", "outcome"), WORKED)
def test_worked_on_given(rule: str, given: tuple[str, ...], outcome: str) -> None:
    desk = bench(SHIPPED)
    number = [each.id for each in desk.checked.pack.rules].index(rule)
    assert work_on_given(desk.checked, number, given, workshop().vocabulary).row[2] == outcome


UNREADABLE = [
    ("device.rating", "given-unreadable"), ("device.rating=", "given-unreadable"),
    ("device.rating=200", "unit-missing"), ("device.rating=200 V", "unit-mismatch"),
    ("device.ratin=200 A", "given-unknown"), ("fuse.rating=200 A", "given-unknown"),
    ("device.rating.high=200 A", "given-unknown"), ("device=200 A", "given-unknown"),
    ("device.trip_free=maybe", "given-unreadable"), ("device.kind=fus", "given-unreadable"),
    ("device.poles=two", "given-unreadable"), ("device.run[0].use=load", "given-unreadable"),
    ("device.banks.id=b", "given-unreadable"), ("device.banks[999].id=b", "given-unreadable"),
    ("device.run=200 A", "given-unreadable"),
]


@pytest.mark.parametrize(("text", "code"), UNREADABLE)
def test_unreadable(text: str, code: str) -> None:
    desk = bench(SHIPPED)
    number = [each.id for each in desk.checked.pack.rules].index("breaking-capacity")
    with pytest.raises(CommandRefused) as refused:
        work_on_given(desk.checked, number, [text], workshop().vocabulary)
    assert [each.code for each in refused.value.problems] == [code]


def test_worked_on_a_record_gives_what_the_assessment_gives() -> None:
    desk, record = bench(SHIPPED), workshop().read_record(LAUNCH)
    number = [each.id for each in desk.checked.pack.rules].index("breaking-capacity")
    work = work_on_record(desk.checked, number, record, "f0", workshop().registry)
    assert (work.row[1], work.row[2]) == ("f0", FAILED)
    with pytest.raises(CommandRefused) as refused:
        work_on_record(desk.checked, number, record, "pack-1", workshop().registry)
    assert [each.code for each in refused.value.problems] == ["given-item"]


COMMANDS = [
    (("--given", ON_PATH), 0), (("--record", str(LAUNCH), "--item", "f0"), 0), ((), 0),
    (("--record", str(LAUNCH)), 3), (("--item", "f0"), 3),
    (("--given", ON_PATH, "--record", str(LAUNCH), "--item", "f0"), 3),
    (("--record", str(LAUNCH), "--item", "f99"), 3), (("--given", "x=1"), 3),
]


@pytest.mark.parametrize(("options", "code"), COMMANDS)
def test_work_command(options: tuple[str, ...], code: int,
                      capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["pack", "work", "small-craft-lithium", "breaking-capacity", *options]) == code
    assert ("outcome: " in capsys.readouterr().out) == (code == 0)


# watch -------------------------------------------------------------------------------------------
def test_saving_a_file_is_noticed(tmp_path: Path) -> None:
    pack = planted(tmp_path)
    before = stamps(pack)
    assert stamps(pack) == before
    assert {Path(file) for file in before} > set(pack_files(pack))
    os.utime(pack / "cases" / "base" / "small.yaml", ns=(1, 1))
    assert stamps(pack) != before


def test_every_save_is_proved_and_a_refusal_waited_out(
        tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
        capsys: pytest.CaptureFixture[str]) -> None:
    pack = planted(tmp_path)
    good = (pack / "pack.yaml").read_text()
    texts = [good.replace("device.rating", "device.ratin"), good + "# mended\n"]

    def save_instead_of_sleeping(_: float) -> None:
        (pack / "pack.yaml").write_text(texts.pop(0))

    monkeypatch.setattr("time.sleep", save_instead_of_sleeping)
    assert watched(workshop(), str(pack), None, rounds=3) == 0
    printed = capsys.readouterr().out
    assert printed.count("1 hold") == 2
    assert printed.count("expression-field") == 1


def test_a_name_that_a_shipped_pack_has_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CommandRefused) as refused:
        new_pack("small-craft-lithium", tmp_path)
    assert [each.code for each in refused.value.problems] == ["pack-name-unfit"]
    assert list(tmp_path.iterdir()) == []


def test_a_new_pack_can_be_sealed_as_it_is(tmp_path: Path) -> None:
    new_pack("first-rules", tmp_path)
    assert list(stray_problems(tmp_path / "first-rules")) == []
