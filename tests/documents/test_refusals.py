"""Everything a text can get wrong: the code and the place of each."""

from __future__ import annotations

import json

import pytest

from documents.refusals import JSON, YAML, Refusal
from garboard.documents import DEFAULT_LIMITS, Limits, read_text
from garboard.errors import CATALOGUE, DocumentRefused, Problem


def refused(text: str, file: str = "x.yaml", limits: Limits = DEFAULT_LIMITS) -> list[Problem]:
    with pytest.raises(DocumentRefused) as caught:
        read_text(text, file, limits)
    str(caught.value)  # every problem can be shown
    return list(caught.value.problems)


@pytest.mark.parametrize("case", YAML.values(), ids=YAML.keys())
def test_yaml(case: Refusal) -> None:
    first, *others = refused(case.text)
    assert (first.code, first.place.line, first.place.column) == (
        case.code, case.line, case.column)
    assert not others


@pytest.mark.parametrize("case", JSON.values(), ids=JSON.keys())
def test_json(case: Refusal) -> None:
    first, *others = refused(case.text, "x.json")
    assert (first.code, first.place.line, first.place.column) == (
        case.code, case.line, case.column)
    assert not others


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"], ids=["LF", "CRLF", "CR"])
@pytest.mark.parametrize("mark", ["", "\ufeff"], ids=["bare", "BOM"])
def test_places_do_not_depend_on_line_ends_or_a_byte_order_mark(ending: str, mark: str) -> None:
    text = mark + "a: 1\n# Ω\nb:\n  - 2\n  - b: 3\n    b: 4\n".replace("\n", ending)
    [problem] = refused(text)
    assert (problem.code, problem.place.line, problem.place.column) == ("duplicate-key", 6, 5)
    assert problem.place.path == "b[1].b"
    assert problem.place.source == "    b: 4"


def test_all_problems_are_told_at_once_in_order() -> None:
    problems = refused("a: !x 1\nb: {c: 1, c: 2}\n7: d\ne: *f\ng: 1: 2\n")
    assert [(p.code, p.place.line) for p in problems] == [
        ("yaml-tag", 1), ("duplicate-key", 2), ("key-not-text", 3), ("yaml-alias-unknown", 4),
        ("yaml-colon", 5)]
    problems = refused('{"a": NaN, "b": {"c": 1, "c": 2},\n"d": 1e999}', "x.json")
    assert [p.code for p in problems] == ["json-not-finite", "duplicate-key", "document-number"]


@pytest.mark.parametrize("file", ["x.yaml", "x.json"])
def test_the_list_of_problems_has_a_limit(file: str) -> None:
    text = "{" + ",".join('"a": 1' for _ in range(500)) + "}"
    problems = refused(text, file, Limits(problems=7))
    assert len(problems) == 8
    assert "document-problems" in {problem.code for problem in problems}


# limits -----------------------------------------------------------------------------------------
@pytest.mark.parametrize("levels", [5, 6])
@pytest.mark.parametrize("kind", ["block", "flow", "dashes", "json", "json-list", "alias"])
def test_depth_exactly_at_its_limit(kind: str, levels: int) -> None:
    text = {
        "block": "".join("  " * n + "a:\n" for n in range(levels - 1)) + "  " * levels + "a: 1",
        "flow": "x: " + "[" * (levels - 1) + "]" * (levels - 1),
        "dashes": "- " * levels + "1",
        "json": '{"a":' * (levels - 1) + '{"b[{\\"[[": 1}' + "}" * (levels - 1),
        "json-list": "[" * levels + ' "[[[[[[[\\"[[[" ' + "]" * levels,
        "alias": "a: &x {b: {c: 1}}\nd: " + "[" * (levels - 3) + "*x" + "]" * (levels - 3),
    }[kind]
    file = "x.json" if kind.startswith("json") else "x.yaml"
    if levels == 5:
        read_text(text, file, Limits(depth=5))
    else:
        [problem] = refused(text, file, Limits(depth=5))
        assert problem.code == "document-depth"
        assert "5" in problem.expected and "depth" in problem.expected


def test_brackets_inside_texts_are_no_nesting() -> None:
    value = {"a": "[{" * 90, "b\\": '"' * 99 + "[" * 99, "c": ["\\", "[[["]}
    assert read_text(json.dumps(value), "x.json").data == value


def test_nodes_exactly_at_their_limit() -> None:
    text = "a: [" + "1, " * 7 + "]"
    read_text(text, limits=Limits(nodes=9))
    [problem] = refused(text, limits=Limits(nodes=8))
    assert problem.code == "document-nodes"
    assert "8 values" in problem.expected and "nodes" in problem.expected


def test_aliases_exactly_at_their_limit() -> None:
    text = "a: &x [1, 2, 3]\nb: [*x, *x]"
    assert read_text(text, limits=Limits(aliased_nodes=8)).data == {
        "a": [1, 2, 3], "b": [[1, 2, 3], [1, 2, 3]]}
    [problem] = refused(text, limits=Limits(aliased_nodes=7))
    assert (problem.code, problem.place.line, problem.place.column) == (
        "yaml-alias-expansion", 2, 9)
    assert "aliased_nodes" in problem.expected


def test_aliased_values_are_apart() -> None:
    data = read_text("a: &x {b: [1]}\nc: *x").data
    assert isinstance(data, dict) and data["a"] == data["c"] and data["a"] is not data["c"]


def test_an_alias_bomb_is_refused() -> None:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 12)]
    assert [problem.code for problem in refused("\n".join(lines))] == ["yaml-alias-expansion"]


def test_the_nearest_anchor_is_named() -> None:
    [problem] = refused("a: &pack-one 1\nb: *pack-onee")
    assert "pack-one" in problem.hint


def test_size_exactly_at_its_limit() -> None:
    text = "a: Ω\n"
    read_text(text, limits=Limits(size_bytes=6))
    [problem] = refused(text, limits=Limits(size_bytes=5))
    assert problem.code == "document-too-large"
    assert "5 bytes" in problem.expected and "size_bytes" in problem.expected


def test_what_stands_at_the_top() -> None:
    assert read_text("- a").data == ["a"]
    assert read_text("hello").data == "hello"
    for text in ("- a", "hello", "[1]"):
        with pytest.raises(DocumentRefused) as caught:
            read_text(text, expect="mapping")
        assert [p.code for p in caught.value.problems] == ["document-not-a-mapping"]
    assert read_text("{a: 1}", expect="mapping").data == {"a": 1}


def test_every_code_for_texts_is_reached() -> None:
    reached = {case.code for case in (*YAML.values(), *JSON.values())}
    wanted = {code for code in CATALOGUE if code.startswith(("yaml-", "json-"))}
    assert wanted - reached == {"yaml-alias-expansion"}  # has tests of its own above


@pytest.mark.parametrize("text", ["a: {b: 26,4 V}", "a: {b: 1 V, c: -0,15}"])
def test_a_decimal_comma_in_braces_is_named(text: str) -> None:
    [problem] = [each for each in refused(text) if each.code == "yaml-missing-colon"]
    assert ("26.4" if "26" in text else "0.15") in problem.hint


def test_a_key_without_a_colon_behind_a_number_is_no_decimal_comma() -> None:
    [problem] = refused("a: {b: 26, c}")
    assert "point" not in problem.hint
