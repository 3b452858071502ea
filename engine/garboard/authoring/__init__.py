"""Tools for people who write rule packs: prove, proofread, start and try a pack."""

from garboard.authoring.bench import Bench, known_rule
from garboard.authoring.effect import Effect, effect_data, effect_on, effect_text
from garboard.authoring.proofreading import Proofread, proofread
from garboard.authoring.proving import Coverage, Proof, Proving, Seen, covered, prove
from garboard.authoring.sealing import (
    Signing,
    Steps,
    seal_pack,
    signing_with,
    steps_between,
)
from garboard.authoring.starting import new_pack
from garboard.authoring.trying import work_on_given, work_on_record, working_lines

__all__ = [
    "Bench", "Coverage", "Effect", "Proof", "Proofread", "Proving", "Seen", "Signing", "Steps",
    "covered", "effect_data", "effect_on", "effect_text", "known_rule", "new_pack", "proofread",
    "prove", "seal_pack", "signing_with", "steps_between", "work_on_given", "work_on_record",
    "working_lines",
]
