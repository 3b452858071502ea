"""Which files make up a pack, and which pack a name or path means."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from garboard.errors import PackRefused
from garboard.packs import find_pack, known_packs, read_pack
from packs.bad_shapes import GOOD, HEAD, LIMITS, RULE

OTHER_RULE = RULE.replace("id: one", "id: two")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A pack of three files."""
    pack = tmp_path / "shelf" / "tried"
    (pack / "rules").mkdir(parents=True)
    (pack / "pack.yaml").write_text(HEAD)
    (pack / "figures.yaml").write_text(LIMITS)
    (pack / "rules" / "first.yaml").write_text(RULE)
    return pack


def codes(act: Callable[[], object]) -> list[tuple[str, str | None]]:
    """Code and file name of what is refused."""
    with pytest.raises(PackRefused) as refused:
        act()
    return [(each.code, each.place.file and Path(each.place.file).name)
            for each in refused.value.problems]


def test_a_pack_is_its_head_and_what_lies_beside_and_in_rules(folder: Path) -> None:
    (folder / "rules" / "second.yaml").write_text(OTHER_RULE)
    (folder / "README.md").write_text("not a rule")
    (folder / "cases").mkdir()
    (folder / "cases" / "one.yaml").write_text("case: one\n")
    pack = read_pack(folder)
    assert [rule.id for rule in pack.rules] == ["one", "two"]
    assert list(pack.limits) == ["least"]


def test_the_head_of_a_pack_stands_for_its_folder(
        folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert find_pack(folder / "pack.yaml") == folder
    assert read_pack(folder / "pack.yaml") == read_pack(folder)
    monkeypatch.chdir(folder)
    assert read_pack(find_pack("pack.yaml")) == read_pack(folder)


def test_a_folder_that_cannot_be_listed_is_refused(
        folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def denied(path: Path) -> Iterator[Path]:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "iterdir", denied)
    assert codes(lambda: read_pack(folder)) == [("pack-unreadable", "tried")]


def test_a_single_file_is_a_pack(tmp_path: Path) -> None:
    (tmp_path / "whole.yaml").write_text(GOOD)
    assert read_pack(tmp_path / "whole.yaml").name == "tried"


def test_problems_of_all_files_come_together_in_order(folder: Path) -> None:
    (folder / "pack.yaml").write_text(HEAD.replace("0.1.0", "1.0"))
    (folder / "figures.yaml").write_text(LIMITS.replace("5 A", "5.5"))
    (folder / "rules" / "first.yaml").write_text(RULE.replace("warning", "grave"))
    assert codes(lambda: read_pack(folder)) == [
        ("limit-value", "figures.yaml"), ("pack-version", "pack.yaml"),
        ("choice-unknown", "first.yaml")]


def test_an_id_in_two_files_names_both(folder: Path) -> None:
    (folder / "rules" / "second.yaml").write_text(RULE)
    assert codes(lambda: read_pack(folder)) == [
        ("rule-twice", "first.yaml"), ("rule-twice", "second.yaml")]


def test_a_limit_in_two_files_names_both(folder: Path) -> None:
    (folder / "rules" / "second.yaml").write_text(LIMITS)
    assert codes(lambda: read_pack(folder)) == [
        ("limit-twice", "figures.yaml"), ("limit-twice", "second.yaml")]


@pytest.mark.parametrize(("text", "code"), [
    ("cases: []\n", "key-missing"), ("version: 0.1.0\nrules: []\n", "key-unknown"),
    ("ruels: []\n", "key-unknown"), ("- one\n", "document-not-a-mapping"),
])
def test_a_file_beside_the_head_holds_nothing_but_rules_and_limits(folder: Path, text: str,
                                                                   code: str) -> None:
    (folder / "more.yaml").write_text(text)
    assert (code, "more.yaml") in codes(lambda: read_pack(folder))


@pytest.mark.parametrize("name", ["rules/late.yml", "late.yml", "rules/deep/late.yaml"])
def test_a_file_that_would_be_overlooked_is_refused(folder: Path, name: str) -> None:
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_text(OTHER_RULE)
    assert codes(lambda: read_pack(folder)) == [("pack-file-overlooked", Path(name).name)]


@pytest.mark.parametrize("name", ["pack.yaml", "figures.yaml", "rules/first.yaml", "rules"])
def test_a_link_out_of_the_pack_is_refused(folder: Path, tmp_path: Path, name: str) -> None:
    elsewhere = tmp_path / "elsewhere"
    (folder / name).rename(elsewhere)
    (folder / name).symlink_to(elsewhere)
    assert [code for code, _ in codes(lambda: read_pack(folder))] == ["pack-path-climbs"]


def test_a_pack_may_itself_be_linked_to(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(folder)
    assert read_pack(tmp_path / "link") == read_pack(folder)


def test_unreadable_files_are_all_named(folder: Path) -> None:
    (folder / "pack.yaml").write_text("format: [\n")
    (folder / "rules" / "first.yaml").write_text("rules: {\n")
    files = {file for _, file in codes(lambda: read_pack(folder))}
    assert files == {"pack.yaml", "first.yaml"}


def test_a_name_is_found_on_the_shelf(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "shelf" / "small.yaml").write_text(GOOD)
    shelf = [tmp_path / "nothing-here", tmp_path / "shelf"]
    assert find_pack("tried", shelf) == folder
    assert find_pack("small", shelf) == tmp_path / "shelf" / "small.yaml"
    assert known_packs(shelf) == ("small", "tried")


def test_a_name_means_the_shelf_before_the_working_folder(
        folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "tried").mkdir()
    (tmp_path / "tried" / "pack.yaml").write_text(GOOD)
    monkeypatch.chdir(tmp_path)
    assert find_pack("tried", [tmp_path / "shelf"]) == folder
    assert find_pack("./tried", [tmp_path / "shelf"]) == Path("tried")
    assert find_pack("tried") == Path("tried")


@pytest.mark.parametrize("name", ["treid", "/nowhere/at/all", "../tried", "", "\0", "a" * 5000])
def test_an_unknown_pack_is_refused_with_what_is_known(folder: Path, name: str) -> None:
    with pytest.raises(PackRefused) as refused:
        find_pack(name, [folder.parent])
    (problem,) = refused.value.problems
    assert problem.code == "pack-not-found"
    assert "known packs: tried" in problem.hint


def test_the_nearest_name_is_hinted_at(folder: Path) -> None:
    with pytest.raises(PackRefused) as refused:
        find_pack("treid", [folder.parent])
    assert "did you mean 'tried'?" in refused.value.problems[0].hint


def test_a_folder_without_a_head_is_refused(tmp_path: Path) -> None:
    assert [code for code, _ in codes(lambda: find_pack(tmp_path))] == ["pack-head-missing"]
