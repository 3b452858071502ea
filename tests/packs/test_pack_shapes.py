"""What is wrong with the shape of a pack is found, all of it at once, and at the right place."""

from __future__ import annotations

import pickle

import pytest

from garboard.errors import PackRefused
from garboard.packs import read_pack_text
from packs.bad_shapes import BAD_SHAPES, GOOD, changed


def problems(text: str) -> list[tuple[str, int | None, int | None]]:
    """Code, line and column of everything that is wrong with a pack."""
    with pytest.raises(PackRefused) as refused:
        read_pack_text(text, "tried.yaml")
    assert all(each.place.file == "tried.yaml" for each in refused.value.problems)
    return [(each.code, each.place.line, each.place.column) for each in refused.value.problems]


@pytest.mark.parametrize(("text", "expected"), [each[1:] for each in BAD_SHAPES],
                         ids=[each[0] for each in BAD_SHAPES])
def test_a_wrong_shape_is_refused_at_its_place(text: str, expected: list[object]) -> None:
    assert problems(text) == expected


def test_the_table_of_wrong_shapes_is_complete() -> None:
    assert len({name for name, *_ in BAD_SHAPES}) == len(BAD_SHAPES) >= 65


@pytest.mark.parametrize(("old", "new", "hint"), [
    ("severity: warning", "severity: warnign", "warning"),
    ("severity:", "severty:", "severity"),
    ("{basis: practice}", "{bassis: practice}", "basis"),
    ("rules:", "rulse:", "rules"),
])
def test_the_nearest_name_is_hinted_at(old: str, new: str, hint: str) -> None:
    with pytest.raises(PackRefused) as refused:
        read_pack_text(changed(old, new))
    assert any(hint in each.hint for each in refused.value.problems)


@pytest.mark.parametrize("version", ["1.0", "1", "2.10"])
def test_a_bare_version_is_told_to_go_in_quotes(version: str) -> None:
    with pytest.raises(PackRefused) as refused:
        read_pack_text(changed("0.1.0", version))
    assert "quotes" in refused.value.problems[0].hint


def test_an_id_used_twice_names_the_other_place() -> None:
    text = GOOD + GOOD[GOOD.index("  - id: one"):GOOD.index("limits:")].replace("- id", "- id")
    moved = text.replace("limits:\n  least: {value: 5 A, citation: {basis: house}}\n", "", 1)
    with pytest.raises(PackRefused) as refused:
        read_pack_text(moved, "tried.yaml")
    first, second = refused.value.problems
    assert str(second.place) in first.hint
    assert str(first.place) in second.hint


def test_a_document_without_a_stated_status_warns_only() -> None:
    pack = read_pack_text(changed("{basis: practice}",
                                  "{basis: comparison, source: A law, says: Do it.}"))
    (warning,) = pack.warnings
    assert (warning.code, warning.level) == ("citation-status", "warning")
    assert (warning.place.line, warning.place.column) == (11, 15)
    assert pack.rules[0].citation.standing == "not stated"


def test_a_refusal_survives_pickling() -> None:
    with pytest.raises(PackRefused) as refused:
        read_pack_text(changed("0.1.0", "1.0"))
    again = pickle.loads(pickle.dumps(refused.value))
    assert again.problems == refused.value.problems
