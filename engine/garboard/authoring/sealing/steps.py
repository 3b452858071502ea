"""What changed between two versions of a pack, the step that asks for, and whether it was taken."""

from __future__ import annotations

from dataclasses import dataclass

from garboard.errors import PackRefused, Problem
from garboard.expressions import Vocabulary
from garboard.packs import Pack
from garboard.packs.versions import Reason, Step, reasons, rise_problem, step_of


@dataclass(frozen=True, slots=True)
class Steps:
    """The changes, the gravest first; the step they ask for; what is wrong with the version."""

    reasons: tuple[Reason, ...]
    step: Step
    problem: Problem | None


def steps_between(old: Pack, new: Pack, vocabulary: Vocabulary) -> Steps:
    """The changes from one version to the next; PackRefused where they are different packs."""
    if old.name != new.name:
        raise PackRefused([Problem("pack-of-another-name", new.spot().at("pack").place(),
                                   found=new.name, expected=old.name)])
    found = tuple(reasons(old, new, vocabulary))
    step = step_of(found)
    return Steps(found, step, rise_problem(old, new, step))
