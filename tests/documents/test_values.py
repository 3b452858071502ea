"""What texts, numbers and flags become, in YAML and in JSON."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.documents import read_text

TEXTS = ["yes", "no", "on", "off", "Yes", "NO", "y", "n", "12:30", "1:20:30", "2026-04-18", "012",
         "-012", "00", "0o17", "0x1F", "0b101", "1_000", "1,5", "1,000", ".nan", ".NaN", ".inf",
         "-.inf", "nan", "inf", "Infinity", "+", ".", "..", "+.", "1e", "e1", "1.2.3", "1 2",
         "0.35 m", "12 V DC", "50 mm2", "2/0 AWG", "-20 .. 60 °C", ".. 45 °C", "01.5", "0_1",
         "nUll", "tRUE", "-e3", "1-2", "١٢", "１２", "½", "²"]
NUMBERS = [("0", 0), ("12", 12), ("-3", -3), ("+5", 5), ("-0", 0), ("9007199254740991", 2**53 - 1),
           ("-9007199254740991", 1 - 2**53), ("0.35", 0.35), (".5", 0.5), ("-.5", -0.5),
           ("1.", 1.0), ("1e3", 1000.0), ("1E3", 1000.0), ("-2.5E-3", -0.0025), ("+1.5", 1.5),
           ("0.0", 0.0), ("0e999", 0.0), ("1e308", 1e308), ("1e-300", 1e-300)]
WORDS = [("true", True), ("True", True), ("TRUE", True), ("false", False), ("False", False),
         ("FALSE", False), ("null", None), ("Null", None), ("NULL", None), ("~", None), ("", None)]


@pytest.mark.parametrize("text", TEXTS)
def test_text_stays_text(text: str) -> None:
    assert read_text(f"a: {text}").data == {"a": text}


@pytest.mark.parametrize(("text", "value"), NUMBERS + WORDS)
def test_numbers_and_words(text: str, value: object) -> None:
    [got] = read_text(f"a: {text}").data.values()  # type: ignore[union-attr]
    assert got == value
    assert type(got) is type(value)


@pytest.mark.parametrize("text", [text for text, _ in NUMBERS + WORDS])
@pytest.mark.parametrize("style", ["'{}'", '"{}"', "|-\n  {}", ">-\n  {}"])
def test_quotes_and_blocks_make_texts(text: str, style: str) -> None:
    assert read_text(f"a: {style.format(text)}").data == {"a": text}


def test_what_was_written_can_be_asked() -> None:
    document = read_text("a: {firmware: 1.10, serial: '0012', b: [true]}\n")
    assert document.written(["a", "firmware"]) == "1.10"
    assert document.written(["a", "serial"]) == "0012"
    assert document.written(["a", "b", 0]) == "true"
    assert document.written(["a"]) is None
    assert document.written(["a", "c"]) is None
    document = read_text('{"a": {"firmware": 1.10, "name": "\\u03a9"}}')
    assert document.written(["a", "firmware"]) == "1.10"
    assert document.written(["a", "name"]) == "Ω"
    assert document.written(["a"]) is None


def test_a_list_in_the_column_of_its_key() -> None:
    assert read_text("a:\n- 1\n- b: 2\n  c: 3\nd: 4\n").data == {
        "a": [1, {"b": 2, "c": 3}], "d": 4}


def test_what_starts_with_a_brace_may_be_yaml() -> None:
    assert read_text("{a: yes, b: [1, x]}").data == {"a": "yes", "b": [1, "x"]}
    assert read_text('{"a": 1} # note').data == {"a": 1}


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(1 - 2**53, 2**53 - 1)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=("Cs", "Cc"), exclude_characters="\u2028\u2029\ufeff"
                            "\ufffe\uffff")),
    lambda inner: st.lists(inner, max_size=4)
    | st.dictionaries(st.text("ab[]{}\\\" :,#é", max_size=5), inner, max_size=4), max_leaves=12)


@given(JSON_VALUES.filter(lambda value: value is not None), st.sampled_from([None, 1]),
       st.booleans())
def test_json_is_read_as_json_and_as_yaml(value: object, indent: int | None, plain: bool) -> None:
    text = json.dumps({"a": value}, indent=indent, ensure_ascii=plain)
    assert read_text(text, "x.json").data == {"a": value}
    if "\\ud" not in text and "e-" not in text and "e+" not in text:
        # as the flow style of YAML: read by the other reader, with the same data
        assert read_text("# YAML\n" + text, "x.yaml").data == {"a": value}
