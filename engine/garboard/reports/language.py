"""A trail as told in one of the further languages of its packs.

Everything a report says of rules and questions comes from the packs in the trail; here they are
given with the texts of a language in place of their own. A text that the language lacks keeps its
own words, with a mark. The digest stays that of the trail: what is hashed holds all languages.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, Final

from garboard.errors import CommandRefused, Problem
from garboard.trail import Trail

#: Stands before a text that is not translated.
UNTRANSLATED: Final = "[not translated] "
_RULE: Final = ("title", "why", "recommendation", "left_to_a_person")
_QUESTION: Final = ("ask", "how_to_look", "answered_by")


def languages_of(resolved: Mapping[str, Any]) -> tuple[str, ...]:
    """The further languages that a resolved pack has any text in, sorted."""
    return tuple(sorted({language for each in _parts(resolved)
                         for language in each.get("translations") or ()}))


def in_language(trail: Trail, language: str | None) -> Trail:
    """The trail with the texts of a language; itself where none is asked for.

    ``de-AT`` takes the texts of ``de`` where there are none of its own. CommandRefused when no pack
    has a text in the language.
    """
    if language is None:
        return trail
    packs = [{**pack, "resolved": pack_in_language(pack["resolved"], language)}
             for pack in trail.packs]
    _require(language, [pack["resolved"] for pack in trail.packs])
    assessment = {**trail.assessment, "packs": packs}
    return replace(trail, document={**trail.document, "assessment": assessment})


def pack_in_language(resolved: Mapping[str, Any], language: str) -> dict[str, Any]:
    """A resolved pack with the texts of a language."""
    told = dict(resolved)
    for key, names in (("rules", _RULE), ("questions", _QUESTION)):
        if key in told:
            told[key] = [_told(each, names, language) for each in told[key]]
    return told


def told_pack(resolved: Mapping[str, Any], language: str | None) -> Mapping[str, Any]:
    """A resolved pack as told in a language; CommandRefused when it has no text in it."""
    if language is None:
        return resolved
    _require(language, [resolved])
    return pack_in_language(resolved, language)


def _told(part: Mapping[str, Any], names: tuple[str, ...], language: str) -> dict[str, Any]:
    texts: Mapping[str, str] = {}
    for tag in reversed(list(_wider(language))):
        texts = {**texts, **(part.get("translations") or {}).get(tag, {})}
    return {**part, "told_in": {name: language for name in names if name in texts},
            **{name: texts.get(name, f"{UNTRANSLATED}{part[name]}")
               for name in names if part.get(name)}}


def told_in(part: Mapping[str, Any], name: str) -> str:
    """The language that a text of a rule or question is told in; empty where it is its own."""
    return str(part.get("told_in", {}).get(name, ""))


def _wider(language: str) -> Iterator[str]:
    """The tag itself, then what it is a variant of (RFC 4647, lookup)."""
    parts = language.split("-")
    while parts:
        yield "-".join(parts)
        parts.pop()


def _require(language: str, packs: list[Mapping[str, Any]]) -> None:
    known = sorted({each for pack in packs for each in languages_of(pack)})
    if not set(_wider(language)) & set(known):
        raise CommandRefused([Problem(
            "language-unknown", found=language, expected=", ".join(known) or "no language but the "
            "packs' own")])


def _parts(resolved: Mapping[str, Any]) -> Iterator[Mapping[str, Any]]:
    yield from resolved.get("rules", ())
    yield from resolved.get("questions", ())
