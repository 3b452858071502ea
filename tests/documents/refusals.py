"""Texts that are refused: the text, the code, and the line and column it is told at."""

from __future__ import annotations

from typing import NamedTuple


class Refusal(NamedTuple):
    """One text with the problem it must give."""

    text: str
    code: str
    line: int | None
    column: int | None


YAML = {
    "a key given twice": Refusal("a: 1\nb: 2\na: 3\n", "duplicate-key", 3, 1),
    "a key given twice in brackets": Refusal("x: {a: 1, a: 2}", "duplicate-key", 1, 11),
    "a key given twice in two normal forms": Refusal("é: 1\ne\u0301: 2", "duplicate-key", 2, 1),
    "a number as a key": Refusal("a: 1\n2: b", "key-not-text", 2, 1),
    "a flag as a key": Refusal("true: b", "key-not-text", 1, 1),
    "no key": Refusal(": b", "key-not-text", 1, 1),
    "a list as a key": Refusal("? [a]\n: b", "key-not-text", 1, 3),
    "an alias as a key": Refusal("a: &x b\n*x : c", "key-not-text", 2, 1),
    "a number too long as a key": Refusal(f"{'9' * 20}: b", "key-not-text", 1, 1),
    "a tag": Refusal("a: 1\nb: !!str 1", "yaml-tag", 2, 4),
    "a tag of one's own": Refusal("a: !volt 12", "yaml-tag", 1, 4),
    "a tag behind an anchor": Refusal("a: &x !volt 12", "yaml-tag", 1, 7),
    "a tag before an anchor": Refusal("a: !volt &x 12", "yaml-tag", 1, 4),
    "a tag before a comment": Refusal("a: !!str # why\n  b", "yaml-tag", 1, 4),
    "text behind the end": Refusal("a: 1\n... b", "yaml-several-documents", 2, 5),
    "a tag on a list": Refusal("a: !!set [1]", "yaml-tag", 1, 4),
    "a tag with an unknown handle": Refusal("a: !e!x 1", "yaml-tag", 1, 4),
    "an alias to nothing": Refusal("a: 1\nb: *pack", "yaml-alias-unknown", 2, 4),
    "an alias inside itself": Refusal("a: &x [1, *x]", "yaml-alias-inside-itself", 1, 11),
    "an anchor name twice": Refusal("a: &x 1\nb: &x 2", "yaml-anchor-twice", 2, 4),
    "a merge key": Refusal("a: &x {b: 1}\nc:\n  <<: *x", "yaml-merge-key", 3, 3),
    "a second document": Refusal("a: 1\n---\nb: 2", "yaml-several-documents", 2, 1),
    "a directive": Refusal("%YAML 1.1\n---\na: yes", "yaml-directive", 1, 1),
    "a directive after the end": Refusal("a: 1\n...\n%TAG ! x\n---\n", "yaml-directive", 3, 1),
    "a tab as indentation": Refusal("a:\n\tb: 1", "yaml-tab", 2, 1),
    "a tab after spaces": Refusal("a:\n  b: 1\n \tc: 2", "yaml-tab", 3, 2),
    "a tab behind a colon": Refusal("a:\tb", "yaml-tab", 1, 3),
    "a tab at the end of a line": Refusal("a: b\t\nc: d", "yaml-tab", 1, 5),
    "a quote never closed": Refusal("a: 1\nb: 'it\nc: 2\n", "yaml-quote", 2, 4),
    "a quote closed by a later one": Refusal('a: "x\nb: "y"\n', "yaml-quote", 1, 4),
    "a bracket never closed": Refusal("a: [1, 2\n", "yaml-bracket", 1, 4),
    "a brace never closed": Refusal("a:\n  - {b: 1\n", "yaml-bracket", 2, 5),
    "a comma missing": Refusal('a: {b: "1" c: 2}', "yaml-bracket", 1, 12),
    "one bracket too many": Refusal("a: [1]]", "yaml-after-value", 1, 7),
    "text behind quotes": Refusal('a: "Marsh" Harrier', "yaml-after-value", 1, 12),
    "a colon in a text": Refusal("note: two: three", "yaml-colon", 1, 10),
    "no space behind a colon in braces": Refusal("a: {b:1}", "yaml-missing-colon", 1, 5),
    "no colon in braces": Refusal("a: {b, c: 1}", "yaml-missing-colon", 1, 5),
    "a line without a colon": Refusal("a: 1\nb\nc: 2", "yaml-missing-colon", 2, 1),
    "a field further in": Refusal("a: 1\n  b: 2", "yaml-indentation", 2, 3),
    "a field further out": Refusal("a:\n    b: 1\n  c: 2", "yaml-indentation", 3, 3),
    "a list behind its key": Refusal("a: - 1", "yaml-dash", 1, 4),
    "an unknown escape": Refusal('a: "C:\\qq"', "yaml-escape", 1, 7),
    "an escape with too few digits": Refusal('a: "\\u12"', "yaml-escape", 1, 5),
    "an escape beyond the last character": Refusal('a: "\\U00110000"', "yaml-escape", 1, 5),
    "half a character": Refusal('a: "x\\ud800"', "document-character", 1, 6),
    "a control character behind an escape": Refusal('a: "x\\0"', "document-character", 1, 6),
    "such a character in a key": Refusal('"x\\e": 1', "document-character", 1, 3),
    "a text that starts with an at sign": Refusal("a: @home", "yaml-character", 1, 4),
    "a text that starts with a percent sign": Refusal("a: %", "yaml-character", 1, 4),
    "a text that starts with a star": Refusal("a: * see note", "yaml-character", 1, 4),
    "a text that starts with an ampersand": Refusal("a: & more", "yaml-character", 1, 4),
    "a closing bracket for a value": Refusal("a: ]", "yaml-character", 1, 4),
    "a comma for a value": Refusal("a:\n  - , b", "yaml-character", 2, 5),
    "a block text on its first line": Refusal("a: |text\n", "yaml-block-text", 1, 5),
    "a block text of no depth": Refusal("a: |0\n  b", "yaml-block-text", 1, 5),
    "a key that is too long": Refusal("x" * 2000 + ": 1", "yaml-syntax", 1, 1),
    "an end with no beginning": Refusal("...", "yaml-syntax", 1, 1),
    "a whole number too large": Refusal("a: 9007199254740992", "document-number", 1, 4),
    "a whole number of many digits": Refusal("a: " + "9" * 5000, "document-number", 1, 4),
    "a decimal number too large": Refusal("a: 1e999", "document-number", 1, 4),
    "a decimal number too near zero": Refusal("a: 1e-999", "document-number", 1, 4),
    "nothing": Refusal("", "document-empty", None, None),
    "blanks": Refusal(" \n\n", "document-empty", None, None),
    "comments only": Refusal("# to do\n", "document-empty", 1, 1),
    "an empty value": Refusal("---\n~\n", "document-empty", 1, 1),
    "a zero character": Refusal("a: b\0c", "document-character", 1, 5),
    "a byte order mark inside": Refusal("a: 1\nb: \ufeff2", "document-character", 2, 4),
    "a line separator": Refusal("a: 1\nb: x\u2028y", "document-character", 2, 5),
    "a bell": Refusal("a: \a", "document-character", 1, 4),
}

