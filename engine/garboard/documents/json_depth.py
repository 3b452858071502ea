"""How deep a JSON text nests, counted before the decoder meets it."""

from __future__ import annotations

import re

from garboard.documents.limits import Limits
from garboard.documents.sheet import Sheet
from garboard.errors import DocumentRefused, Problem

_TEXT = r'"[^"\\]*(?:\\.[^"\\]*)*"?'
_TEXTS = re.compile(_TEXT.encode(), re.DOTALL)
_BRACKETS = re.compile(_TEXT + r"|[\[{]|[\]}]", re.DOTALL)
_OTHERS = bytes(code for code in range(256) if chr(code) not in '[]{}"')


def check_depth(sheet: Sheet, limits: Limits) -> None:
    """Raise DocumentRefused (``document-depth``) where nesting passes the limit.

    A well-formed text is judged by striking out its innermost pairs of brackets, level by level;
    only one that does not come out empty is looked at bracket by bracket.
    """
    raw = sheet.text.encode(errors="surrogatepass")
    if b"\\" in raw:
        raw = _TEXTS.sub(b"", raw)
    brackets = raw.translate(None, _OTHERS).replace(b'""', b"")
    if b'"' in brackets:
        brackets = _TEXTS.sub(b"", brackets)
    for _ in range(limits.depth):
        if not brackets:
            return
        brackets = brackets.replace(b"[]", b"").replace(b"{}", b"")
    level = 0
    for match in _BRACKETS.finditer(sheet.text):
        sign = match[0]
        level += (sign in "[{") - (sign in "]}")
        if level > limits.depth:
            raise DocumentRefused([Problem(
                "document-depth", sheet.place(match.start()), f"level {level}",
                limits.expected("depth", "levels"),
                "a record needs about ten; look for brackets that never close")])
