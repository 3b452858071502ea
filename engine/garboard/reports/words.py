"""The closed lists of a trail in words that an owner understands."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from garboard.reports.harmless import harmless
from garboard.trail import COVERS_PART, INSIDE_UNCERTAINTY, ON_ASSUMPTION

REASONS: Final = {
    "calculation error": "a calculation failed; this is a fault of the program or of a plugin",
    "plugin unavailable": "a plugin that computes the figure is not installed or does not load",
    "conflict": "recorded facts contradict each other",
    "outside method": "outside what the calculation is valid for",
    "not determinable": "recorded as not determinable",
    "answer expired": "the answer given is out of date",
    "awaits answer": "a question waits for its answer",
    "not recorded": "not recorded",
    "within uncertainty": "not known closely enough to tell",
    "condition false": "does not apply to",
    "none aboard": "none aboard",
    "pack does not apply": "the pack does not apply",
    "retired": "the rule was retired",
}

#: What has to be done about a fact, by the reason it is open for.
TO_DO: Final = {
    "calculation error": "report the fault",
    "plugin unavailable": "install the plugin",
    "conflict": "settle the contradiction",
    "outside method": "find another way to assess it",
    "not determinable": "recorded as not determinable",
    "answer expired": "answer again",
    "awaits answer": "answer",
    "not recorded": "not recorded",
    "within uncertainty": "know it more closely",
}

#: The sign that stands before an outcome in plain text.
SIGNS: Final = {"failed": "✗", "not assessed": "?", "passed": "✓", "not applicable": "–"}

RELATIONS: Final = {"<": "must be less than", "<=": "must be at most", ">": "must be more than",
                    ">=": "must be at least", "==": "must be", "!=": "must not be",
                    "in": "must be one of", "not in": "must be none of"}
MIRRORED: Final = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "==": "==", "!=": "!="}

FLAGS: Final = {
    COVERS_PART: "covers a part of the requirement",
    ON_ASSUMPTION: "rests on an assumption",
    INSIDE_UNCERTAINTY: "the nominal figure decided; the limit lies inside its uncertainty",
}

DECISION_RULES: Final = {
    "guarded acceptance": "guarded acceptance: all of an uncertain figure must be inside the limit",
    "simple acceptance": "simple acceptance: the nominal figure decides",
}

BASES: Final = {
    "tolerance": "a stated tolerance", "uncertainty": "the uncertainty of a measurement",
    "assumption": "an assumption", "unrecorded": "facts that are not recorded",
}

ORIGINS: Final = {
    "measured": "measured", "nameplate": "from the nameplate", "datasheet": "from a datasheet",
    "owner": "from the owner", "estimated": "estimated",
}

_IN_WHICH_CAPACITY: Final = {
    "regulation": "regulation, inside its legal scope",
    "standard": "standard",
    "standard as reprinted": "standard as reprinted, to be confirmed against the standard",
    "comparison": "comparison: cited for its figure, outside its own scope",
    "practice": "common practice of the trade",
    "house": "house rule of whoever keeps the pack",
}
_HOW_SURE: Final = {
    "read": "read in the source", "reprinted": "seen in a reprint",
    "from memory": "from memory, to be confirmed", "common practice": "common practice",
    "definition": "by definition",
}

SUBJECTS: Final = {
    "vessel": "vessel", "survey": "survey", "place": "place", "battery": "battery",
    "string": "string of batteries", "bank": "bank", "management_system": "management system",
    "run": "cable run", "conductor": "conductor", "device": "protective device",
    "switch": "switch", "bus": "bus", "source": "charging source", "load": "load",
    "record": "record",
}
_PLURALS: Final = {"battery": "batteries", "string": "strings of batteries", "bus": "buses",
                   "switch": "switches"}


def subject_word(subject: str) -> str:
    """What a thing of this subject is called."""
    return SUBJECTS.get(subject, harmless(subject).replace("_", " "))


def subjects_word(subject: str) -> str:
    """What things of this subject are called."""
    return _PLURALS.get(subject, f"{subject_word(subject)}s")


def citation_words(citation: Mapping[str, Any]) -> str:
    """Source, clause, edition and what it says; empty where no document is cited."""
    named = [citation.get("source"), citation.get("clause")]
    text = " ".join(harmless(part) for part in named if part)
    if citation.get("edition"):
        text += f" ({harmless(citation['edition'])})"
    if citation.get("says"):
        text += f": {harmless(citation['says'])}" if text else harmless(citation["says"])
    return text


def standing_words(citation: Mapping[str, Any]) -> str:
    """In which capacity a source is cited, and how sure its wording is."""
    basis = _IN_WHICH_CAPACITY.get(citation["basis"], harmless(citation["basis"]))
    status = citation.get("status")
    if status:
        sure = _HOW_SURE.get(status, harmless(status))
        return basis if sure in basis else f"{basis}; {sure}"
    if citation.get("source"):
        return f"{basis}; not stated whether it was read in the source"
    return basis


def method_source_words(citation: Mapping[str, Any]) -> str:
    """Where the method of a calculation comes from."""
    source, status = harmless(citation["source"]), citation["status"]
    sure = _HOW_SURE.get(status, harmless(status))
    return source if status in source or sure in source else f"{source}, {sure}"
