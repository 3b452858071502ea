"""Keys of YAML mappings: texts, each once in its mapping, behind a colon."""

from __future__ import annotations

import re
from unicodedata import normalize

from garboard.documents.characters import UNPRINTABLE
from garboard.documents.plain_scalar import plain_value
from garboard.documents.yaml_report import Report
from garboard.documents.yaml_tree import Tree, YamlSpot
from garboard.errors import Problem, ReadingError


def read_key(tree: Tree, report: Report, text: str, plain: bool, start: int, end: int) -> None:
    """Take a scalar as the key of the next value and report what is wrong with it."""
    sheet = report.sheet
    place = sheet.place(start, end)
    if plain and text == "<<":
        report.add(Problem("yaml-merge-key", place, "<<", hint="write the fields out"))
    elif plain and not _is_text(text):
        report.add(Problem(
            "key-not-text", place,
            f"{text} as a key, which is not a text" if text else "no key", "a text as the key",
            f'put it in quotes: "{text}"' if text else ""))
        tree.take_no_key(start, end)
        return
    elif not plain and (bad := UNPRINTABLE.search(text)):
        report.unprintable(YamlSpot(start, end, '"', text), bad)
    # two keys that only differ in how their accents are written are the same key
    same = text if text.isascii() else normalize("NFC", text)
    first = tree.open[-1].key_starts.setdefault(same, start)
    tree.take_key(text, start, end)
    if first != start:
        report.add(Problem(
            "duplicate-key", place, f"{text!r}, first given on line {sheet.line_of(first)}",
            "each key once", "keep one of the two"))
        tree.take_no_key(start, end)


def check_colon(tree: Tree, report: Report, value_start: int) -> None:
    """A key with no value is one only behind a colon: ``{a:1}`` and ``{a}`` are slips."""
    holder, sheet = tree.open[-1], report.sheet
    if ":" not in sheet.text[holder.key_end:value_start]:
        report.add(Problem(
            "yaml-missing-colon", sheet.place(holder.key_start, holder.key_end),
            sheet.text[holder.key_start:holder.key_end], "key: value",
            _comma_hint(sheet.text, holder.key_start) or "put a colon and a space behind the key"))


def _comma_hint(text: str, start: int) -> str:
    """The hint for what follows a comma between two digits in braces: ``{value: 26,4 V}``."""
    before = text[:start].rstrip()
    whole = re.search(r"[0-9]+,$", before[-40:])
    rest = re.match(r"[0-9]+", text[start:start + 40])
    if whole is None or rest is None:
        return ""
    return f"a comma ends a value in braces; the decimal mark is a point: {whole[0][:-1]}.{rest[0]}"


def _is_text(text: str) -> bool:
    try:
        return isinstance(plain_value(text), str)
    except ReadingError:  # a number, if one too large
        return False
