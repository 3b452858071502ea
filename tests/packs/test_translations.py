"""Texts of a pack in further languages: read, layered, told, and never part of a verdict."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from authoring.small_pack import workshop
from garboard.cli.main import run
from garboard.errors import CommandRefused, PackRefused
from garboard.reports.language import UNTRANSLATED, in_language, languages_of, told_pack
from garboard.trail import Trail, read_trail

HEAD = "format: rule-pack/1\npack: house\nversion: 1.0.0\ntitle: House\n"
RULE = """\
rules:
  - id: covered
    title: It is covered
    about: battery
    must_hold: battery.terminal_cover
    severity: warning
    citation: {basis: house}
    why: It sparks.
    recommendation: Cover it.
"""
GERMAN = "    translations:\n      de: {title: Sie ist abgedeckt, why: Es funkt.}\n"
LAUNCH = (Path(__file__).parent.parent.parent / "examples" / "river-survey-launch"
          / "after-as-fitted.yaml")


def loaded(folder: Path, text: str, name: str = "house") -> Any:
    (folder / name).mkdir(exist_ok=True)
    (folder / name / "pack.yaml").write_text(text, "utf-8")
    return workshop().load_packs([folder / name])[0].pack


def spots(folder: Path, text: str) -> list[tuple[str, int | None, int | None]]:
    with pytest.raises(PackRefused) as refused:
        loaded(folder, text)
    return [(each.code, each.place.line, each.place.column) for each in refused.value.problems]


@pytest.mark.parametrize(("written", "expected"), [
    ("    translations: {de: {titel: Abgedeckt}}\n", [("key-unknown", 14, 25)]),
    ("    translations: {german: {title: Abgedeckt}}\n", [("language-malformed", 14, 20)]),
    ("    translations: {DE: {title: Abgedeckt}}\n", [("language-malformed", 14, 20)]),
    ("    translations: {de: {title: ' '}}\n", [("value-empty", 14, 32)]),
    ("    translations: {de: {}}\n", [("value-empty", 14, 20)]),
    ("    translations: {}\n", [("value-empty", 14, 19)]),
    ("    translations: {de: {left_to_a_person: Der Rest}}\n",
     [("translation-of-nothing", 14, 25)]),
])
def test_refused(tmp_path: Path, written: str, expected: list[tuple[str, int, int]]) -> None:
    assert spots(tmp_path, HEAD + RULE + written) == expected


def test_a_language_is_told_with_marks_where_it_lacks_a_text(tmp_path: Path) -> None:
    resolved = loaded(tmp_path, HEAD + RULE + GERMAN).as_data()
    assert languages_of(resolved) == ("de",)
    for tag in ("de", "de-AT", "de-Latn-AT"):
        (rule,) = told_pack(resolved, tag)["rules"]
        assert (rule["title"], rule["why"]) == ("Sie ist abgedeckt", "Es funkt.")
        assert rule["recommendation"] == f"{UNTRANSLATED}Cover it."
    with pytest.raises(CommandRefused) as refused:
        told_pack(resolved, "fr")
    assert refused.value.problems[0].code == "language-unknown"
    assert refused.value.problems[0].expected == "de"


LAYER = ("format: rule-pack/1\npack: above\nversion: 1.0.0\ntitle: Above\n"
         "builds_on: [{pack: house, from: 1.0.0, before: 2.0.0}]\nchanges:\n")


def test_a_text_set_anew_loses_its_translation(tmp_path: Path) -> None:
    loaded(tmp_path, HEAD + RULE + GERMAN)
    above = loaded(tmp_path, LAYER + "  - {rule: covered, title: It has a lid}\n", "above")
    (rule,) = above.as_data()["rules"]
    assert rule["translations"] == {"de": {"why": "Es funkt."}}


def test_a_layer_translates_what_lies_below(tmp_path: Path) -> None:
    loaded(tmp_path, HEAD + RULE + GERMAN)
    above = loaded(tmp_path, LAYER + "  - rule: covered\n    translations:\n"
                   "      de: {recommendation: Abdecken.}\n      fr: {title: Elle est couverte}\n",
                   "above")
    (rule,) = above.as_data()["rules"]
    assert rule["translations"] == {
        "de": {"title": "Sie ist abgedeckt", "why": "Es funkt.", "recommendation": "Abdecken."},
        "fr": {"title": "Elle est couverte"}}


@pytest.fixture(scope="module")
def trail(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("trails") / "launch.trail.json"
    packs = workshop().load_packs(["small-craft-lithium"])
    workshop().assess(LAUNCH, packs).write(file)
    return file


def test_what_is_hashed_does_not_depend_on_the_language(
        trail: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said = tmp_path / "german.trail.json"
    run(["assess", str(LAUNCH), "--pack", "small-craft-lithium", "--trail", str(said),
         "--language", "de"])
    plain, german = read_trail(trail), read_trail(said)
    assert plain.canonical == german.canonical
    assert in_language(plain, "de").digest == plain.digest
    assert "Ein Schutzorgan kann" in capsys.readouterr().out


@pytest.mark.parametrize("ending", ["html", "csv", "md", "xml", "jsonld", "xlsx"])
def test_every_report_tells_the_language(trail: Path, tmp_path: Path, ending: str) -> None:
    for language in ("", "de"):
        to = tmp_path / f"launch{language}.{ending}"
        more = ["--language", language] if language else []
        assert run(["report", str(trail), "--to", str(to), *more]) == 0
        if ending != "xlsx":
            text = to.read_text("utf-8")
            if ending == "jsonld":
                text = json.dumps(json.loads(text), ensure_ascii=False)
            assert ("Ein Schutzorgan kann" in text) is bool(language)
            assert (UNTRANSLATED.strip(" []") in text) is bool(language)


def test_a_verdict_never_depends_on_the_language(trail: Path) -> None:
    plain = read_trail(trail)
    german: Trail = in_language(plain, "de")
    assert german.findings == plain.findings
    assert german.outcome == plain.outcome


def test_working_and_comparison_tell_the_language(
        trail: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["working", str(trail), "breaking-capacity", "f0", "--no-search",
                "--language", "de"]) == 0
    assert "Lichtbogen" in capsys.readouterr().out
    run(["compare", str(trail), str(trail), "--language", "de"])
    assert "Ein Schutzorgan kann" in capsys.readouterr().out
    assert run(["working", str(trail), "breaking-capacity", "f0", "--language", "fr"]) == 3
    assert "language-unknown" in capsys.readouterr().err


HOSTILE = "<script>alert(1)</script> {{ 7 * 7 }} \u202egnitsrever"


def test_hostile_texts_in_a_translation_stay_text(tmp_path: Path,
                                                  capsys: pytest.CaptureFixture[str]) -> None:
    text = HEAD + RULE + f"    translations:\n      de: {{title: {json.dumps(HOSTILE)}}}\n"
    loaded(tmp_path, text)
    record = tmp_path / "boat.yaml"
    record.write_text("format: installation-record/1\nsurvey: {date: 2026-04-18}\n"
                      "batteries: [{id: b, terminal_cover: no}]\n", "utf-8")
    trail = tmp_path / "boat.trail.json"
    run(["assess", str(record), "--pack", str(tmp_path / "house"), "--trail", str(trail),
         "--language", "de"])
    shown = capsys.readouterr().out
    assert "\u202e" not in shown
    assert run(["report", str(trail), "--to", str(tmp_path / "boat.html"),
                "--language", "de"]) == 0
    page = (tmp_path / "boat.html").read_text("utf-8")
    assert "<script>alert(1)" not in page and "\u202e" not in page
    assert "{{ 7 * 7 }}" in page
