"""The chain of a vessel's trails: whole, with gaps, forks, another vessel; and what is refused."""

from __future__ import annotations

import json
from collections.abc import Callable
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest

from cli.ran import Ran
from garboard.reports import history_of
from garboard.trail import Trail, digest_of, read_trail

MAKING = Path(__file__).parent / "making"
PACK = ("--pack", MAKING / "kept-layer.yaml")


@pytest.fixture
def assess(garboard: Callable[..., Ran]) -> Callable[..., Ran]:
    def assessed(name: str, day: str, previous: str | None = None,
                 vessel: str = "Sand Martin") -> Ran:
        text = (MAKING / "record.yaml").read_text("utf-8").replace("Sand Martin", vessel)
        Path("record.yaml").write_text(text, "utf-8")
        named = () if previous is None else ("--previous", previous)
        return garboard("assess", "record.yaml", *PACK, "--on", day, "--trail", name, *named)

    return assessed


@pytest.fixture
def three(assess: Callable[..., Ran]) -> list[str]:
    names = ["a.json", "b.json", "c.json"]
    for number, name in enumerate(names):
        ran = assess(name, f"202{number + 4}-05-04", names[number - 1] if number else None)
        assert ran.code == 1, ran.err
    return names


def history(garboard: Callable[..., Ran], code: int, *files: str) -> dict[str, Any]:
    ran = garboard("trail", "history", *files, "--json")
    assert ran.code == code, ran.err
    result: dict[str, Any] = json.loads(ran.out)
    assert result["whole"] is (code == 0)
    assert result["does_not_prove"]
    return result


def test_a_whole_chain_in_whatever_order(garboard: Callable[..., Ran], three: list[str]) -> None:
    for files in permutations(three):
        found = history(garboard, 0, *files)["assessments"]
        assert [each["file"] for each in found] == three
    assert len(history(garboard, 0, *three, *three)["assessments"]) == 3
    text = garboard("trail", "history", *three).out
    assert "the file, not the boat" in " ".join(text.split())


def test_the_previous_digest_is_covered_by_the_digest_and_by_the_replay(
        garboard: Callable[..., Ran], three: list[str]) -> None:
    document = json.loads(Path("b.json").read_text("utf-8"))
    assert document["assessment"]["previous"] == read_trail(Path("a.json")).digest
    assert garboard("replay", "b.json").code == 0
    document["assessment"]["previous"] = "sha256:" + "0" * 64
    Path("d.json").write_text(json.dumps(document), "utf-8")
    assert "trail-digest-wrong" in garboard("trail", "history", "d.json").err


def test_a_gap(garboard: Callable[..., Ran], three: list[str]) -> None:
    found = history(garboard, 1, "a.json", "c.json")["assessments"]
    assert [len(each["problems"]) for each in found] == [0, 1]


def test_a_fork(garboard: Callable[..., Ran], assess: Callable[..., Ran],
                three: list[str]) -> None:
    assess("other.json", "2026-06-01", "b.json")
    found = history(garboard, 1, *three, "other.json")["assessments"]
    assert [len(each["problems"]) for each in found] == [0, 0, 1, 1]


def test_two_that_name_none(garboard: Callable[..., Ran], assess: Callable[..., Ran],
                            three: list[str]) -> None:
    assess("other.json", "2027-06-01")
    found = history(garboard, 1, *three, "other.json")["assessments"]
    assert sorted(len(each["problems"]) for each in found) == [0, 0, 1, 1]


@pytest.mark.parametrize(("day", "vessel", "code"), [
    ("2023-05-04", "Sand Martin", "previous-later"), ("2026-05-04", "Swift",
                                                      "previous-other-vessel")])
def test_what_cannot_be_the_previous_one(assess: Callable[..., Ran], three: list[str], day: str,
                                         vessel: str, code: str) -> None:
    ran = assess("x.json", day, "b.json", vessel)
    assert ran.code == 3
    assert code in ran.err
    assert not Path("x.json").exists()


def test_the_trail_does_not_take_the_place_of_the_previous_one(
        assess: Callable[..., Ran], three: list[str]) -> None:
    ran = assess("b.json", "2026-05-04", "b.json")
    assert ran.code == 3
    assert "trail-over-input" in ran.err


@pytest.mark.parametrize("change", [("date", "2030-01-01"), ("vessel", "Swift")])
def test_a_chain_made_otherwise_is_not_believed(three: list[str],
                                                change: tuple[str, str]) -> None:
    """One that this program would not have made: digests right, but days or vessels are not."""
    first, second = (json.loads(Path(name).read_text("utf-8")) for name in three[:2])
    what, to = change
    if what == "date":
        first["assessment"]["date"] = to
    else:
        first["assessment"]["record"]["read"]["vessel.name"]["value"] = to
    first["digest"] = digest_of(first["assessment"])
    second["assessment"]["previous"] = first["digest"]
    second["digest"] = digest_of(second["assessment"])
    links = history_of([("b", Trail(second, b"")), ("a", Trail(first, b""))]).links
    assert [len(each.problems) for each in links] == [0, 1]


# several records --------------------------------------------------------------------------------
def test_several_records_give_one_list_with_refusals(garboard: Callable[..., Ran]) -> None:
    Path("good.yaml").write_text((MAKING / "record.yaml").read_text("utf-8"), "utf-8")
    Path("bad.yaml").write_text("format: installation-record/1\nvessle: {}\n", "utf-8")
    ran = garboard("assess", "good.yaml", "bad.yaml", *PACK, "--json")
    assert ran.code == 3
    good, bad = json.loads(ran.out)
    assert (good["record"], good["trail_file"]) == ("good.yaml", "good.trail.json")
    assert good["summary"]["trail"] == read_trail(Path("good.trail.json")).digest
    assert bad["record"] == "bad.yaml"
    assert [each["code"] for each in bad["refused"]] == ["key-unknown"]
    assert bad["refused"][0]["line"] == 2


def test_further_files_of_one_trail_are_named() -> None:
    trail = Trail({"digest": "sha256:1", "assessment": {"packs": [], "date": "2026-04-18"}}, b"")
    (link,) = history_of([("a", trail), ("b", trail), ("c", trail)]).links
    assert (link.file, link.copies) == ("a", ("b", "c"))
