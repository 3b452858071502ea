"""Where values stand: keys, items, missing parts, and characters inside texts of every style."""

from __future__ import annotations

import json
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.documents import Document, path_text, read_text

Path = list[str | int]

RECORD = """\
# a comment
format: record/1
vessel: {name: "Marsh Harrier", length: 10.5 m}

batteries:
  - id: pack-1
    charge:
      voltage_max: 29.2 V
      current_max:
  -
    id: pack-2
    tags: [x, {y: z}]
loads: []
note: |
  two
  lines
"""
#: path, key asked for, line, column, underlined length
PLACES: list[tuple[Path, bool, int, int, int]] = [
    ([], False, 2, 1, 1),
    (["format"], False, 2, 9, 8),
    (["format"], True, 2, 1, 6),
    (["vessel"], False, 3, 9, 39),
    (["vessel", "name"], False, 3, 16, 15),
    (["vessel", "length"], True, 3, 33, 6),
    (["batteries"], False, 5, 1, 9),
    (["batteries", 0], False, 6, 5, 1),
    (["batteries", 0], True, 6, 5, 1),
    (["batteries", 0, "id"], False, 6, 9, 6),
    (["batteries", 0, "charge"], False, 7, 5, 6),
    (["batteries", 0, "charge", "voltage_max"], False, 8, 20, 6),
    (["batteries", 0, "charge", "current_max"], False, 9, 7, 11),
    (["batteries", 0, "charge", "missing"], False, 7, 5, 6),
    (["batteries", 0, "charge", "missing", 3, "more"], True, 7, 5, 6),
    (["batteries", 0, "id", "missing"], False, 6, 5, 2),
    (["batteries", 0, "missing"], False, 6, 5, 1),
    (["batteries", 1], False, 11, 5, 1),
    (["batteries", 1, "tags", 1, "y"], False, 12, 19, 1),
    (["batteries", 1, "tags", 7], False, 12, 5, 4),
    (["batteries", 2], False, 5, 1, 9),
    (["loads"], False, 13, 8, 2),
    (["loads", 0], False, 13, 1, 5),
    (["note"], False, 14, 7, 1),
    (["missing"], True, 2, 1, 1),
]


@pytest.mark.parametrize(("path", "key", "line", "column", "length"), PLACES)
@pytest.mark.parametrize("ending", ["\n", "\r\n"], ids=["LF", "CRLF"])
def test_places(path: Path, key: bool, line: int, column: int, length: int, ending: str) -> None:
    place = read_text(RECORD.replace("\n", ending), "r.yaml").place(path, key=key)
    assert (place.line, place.column, place.length) == (line, column, length)
    assert place.source == RECORD.split("\n")[line - 1]
    assert (place.file, place.path) == ("r.yaml", path_text(path) or None)


def walk(data: object, path: Path) -> list[Path]:
    found = [path]
    members = data.items() if isinstance(data, dict) else \
        enumerate(data) if isinstance(data, list) else ()
    for step, value in members:
        found += walk(value, [*path, step])
    return found


@pytest.mark.parametrize("indent", [None, 2])
def test_places_in_json_are_those_of_the_same_text_read_as_yaml(indent: int | None) -> None:
    text = json.dumps(read_text(RECORD).data, indent=indent, ensure_ascii=False)
    as_json, as_yaml = read_text(text, "r.json"), read_text("# YAML\n" + text, "r.json.yaml")
    paths = walk(as_json.data, [])
    assert len(paths) > 15
    for path in paths:
        for key in (False, True):
            one, other = as_json.place(path, key=key), as_yaml.place(path, key=key)
            assert (one.line, one.column, one.source, one.length) == (
                (other.line or 0) - 1, other.column, other.source, other.length)


def test_places_survive_pickling() -> None:
    for document in (read_text(RECORD), read_text('{"a": [1, {"b": "x"}]}')):
        again: Document = pickle.loads(pickle.dumps(document))
        assert (again.data, again.digest) == (document.data, document.digest)
        for path in walk(document.data, []):
            assert again.place(path) == document.place(path)


