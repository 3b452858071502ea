"""Why findings are open, do not apply or passed with a reservation, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from garboard.reports.counts import plural
from garboard.reports.groups import MissingKey, OfRule
from garboard.reports.harmless import harmless
from garboard.reports.many import named
from garboard.reports.names import Names
from garboard.reports.to_find_out import Wanted
from garboard.reports.words import FLAGS, REASONS, TO_DO, subjects_word
from garboard.trail import COVERS_PART, NONE_ABOARD, ON_ASSUMPTION, Finding


def because(names: Names, missing: MissingKey, findings: Iterable[Finding]) -> str:
    """Why findings that wait for the same things are open: each reason with what is missing."""
    findings = list(findings)
    facts: dict[tuple[str, str], list[str]] = {}
    for why, path, detail in missing:
        facts.setdefault((why, detail), []).append(path)
    own = "its" if len(findings) == 1 else "of each"
    parts: dict[str, list[str]] = {}
    for (why, detail), paths in facts.items():
        named = names.facts_in_a_sentence(filter(None, paths), own)
        said = f"{named} ({harmless(detail)})" if named and detail else named or harmless(detail)
        parts.setdefault(why, []).append(said)
    if not parts:
        return REASONS[findings[0]["reason"]]
    return "; ".join(f"{REASONS[why]}: {', '.join(filter(None, texts))}" if any(texts)
                     else REASONS[why] for why, texts in parts.items())


def standing(wanted: Wanted) -> str:
    """Why a wanted fact is open, if it is not simply left out of the record."""
    words = [TO_DO[reason] for reason in wanted.reasons if reason != "not recorded"]
    return "; ".join([*words, *map(harmless, wanted.details)])


def weight(wanted: Wanted) -> str:
    """How much a wanted fact decides."""
    alone, shared = len(wanted.alone), len(wanted.shared)
    if not shared:
        return f"decides {plural(alone, 'finding')}"
    if not alone:
        return f"with others decides {plural(shared, 'finding')}"
    return f"decides {plural(alone, 'finding')}, with others {shared} more"


def no_fact_words(wanted: Wanted) -> str:
    """A cause that no fact of the record would resolve."""
    detail = f": {harmless(next(iter(wanted.details)))}" if wanted.details else ""
    return f"{REASONS[next(iter(wanted.reasons))]}{detail}"


def why_not(group: OfRule, reason: str, items: list[str]) -> str:
    """Why a rule does not apply to some items."""
    if reason == NONE_ABOARD:
        return f"no {subjects_word(group.rule['about'])} aboard"
    return f"{REASONS[reason]} {named(str, items)}".strip()


def flag_words(group: OfRule, flag: str, flagged: Iterable[Finding]) -> str:
    """What must be borne in mind about an outcome."""
    text = FLAGS[flag]
    if flag == COVERS_PART and group.rule.get("left_to_a_person"):
        text += f"; left to a person: {harmless(group.rule['left_to_a_person'])}"
    if flag == ON_ASSUMPTION:
        assumed = dict.fromkeys(_assumed(flagged))
        text += f": {', '.join(assumed)}" if assumed else ""
    return text


def _assumed(findings: Iterable[Finding]) -> Iterator[str]:
    for finding in findings:
        for value in finding["operands"]:
            if isinstance(value, dict) and "assumption" in value.get("basis", ()):
                yield from (harmless(cause["detail"]) for cause in value["causes"]
                            if cause["detail"])


def irregularity_words(names: Names, odd: Mapping[str, Any]) -> str:
    """Something odd about the wiring as recorded, with the items unless the text names them."""
    text = harmless(odd["text"])
    if all(item in odd["text"] for item in odd["items"]):
        return text
    return f"{text} ({named(names.thing, odd['items'])})"


def warning_words(warning: Mapping[str, Any]) -> str:
    """A warning about the record or a pack, with its place."""
    place = ":".join(harmless(warning[key]) for key in ("file", "line") if warning.get(key))
    said = [harmless(warning.get("title") or warning.get("code") or "warning")]
    said += [harmless(warning[key]) for key in ("path", "found", "hint") if warning.get(key)]
    return f"{'; '.join(said)} ({place})" if place else "; ".join(said)
