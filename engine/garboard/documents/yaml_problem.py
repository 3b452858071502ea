"""What the YAML scanner or parser stumbled over, as a problem a person can act on."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from garboard.documents.sheet import Sheet
from garboard.errors import Problem

if TYPE_CHECKING:
    from ruamel.yaml.error import YAMLError

_QUOTES = 'put the whole text in quotes: "..."'
_INDENT = "fields of one mapping start in the same column; use two spaces for each level"
_LONGEST_KEY = 1024
_CHARACTER = re.compile(r"that cannot start any token|expected the node content.*'.'$")


def syntax_problem(error: YAMLError, sheet: Sheet, last_scalar: tuple[int, int]) -> Problem:
    """The problem for an error of the scanner or parser, pointing where a person should look.

    ``last_scalar`` is the span of the text or number read last.
    """
    context = str(getattr(error, "context", None) or "")
    problem = str(getattr(error, "problem", None) or "")
    opened = _index(error, "context_mark")
    at = _index(error, "problem_mark", opened)
    text = sheet.text
    tab = _tab(text, sheet.line_start(at), at)

    def told(code: str, index: int, found: str = "", expected: str = "", hint: str = "") -> Problem:
        return Problem(code, sheet.place(index), found, expected, hint)

    if tab is not None and "scalar" not in context:
        return told("yaml-tab", tab, "a tab", "spaces",
                    "replace tabs by spaces; many editors do that while typing")
    if "directive" in context:
        return told("yaml-directive", at, "%", "no directive",
                    'delete the line; a text that starts with % needs quotes: "..."')
    if "quoted scalar" in context and ("end of stream" in problem or "separator" in problem):
        return told("yaml-quote", opened, f"{text[opened:opened + 1]} without its partner",
                    "a closing quote", "close the quote at the end of the text")
    if "double-quoted scalar" in context:
        slash = text.rfind("\\", opened, at + 1)
        return told("yaml-escape", slash, text[slash:at + 1], "a known escape",
                    "write \\\\ for a backslash, or use single quotes")
    if "block scalar" in context or "block scalar" in problem:
        return told("yaml-block-text", at, hint="write | or > alone, the text below it, indented")
    if "tag" in context or "tag handle" in problem:
        return told("yaml-tag", opened, "!", "a value without a type mark",
                    "delete the mark; put a text that starts with ! in quotes")
    if _CHARACTER.search(problem) or "alias" in context or "anchor" in context:
        index = at if problem.startswith(("found character", "expected the node")) else opened
        return told("yaml-character", index, text[index:index + 1],
                    "a text, number, list or mapping",
                    'a text that starts with this sign needs quotes: "..."')
    if "after document end" in problem:
        return told("yaml-several-documents", at, "more behind the end", "one document",
                    "put each document into a file of its own")
    if "could not find expected ':'" in problem:
        return told("yaml-missing-colon", opened, _line(text, opened), "key: value",
                    "put a colon and a space behind the key")
    if "mapping values" in problem:
        return _colon(sheet, at)
    if "found unexpected ':'" in problem:
        return told("yaml-colon", at, ":", "a colon followed by a space", _QUOTES)
    if "sequence entries" in problem:
        return told("yaml-dash", at, "-", "the list on the next line", "start a new line before -")
    if "flow" in context:
        return _flow(sheet, opened, at)
    if "expected <block end>" in problem or "<document start>" in problem:
        return _after_value(sheet, at, last_scalar)
    return told("yaml-syntax", at, problem)


def code_point_problem(sheet: Sheet, index: int) -> Problem:
    """An escape that names a character beyond the last one there is."""
    slash = sheet.text.rfind("\\", 0, index + 1)
    return Problem("yaml-escape", sheet.place(slash, slash + 10), sheet.text[slash:slash + 10],
                   "a character up to U+10FFFF")


def _index(error: YAMLError, mark: str, otherwise: int = 0) -> int:
    found = getattr(error, mark, None)
    return otherwise if found is None else int(found.index)


def _tab(text: str, start: int, at: int) -> int | None:
    """A tab where the scanner stopped, or in the indentation before it."""
    if text[at:at + 1] == "\t":
        return at
    indentation = re.compile(r"[ \t]*").match(text, start, at)
    tab = indentation[0].find("\t") if indentation else -1
    return start + tab if tab >= 0 else None


def _line(text: str, index: int) -> str:
    return re.split(r"[\r\n]", text[index:index + 80], maxsplit=1)[0]


def _colon(sheet: Sheet, at: int) -> Problem:
    """A colon where none may stand: inside a text without quotes, or after wrong indentation."""
    before = sheet.text[sheet.line_start(at):at]
    if re.search(r":\s", before) or "{" in before:
        return Problem("yaml-colon", sheet.place(at), _line(sheet.text, at),
                       "one colon with a space behind it in a line", _QUOTES)
    start = sheet.line_start(at) + len(before) - len(before.lstrip(" -"))
    if at - start > _LONGEST_KEY:
        return Problem("yaml-syntax", sheet.place(start, at), f"a key of {at - start:,} characters",
                       f"at most {_LONGEST_KEY:,} characters")
    return Problem("yaml-indentation", sheet.place(start, at), _line(sheet.text, start),
                   "a key in the column of the keys above it", _INDENT)


def _flow(sheet: Sheet, opened: int, at: int) -> Problem:
    """A list or mapping in brackets that is not closed, or lacks a comma."""
    sign = sheet.text[opened:opened + 1]
    closing = {"{": "}", "[": "]"}.get(sign, "a closing bracket")
    rest = sheet.text[at:].strip()
    if not rest or rest.startswith(("---", "...")):
        return Problem("yaml-bracket", sheet.place(opened), f"{sign} without its partner", closing,
                       "close the bracket")
    return Problem("yaml-bracket", sheet.place(at), _line(sheet.text, at), f", or {closing}",
                   "a comma is missing here, or a bracket is not closed")


def _after_value(sheet: Sheet, at: int, last_scalar: tuple[int, int]) -> Problem:
    """Something that belongs nowhere: behind a finished value, or in the wrong column."""
    start, end = last_scalar
    quote = sheet.text[start:start + 1]
    if quote in ("'", '"') and not sheet.text[end:at].strip() and \
            sheet.line_of(start) < sheet.line_of(end - 1):
        return Problem("yaml-quote", sheet.place(start),
                       f"{quote} that meets its partner only on line {sheet.line_of(end - 1)}",
                       "a closing quote", "close the quote at the end of the text")
    before = sheet.text[sheet.line_start(at):at].strip()
    if before and before.strip("- "):
        extra = sheet.text[at:at + 1]
        return Problem("yaml-after-value", sheet.place(at), _line(sheet.text, at),
                       "the end of the line",
                       f"delete the {extra}" if extra in "]}" else _QUOTES)
    return Problem("yaml-indentation", sheet.place(at), _line(sheet.text, at),
                   "the column of the lines above it", _INDENT)