JSON = {
    "a key given twice": Refusal('{"a": 1,\n "b": 2, "a": 3}', "duplicate-key", 2, 10),
    "a key given twice far inside": Refusal(
        '{"a": [1, {"b": {"c": 1, "c": 2}}]}', "duplicate-key", 1, 26),
    "a key given twice in two normal forms": Refusal(
        '{"é": 1, "e\u0301": 2}', "duplicate-key", 1, 10),
    "not a number": Refusal('{"a": NaN}', "json-not-finite", 1, 7),
    "infinity": Refusal('{"a": [Infinity]}', "json-not-finite", 1, 8),
    "minus infinity": Refusal('{"a": -Infinity}', "json-not-finite", 1, 7),
    "a number too large": Refusal('{"a": 1e400}', "document-number", 1, 7),
    "a number too near zero": Refusal('{"a": 1e-400}', "document-number", 1, 7),
    "a whole number too large": Refusal('{"a": -9007199254740992}', "document-number", 1, 7),
    "a whole number of many digits": Refusal('{"a": ' + "1" * 5000 + "}", "document-number", 1, 7),
    "half a character": Refusal('{"a": "x\\uDC00"}', "document-character", 1, 9),
    "half a character in a key": Refusal('{"\\ud83d": 1}', "document-character", 1, 3),
    "a control character behind an escape": Refusal(
        '{"a": "x\\u0000"}', "document-character", 1, 9),
    "a backspace": Refusal('{"a": "x\\b"}', "document-character", 1, 9),
    "a comma at the end": Refusal('{"a": [1, 2,]}', "json-syntax", 1, 13),
    "single quotes": Refusal("{'a': 1}", "json-syntax", 1, 2),
    "a comment": Refusal('{"a": 1} // note', "json-syntax", 1, 10),
    "a comma missing": Refusal('{"a": 1\n "b": 2}', "json-syntax", 2, 2),
    "cut off": Refusal('{"a": [1, 2', "json-syntax", 1, 12),
    "a line break in a text": Refusal('{"a": "x\ny"}', "json-syntax", 1, 9),
    "a tab in a text": Refusal('{"a": "x\ty"}', "json-syntax", 1, 9),
    "a fault and a syntax error": Refusal('{"a": 1, "a": 2,, "b": 3}', "json-syntax", 1, 17),
    "nothing but null": Refusal("null", "document-empty", 1, 1),
    "YAML": Refusal("a: 1", "json-syntax", 1, 1),
}
