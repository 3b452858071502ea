"""The working of one rule of a pack, on what is given or on a thing of a record."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from garboard.authoring.trying.given import read_given
from garboard.errors import CommandRefused, Problem, did_you_mean
from garboard.expressions import Vocabulary, Working, compile_rules, working
from garboard.network import build_network
from garboard.packs import CheckedPack
from garboard.quantities import Figures, Registry
from garboard.record import Record
from garboard.values import System


def work_on_given(checked: CheckedPack, rule: int, texts: Sequence[str], vocabulary: Vocabulary,
                  system: System = "metric") -> Working:
    """The working of the rule with that number for a thing of which only ``texts`` are known.

    CommandRefused when a text cannot be read.
    """
    source = checked.program.sources[rule]
    limits = {name: limit.dimension for name, limit in checked.pack.limits.items()
              if limit.kind != "texts"}
    given = read_given(texts, source, vocabulary, limits)
    program = compile_rules([replace(source, limits={**source.limits, **given.limits})])
    subjects = {source.about: [given.item], **{name: [each] for name, each in
                                               given.single.items()}}
    return working(program, 0, given.item, subjects, system=system,
                   decision=checked.pack.header.decision_rule)


def work_on_record(checked: CheckedPack, rule: int, record: Record, item: str,
                   registry: Registry, system: System = "metric") -> Working:
    """The working of a rule for a thing of a record; CommandRefused when it is not about it."""
    figures = Figures(record, build_network(record), registry)
    about = checked.pack.rules[rule].about
    items = {each.id: each for each in figures.subjects.get(about) or ()}
    if item not in items:
        raise CommandRefused([Problem("given-item", found=item,
                                      expected=", ".join(items) or f"a {about}; there is none",
                                      hint=did_you_mean(item, items))])
    return working(checked.program, rule, items[item], figures.subjects, system=system,
                   decision=checked.pack.header.decision_rule)
