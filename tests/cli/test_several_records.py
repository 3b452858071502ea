"""Several records at once: a table with a line for each, trails that never collide."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from garboard.cli.main import run

EXAMPLES = Path(__file__).parent.parent.parent / "examples"
BOATS = ("canal-boat", "day-launch", "tender")


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    for boat in BOATS:
        (tmp_path / boat).mkdir()
        shutil.copy(EXAMPLES / boat / "record.yaml", tmp_path / boat)
    monkeypatch.chdir(tmp_path)
    return [f"{boat}/record.yaml" for boat in BOATS]


def test_a_line_for_each_with_the_counts_of_its_trail(
        records: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    Path("wrong.yaml").write_text("format: installation-record/1\nbusses: []\n", "utf-8")
    assert run(["assess", *records, "wrong.yaml", "--pack", "insurer-standard-example"]) == 3
    out = capsys.readouterr().out
    for boat in BOATS:
        trail = json.loads(Path(f"{boat}-record.trail.json").read_text("utf-8"))
        findings = trail["assessment"]["findings"]
        failed = sum(each["outcome"] == "failed" for each in findings)
        word = trail["assessment"]["outcome"]["packs"][0]["acceptance"]["word"]
        before, _, _ = out.partition(f"{boat}/record.yaml")
        line = before.splitlines()[-1 if before.endswith("\n") else -2].split()
        assert (int(line[-5]), line[-1]) == (failed, word)
    assert "refused, see above: wrong.yaml" in out


def test_every_report_comes_with_all(
        records: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    run(["assess", *records, "--pack", "insurer-standard-example", "--all"])
    whole = capsys.readouterr().out
    assert whole.count("DIGESTS") == len(records)
    assert whole.index("3 RECORDS ASSESSED") > whole.rindex("DIGESTS")


def test_names_that_still_collide_are_refused(
        tmp_path: Path, records: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    again = tmp_path / "other" / "canal-boat"
    again.mkdir(parents=True)
    shutil.copy(records[0], again)
    assert run(["assess", records[0], "other/canal-boat/record.yaml",
                "--pack", "insurer-standard-example"]) == 3
    assert "trail-over-input" in capsys.readouterr().err
