"""An assessment: packs on a record, and the trail of it."""

from __future__ import annotations

import time
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from garboard.assessment.answering import answers_of, unasked
from garboard.assessment.day import Day
from garboard.assessment.derived import derivations_in_trail, quantities_in_trail
from garboard.assessment.dispensing import mark_dispensed
from garboard.assessment.facts import places_of, record_in_trail
from garboard.assessment.findings import findings_of
from garboard.assessment.packs import pack_in_trail
from garboard.documents import write_whole
from garboard.errors import Problem
from garboard.expressions import Row
from garboard.network import build_network
from garboard.packs import CheckedPack, Dispensation
from garboard.quantities import Figures, Registry
from garboard.record import Record
from garboard.trail import Trail, make_trail, trail_bytes
from garboard.values import Truth


@dataclass(frozen=True, slots=True)
class Assessment:
    """What came of one assessment: its trail, and warnings about what went in."""

    trail: Trail
    warnings: tuple[Problem, ...]

    def write(self, file: Path) -> None:
        """Write the trail, whole or not at all; OutputRefused when it cannot be written."""
        write_whole(file, trail_bytes(self.trail))


def assess(record: Record, packs: Sequence[CheckedPack], registry: Registry, day: Day,
           about: Mapping[str, Any], timings: Mapping[str, float] | None = None,
           dispensations: Sequence[Dispensation] = (),
           previous: str | None = None) -> Assessment:
    """Assess a record against packs.

    DispensationsRefused when a rule cannot be dispensed with, or it is not clear which is meant;
    RecordRefused when an answer is not what a pack asks for.
    ``about`` goes into the part of the trail outside the digest, and ``timings`` (seconds by part
    of the work) with it. ``previous`` is the digest of the vessel's previous trail.
    """
    clock = _Clock(timings or {})
    figures = Figures(record, build_network(record), registry)
    clock.mark("network")
    answers = [answers_of(checked, record, day.day) for checked in packs]
    ran = [(checked, *_run(checked, figures, given.values))
           for checked, given in zip(packs, answers, strict=True)]
    clock.mark("figures and rules")
    findings = [finding for checked, applies, rows in ran
                for finding in findings_of(checked, figures, applies, rows)]
    dispensed = mark_dispensed(findings, dispensations, packs, record, day.day.isoformat())
    derivations = derivations_in_trail(figures, _keys_of(findings))
    irregularities = [{"code": each.code, "items": list(each.items), "text": each.text}
                      for each in figures.network.irregularities]
    warnings = (*record.warnings, *(each for checked in packs for each in checked.warnings),
                *dispensed.warnings, *unasked(record, packs),
                *(each for given in answers for each in given.warnings))
    trail = make_trail(
        date=day.day.isoformat(), date_from=day.origin, record=record_in_trail(record),
        packs=[pack_in_trail(checked, applies) for checked, applies, _ in ran],
        findings=findings, derivations=derivations,
        quantities=quantities_in_trail(derivations, figures), irregularities=irregularities,
        dispensations=dispensed.in_trail, previous=previous,
        about={**about, "places": places_of(record, record.document),
               "warnings": [each.as_data() for each in warnings],
               "failures": [{"of": each.key, "raised": each.raised, "traceback": each.traceback}
                            for each in figures.failures],
               "timings": clock.marks})
    return Assessment(trail, warnings)


def _run(checked: CheckedPack, figures: Figures, answers: Mapping[str, Any],
         ) -> tuple[Truth, Sequence[Row]]:
    """Whether the pack applies, and its rows; none where it does not or that is not known."""
    applies = checked.applies(figures.subjects, answers)
    if applies is not True:
        return applies, ()
    return True, checked.program.run(figures.subjects, checked.pack.header.decision_rule, answers)


def _keys_of(findings: Sequence[Mapping[str, Any]]) -> list[str]:
    return [key for finding in findings for keys in finding["of"] for key in keys]


class _Clock:
    """Seconds by part of the work, for the part of the trail outside the digest."""

    def __init__(self, marks: Mapping[str, float]) -> None:
        self.marks = dict(marks)
        self._last = time.perf_counter()

    def mark(self, part: str) -> None:
        now = time.perf_counter()
        self.marks[part], self._last = round(now - self._last, 6), now