def test_a_value_behind_an_alias_stands_at_its_anchor() -> None:
    document = read_text("a: &x {b: 1}\nc: *x\n")
    assert document.place(["c", "b"]).line == 1
    assert document.place(["c"], key=True).line == 2


def test_marks_before_a_value_are_not_part_of_it() -> None:
    place = read_text("a: &name  12 V\n").place(["a"])
    assert (place.column, place.length) == (11, 4)


@pytest.mark.parametrize(("path", "text"), [
    ([], ""), (["a"], "a"), (["runs", 0, "through", 1, "fuse", "rating"],
                             "runs[0].through[1].fuse.rating"),
    ([0, "a"], "[0].a"), (["a b", "c.d", 'e"\\'], '["a b"]["c.d"]["e\\"\\\\"]'),
    (["a", ""], 'a[""]')])
def test_path_text(path: Path, text: str) -> None:
    assert path_text(path) == text


# inside texts -----------------------------------------------------------------------------------
#: Each text holds the value under ``a``; the mark | in the value stands for the offset asked for,
#: and | in the text for the spot that must be found (neither is part of it).
INSIDE = {
    "plain": ("a: one t¦wo", "one t¦wo"),
    "plain in braces": ("{x: 1, a: one t¦wo, b: 2}", "one t¦wo"),
    "plain over lines": ("a: one\n   two\n\n   t¦hree", "one two\nt¦hree"),
    "plain, at a fold": ("a: one¦\n   two", "one¦ two"),
    "plain, at a fold behind blanks": ("a: one  ¦\n   two", "one¦ two"),
    "plain, at a kept break": ("a: one\n¦\n   two", "one¦\ntwo"),
    "plain, behind its end": ("a: one¦\nb: 2", "one¦"),
    "single quotes": ("a: 'it''s ¦so'", "it's ¦so"),
    "single quotes, the doubled one": ("a: 'it¦''s'", "it¦'s"),
    "single quotes over lines": ("a: 'one  \n  \n   t¦wo'", "one\nt¦wo"),
    "single quotes with tabs": ("a: 'one\tt¦wo'", "one\tt¦wo"),
    "double quotes": ('a: "one ¦two"', "one ¦two"),
    "double quotes, at the end": ('a: "one¦"', "one¦"),
    "an escape before": ('a: "1 \\u03a9 ¦x"', "1 Ω ¦x"),
    "at an escape": ('a: "1 ¦\\u03a9 x"', "1 ¦Ω x"),
    "short and long escapes": ('a: "\\t\\\\\\"\\x41\\U0001F600¦b"', '\t\\"A\U0001f600¦b'),
    "an escaped line break": ('a: "one \\\n   t¦wo"', "one t¦wo"),
    "an escaped line break and blank lines": ('a: "one\\\n\n   t¦wo"', "one\nt¦wo"),
    "double quotes over lines": ('a: "one\n\n\n  t¦wo"', "one\n\nt¦wo"),
    "literal": ("a: |\n  one\n  t¦wo\n", "one\nt¦wo\n"),
    "literal, at a break": ("a: |\n  one¦\n  two\n", "one¦\ntwo\n"),
    "literal, the last break": ("a: |\n  one¦\n", "one¦\n"),
    "literal with deeper lines": ("a: |\n  one\n    t¦wo\n", "one\n  t¦wo\n"),
    "literal with a depth": ("a: |2\n    o¦ne\n", "  o¦ne\n"),
    "literal kept": ("a: |+\n  one\n¦\n\nb: 1", "one\n¦\n\n"),
    "literal stripped": ("a: |-\n  one\n  t¦wo\n\n", "one\nt¦wo"),
    "literal stripped, behind its end": ("a: |-\n  one¦\n", "one¦"),
    "literal with tabs": ("a: |\n  o\tn¦e\n", "o\tn¦e\n"),
    "literal with a comment": ("a: | # note - +\n  o¦ne\n", "o¦ne\n"),
    "literal with blank lines first": ("a: |\n\n  o¦ne\n", "\no¦ne\n"),
    "literal in a list": ("a:\n- |\n o¦ne\n", "o¦ne\n"),
    "folded": ("a: >\n  one\n  t¦wo\n", "one t¦wo\n"),
    "folded, at a fold": ("a: >\n  one¦\n  two\n", "one¦ two\n"),
    "folded with blank lines": ("a: >\n  one\n\n\n  t¦wo\n", "one\n\nt¦wo\n"),
    "folded with deeper lines": ("a: >\n  one\n    two\n  t¦hree\n", "one\n  two\nt¦hree\n"),
    "folded, blank lines beside deeper ones": (
        "a: >\n  one\n\n    two\n\n  t¦hree\n", "one\n\n  two\n\nt¦hree\n"),
    "folded and stripped": ("a: >-\n  one\n  t¦wo", "one t¦wo"),
    "folded and kept": ("a: >+\n  one\n  two\n¦\n", "one two\n¦\n"),
    "a number": ("a: 1¦2.50", "1¦2.50"),
    "an anchor before": ("a: &x one t¦wo", "one t¦wo"),
    "an anchor and a comment before": ("a: &x # note\n  # more\n  one t¦wo", "one t¦wo"),
    "an anchor before, in brackets": ("a: [&x o¦ne, 1]", "o¦ne"),
}


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"], ids=["LF", "CRLF", "CR"])
@pytest.mark.parametrize("case", INSIDE.values(), ids=INSIDE.keys())
def test_inside_a_text(case: tuple[str, str], ending: str) -> None:
    text, value = case
    path: Path = ["a", 0] if text.startswith(("a:\n-", "a: [")) else ["a"]
    before = text.split("¦")[0]
    document = read_text(text.replace("¦", "").replace("\n", ending))
    assert document.written(path) == value.replace("¦", "")
    place = document.place(path, offset=value.index("¦"))
    assert (place.line, place.column) == (
        before.count("\n") + 1, len(before) - (before.rfind("\n") + 1) + 1)


