"""What every output says, whatever came out."""

from __future__ import annotations

from typing import Final

from garboard.reports.harmless import harmless
from garboard.trail import Trail

CAUTIONS: Final = (
    "The energy in a battery cannot be switched off. Its terminals stay live with every switch "
    "open, and a short circuit there releases thousands of amperes at once.",
    "Work on the installation is for competent people.",
    "Local codes, the conditions of the insurer and the instructions of the makers come first.",
    "The assessment supports a survey and does not replace one: it judges what the record says, "
    "not the boat.",
)
NOT_EXAMINED: Final = (
    "Anything the record does not say: workmanship, corrosion, tightness and heat of joints, arcs, "
    "fire behind a fault, changes since the survey.",
)


def cautions_of(trail: Trail) -> tuple[str, ...]:
    """The cautions of every output, then those of the packs, each once."""
    own = [harmless(each) for pack in trail.packs for each in pack["resolved"]["cautions"]]
    return tuple(dict.fromkeys([*CAUTIONS, *own]))


def not_examined_of(trail: Trail) -> tuple[str, ...]:
    """What was not examined: by any assessment, by the packs, by the surveyor, by these rules."""
    packs = [harmless(each) for pack in trail.packs for each in pack["resolved"]["not_examined"]]
    survey = trail.fact("survey.not_examined")
    stated = [f"By the surveyor: {harmless(survey['value'])}"] if survey is not None and isinstance(
        survey["value"], str) else []
    return tuple(dict.fromkeys([*NOT_EXAMINED, *packs, *stated]))


def left_to_a_person(trail: Trail) -> tuple[str, ...]:
    """What rules that cover a part of their source leave to a person."""
    return tuple(dict.fromkeys(
        f"{harmless(rule['title'])}: {harmless(rule['left_to_a_person'])}"
        for pack in trail.packs for rule in pack["resolved"]["rules"]
        if rule.get("left_to_a_person")))
