"""A pack whose expressions are right, compiled once for all records."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Final

from garboard.errors import PackRefused, Problem, in_order
from garboard.expressions import (
    PASSED,
    Checked,
    Program,
    RuleSource,
    Vocabulary,
    compile_rules,
)
from garboard.expressions.program import Subjects
from garboard.packs.acceptance import acceptance_problems
from garboard.packs.files import is_sealed
from garboard.packs.layering import ADDED
from garboard.packs.layers.resolving import Resolver
from garboard.packs.layers.shelf import Shelf, shipped_shelf
from garboard.packs.needs import declared_vocabulary, need_problems
from garboard.packs.overruling import overruling_answer
from garboard.packs.pack import Pack
from garboard.packs.reading import hashed
from garboard.packs.spot import Spot
from garboard.packs.wording import wording_of
from garboard.values import Truth


@dataclass(frozen=True, slots=True)
class Compiled:
    """The programs of a pack: one of all rules, in the order of ``pack.rules``, and its gate.

    ``gate`` is the pack's own condition about the record; ``None``: it always applies.
    ``vocabulary`` holds what the pack declares of plugins that are not installed too.
    """

    program: Program
    gate: Program | None
    unused_limits: tuple[str, ...]
    vocabulary: Vocabulary
    warnings: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class CheckedPack:
    """A pack ready to be run. The number of a row of ``program`` is that of ``pack.rules``."""

    pack: Pack
    compiled: Compiled
    warnings: tuple[Problem, ...]

    @property
    def program(self) -> Program:
        return self.compiled.program

    def applies(self, subjects: Subjects, answers: Mapping[str, Any] | None = None) -> Truth:
        """Whether the pack applies to a record, or why that is not known."""
        if self.compiled.gate is None:
            return True
        ((_, _, outcome, unknown, _, _),) = self.compiled.gate.run(
            subjects, self.pack.header.decision_rule, answers or {})
        return unknown if unknown is not None else outcome == PASSED


def load_pack(path: str | Path, vocabulary: Vocabulary, shelf: Shelf | None = None,
              ) -> CheckedPack:
    """The pack in a folder or file, checked; PackRefused with every problem of it at once.

    The packs it builds on are found on the ``shelf``: beside it and among the shipped ones, if
    none is given.
    """
    resolver = Resolver(shelf or shipped_shelf(), vocabulary)
    if is_sealed(Path(path)):
        return check_pack(resolver.sealed(Path(path)), vocabulary)
    draft = resolver.draft(Path(path))
    if draft.refused and draft.head.at("builds_on").data is None:
        header = draft.header
        questions, needs = ((), ()) if header is None else (header.questions, header.needs)
        wording = wording_of(draft.head, [spot for spot, _ in draft.rules], draft.limits,
                             questions, declared_vocabulary(needs, vocabulary))
        raise PackRefused([*draft.problems, *wording.problems])
    return check_pack(hashed(resolver.stack(Path(path)).pack()), vocabulary)


def check_pack(pack: Pack, vocabulary: Vocabulary) -> CheckedPack:
    """The pack with its expressions held against the vocabulary and compiled.

    What is compiled is kept by the pack's digest, so a pack that was checked before with the same
    vocabulary is not looked at again. PackRefused with every problem, each at its place.
    """
    kept = _KEPT.get(pack.digest)
    if kept is None or kept[0] is not vocabulary:
        kept = (vocabulary, _compiled(pack, vocabulary))
        while len(_KEPT) >= _MOST_KEPT:
            del _KEPT[next(iter(_KEPT))]
        _KEPT[pack.digest] = kept
    unused = [Problem("limit-unused", pack.spot("limits", name).place(key=True), found=name,
                      level="warning") for name in kept[1].unused_limits if _own(pack, name)]
    return CheckedPack(pack, kept[1], in_order([*pack.warnings, *kept[1].warnings, *unused]))


def forget() -> None:
    """Forget what is kept compiled, as a new process would: for measuring."""
    _KEPT.clear()


def _overrules(rule: Spot, read: tuple[Checked | None, Checked] | None) -> Problem | None:
    """What is wrong with a rule in which an answer overrules what is computed."""
    answer = None if read is None else overruling_answer(read[1].root)
    if answer is None:
        return None
    place = rule.at("must_hold").place(offset=answer.offset)
    return Problem("answer-overrules", replace(place, length=answer.length),
                   found=f"answer.{answer.question}")


def _own(pack: Pack, limit: str) -> bool:
    """Whether a limit is the pack's own, not one of a pack below whose rules may be retired."""
    return pack.layering is None or pack.layering.setter(
        "limit", limit, ADDED) == f"{pack.name} {pack.version}"


_MOST_KEPT: Final = 64
_KEPT: dict[str, tuple[Vocabulary, Compiled]] = {}


def _compiled(pack: Pack, vocabulary: Vocabulary) -> Compiled:
    limits = {name: (pack.spot("limits", name), limit) for name, limit in pack.limits.items()}
    needs = tuple(need_problems(pack.header.needs, pack.spot(), vocabulary))
    vocabulary = declared_vocabulary(pack.header.needs, vocabulary)
    wording = wording_of(pack.spot(), [pack.spot("rules", rule.id) for rule in pack.rules], limits,
                         pack.header.questions, vocabulary)
    problems = [*wording.problems, *needs]
    problems += [overrules for rule, read in zip(pack.rules, wording.rules, strict=True)
                 if (overrules := _overrules(pack.spot("rules", rule.id), read)) is not None]
    if pack.header.acceptance is not None:
        problems += acceptance_problems(pack.header.acceptance, pack.spot().at("acceptance"),
                                        [rule.id for rule in pack.rules])
    if any(problem.level == "error" for problem in problems):
        raise PackRefused([*pack.warnings, *problems])
    amounts = {name: limit.amount for name, limit in pack.limits.items()}
    sources = [RuleSource(rule.id, requirement, condition, amounts)
               for rule, (condition, requirement) in zip(pack.rules, wording.read, strict=True)]
    gates = [] if wording.gate is None else [RuleSource(pack.name, wording.gate, None, amounts)]
    used = {name for source in (*sources, *gates) for part in source.parts for name in part.limits}
    return Compiled(compile_rules(sources), compile_rules(gates) if gates else None,
                    tuple(name for name in pack.limits if name not in used), vocabulary, needs)