@pytest.mark.parametrize(("text", "offset", "column"), [
    ('{"a": "one"}', 0, 8), ('{"a": "one"}', 2, 10), ('{"a": "one"}', 3, 11),
    ('{"a": "\\u03a9\\n\\"x"}', 1, 14), ('{"a": "\\u03a9\\n\\"x"}', 3, 18),
    ('{"a": "\\ud83d\\ude00x"}', 1, 20), ('{"a": 12.5}', 2, 9), ('{"a": "one"}', 99, 11),
    ('{"a": "one"}', -1, 7)])
def test_inside_a_json_text(text: str, offset: int, column: int) -> None:
    assert read_text(text, "x.json").place(["a"], offset=offset).column == column


def traced(document: Document, value: str) -> list[int]:
    """The indexes of all characters of the value, from their lines and columns."""
    lines = document.text.split("\n")
    starts = [sum(len(line) + 1 for line in lines[:number]) for number in range(len(lines))]
    places = [document.place(["a"], offset=offset) for offset in range(len(value))]
    return [starts[(place.line or 0) - 1] + (place.column or 0) - 1 for place in places]


@given(st.lists(st.text("xy' \t", max_size=4), min_size=1, max_size=6),
       st.sampled_from(["|", ">", "|-", ">-", "|+", ">+", "'", "plain"]))
def test_every_character_of_a_text_is_traced_to_itself(lines: list[str], style: str) -> None:
    if style == "plain":
        written = "a: w" + "\n  ".join(line.replace("\t", " ").replace("'", "") for line in lines)
    elif style == "'":
        written = "a: 'w" + "\n  ".join(line.replace("'", "''") for line in lines) + "'"
    else:
        written = f"a: {style}\n  w\n" + "".join(f"  {line}\n" for line in lines)
    document = read_text(written)
    value = document.written(["a"])
    assert value is not None
    indexes = traced(document, value)
    assert indexes == sorted(set(indexes))
    for character, index in zip(value, indexes, strict=True):
        assert written[index] == character or (character == " " and written[index] == "\n")
