"""An expression of a rule in words: names without dots, gathering operands read out.

``max(d.rating for d in bus.devices)`` about a bus is ``the greatest rating of all its devices``.
What cannot be read that way keeps its own form, with names in words.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

_NAME: Final = re.compile(r"[A-Za-z_]\w*(?:\.[A-Za-z_]\w*)*")
_TEXT: Final = re.compile(r"\"[^\"]*\"|'[^']*'")
_CALL: Final = re.compile(r"\b(max|min|sum|count|all|any|exists)\(")
_GATHERED: Final = re.compile(r"\s+for\s+([A-Za-z_]\w*)\s+in\s+")
_CONDITION: Final = re.compile(r"\s+if\s+")
_SIGNS: Final = {">=": "≥", "<=": "≤", "!=": "is not", "==": "is", "*": "×",
                 "in": "is one of", "not in": "is none of"}
_SIGN: Final = re.compile(r"(?<=\s)(?:>=|<=|!=|==|\*|not in|in)(?=\s)")
_SAME_THING: Final = re.compile(r"([A-Za-z_]\w*)\.id\s*==\s*([A-Za-z_]\w*)\.id")
_DEEPEST: Final = 20

Spelled = Callable[[str], str]


def in_words(text: str, subject: str, spelled: Spelled) -> str:
    """``text`` in words for a thing of ``subject``; ``spelled`` makes words of a dotted name."""
    return _words(text, (subject,), spelled, 0)


def _words(text: str, own: tuple[str, ...], spelled: Spelled, depth: int) -> str:
    """Text with its calls read out; ``own`` are the names that stand for the thing meant."""
    parts: list[str] = []
    at = 0
    while depth < _DEEPEST and (found := _next_call(text, at)) is not None:
        end = _closing(text, found.end())
        if end is None:
            break
        parts.append(_plain(text[at:found.start()], own, spelled))
        parts.append(_call(found[1], text[found.end():end], own, spelled, depth + 1))
        at = end + 1
    parts.append(_plain(text[at:], own, spelled))
    return "".join(parts)


def _call(name: str, inside: str, own: tuple[str, ...], spelled: Spelled, depth: int) -> str:
    gathered = _outside(_GATHERED, inside)
    if gathered is None:
        words = _words(inside, own, spelled, depth)
        return {"exists": f"{words} present", "count": f"the number of {words}"}.get(
            name, f"{name}({words})")
    rest = inside[gathered.end():]
    condition = _outside(_CONDITION, rest)
    many, where = (rest, "") if condition is None else (rest[:condition.start()],
                                                        rest[condition.end():])
    inner = (*own, gathered[1])
    body = _words(inside[:gathered.start()], inner, spelled, depth)
    whole = _its(many, own, spelled, depth)
    same = _SAME_THING.fullmatch(inside[:gathered.start()].strip())
    if name == "any" and not where and same and {same[1], same[2]} == {gathered[1], own[0]}:
        return f"the {spelled(own[0])} itself is among {whole}"
    if where:
        whole += f" with {_words(where, inner, spelled, depth)}"
    return _gathering(name, body, whole)


def _its(many: str, own: tuple[str, ...], spelled: Spelled, depth: int) -> str:
    """The things gathered over; those of the item itself are its own."""
    words = _words(many, own, spelled, depth)
    return f"its {words}" if many.startswith(f"{own[0]}.") and len(own) == 1 else words


def _gathering(name: str, body: str, whole: str) -> str:
    """One call that gathers, read out."""
    short = body.removeprefix("the ")
    if name == "max":
        return (f"{body} of all {whole}" if body.startswith("the greatest ")
                else f"the greatest {short} of all {whole}")
    if name == "min":
        return (f"{body} of all {whole}" if body.startswith("the least ")
                else f"the least {short} of all {whole}")
    if name == "sum":
        return f"the sum of {short} over all {whole}"
    if name == "count":
        return f"the number of {whole} with {body}"
    return f"(for {'each' if name == 'all' else 'at least one'} of {whole}, {body})"


def _plain(text: str, own: tuple[str, ...], spelled: Spelled) -> str:
    """Text without calls: names and signs in words, quoted text as it stands."""
    shown: list[str] = []
    at = 0
    for quoted in _TEXT.finditer(text):
        shown += [_unquoted(text[at:quoted.start()], own, spelled), quoted[0]]
        at = quoted.end()
    return "".join([*shown, _unquoted(text[at:], own, spelled)])


def _unquoted(text: str, own: tuple[str, ...], spelled: Spelled) -> str:
    def word(found: re.Match[str]) -> str:
        first, point, rest = found[0].partition(".")
        if not point or first not in own:
            return spelled(found[0])
        return spelled(rest) if first == own[-1] else f"its own {spelled(rest)}"

    return _SIGN.sub(lambda found: _SIGNS[found[0]], _NAME.sub(word, text))


def _next_call(text: str, start: int) -> re.Match[str] | None:
    """The next call outside quotes."""
    quoted = [each.span() for each in _TEXT.finditer(text)]
    return next((found for found in _CALL.finditer(text, start)
                 if not any(begin <= found.start() < end for begin, end in quoted)), None)


def _closing(text: str, start: int) -> int | None:
    """Where the bracket that was opened just before ``start`` closes."""
    depth = 1
    for at, character in _outside_quotes(text, start):
        depth += {"(": 1, ")": -1}.get(character, 0)
        if depth == 0:
            return at
    return None


def _outside(pattern: re.Pattern[str], text: str) -> re.Match[str] | None:
    """The first find outside brackets and quotes."""
    level: dict[int, int] = {}
    depth = 0
    for at, character in _outside_quotes(text, 0):
        depth += {"(": 1, ")": -1}.get(character, 0)
        level[at] = depth
    return next((found for found in pattern.finditer(text) if level.get(found.start()) == 0), None)


def _outside_quotes(text: str, start: int) -> list[tuple[int, str]]:
    quoted = {at for each in _TEXT.finditer(text) for at in range(*each.span())}
    return [(at, text[at]) for at in range(start, len(text)) if at not in quoted]
