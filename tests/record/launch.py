"""A small record that reads without a word, to change one thing of; and marks for what is wrong.

A mark ``[[code]]`` in a changed text says: this problem, at exactly this place. Marks are taken out
before the text is read.
"""

from __future__ import annotations

import re

from garboard.documents import read_text
from garboard.errors import Problem, Refused
from garboard.record import Record, read_record

LAUNCH = """\
format: installation-record/1
vessel: {name: Marsh Harrier, length: 10.5 m, fuel: diesel}
survey: {date: 2026-04-18, place: slipway 3}
wiring: {returns: as outgoing}
places:
  - {id: locker, temperature: -5 .. 45 °C, engine_space: no}
  - {id: engine-room, temperature: 0 .. 60 °C, engine_space: yes}
batteries:
  - id: pack-1
    chemistry: LFP
    cells_in_series: 8
    nominal_voltage: 25.6 V
    capacity: 200 Ah
    open_circuit_voltage_max: 26.8 V
    internal_resistance: {value: 2.1 mΩ, plus_minus: 10 %, from: measured, temperature: 18 °C}
    short_circuit_current: {not_determinable: the label gives none}
    charge: {voltage_max: 29.2 V, current_max: 100 A, temperature: 0 .. 45 °C}
    managed_by: bms-1
    place: locker
    made: 2025-02-11
  - id: pack-2
    nominal_voltage: 25.6 V
    capacity: 200 Ah
    managed_by: none
management_systems:
  - id: bms-1
    kind: internal
    warning: {before_disconnect: yes, time: 30 s}
    outputs:
      - {name: charge relay, stops: [alternator], fail_safe: yes}
buses:
  - {id: main-bus, rating: 600 A}
charging_sources:
  - {id: alternator, kind: alternator, current_max: 110 A, place: engine-room}
loads:
  - {id: inverter, kind: inverter, power: 3000 W}
runs:
  - id: pack-1-feed
    from: pack-1.positive
    to: main-bus
    through:
      - conductor: {id: w1, size: 50 mm2, length: 0.35 m, crosses: [locker]}
      - fuse: {id: f1, class: T, rating: 250 A, breaks: [{current: 20 kA, voltage: 160 V DC}]}
      - conductor: {id: w2, size: 50 mm2, length: 0.80 m, insulation: 105 °C}
  - id: pack-2-feed
    from: pack-2
    to: main-bus
    through:
      - conductor: {id: w3, resistance: 0.2 mΩ}
    return: {size: 50 mm2, length: 1.2 m}
  - id: inverter-feed
    from: main-bus
    to: inverter.positive
    through:
      - breaker: {id: b1, rating: 200 A, poles: 1}
      - switch: {id: s1, kind: isolator, on_lost_signal: stays}
      - conductor: {id: w9}
  - id: alternator-feed
    from: alternator.positive
    to: main-bus
    through: []
answers:
  vent-path: {value: yes, by: A. Rower, on: 2026-04-18, until: 2026-10-18, evidence: [photo-1]}
evidence:
  - {id: photo-1, file: locker.jpg, shows: the locker, taken: 2026-04-18}
"""

_MARK = re.compile(r"\[\[([a-z-]+)\]\]")

#: A problem by code, line and column.
Spot = tuple[str, int, int]


def changed(old: str, new: str, text: str = LAUNCH) -> str:
    """The launch with its one ``old`` replaced."""
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in the record"
    return text.replace(old, new)


def unmarked(text: str) -> tuple[str, list[Spot]]:
    """A text without its marks, and what the marks say."""
    spots: list[Spot] = []
    plain = ""
    for number, line in enumerate(text.splitlines(keepends=True), start=1):
        removed = 0
        for mark in _MARK.finditer(line):
            spots.append((mark[1], number, mark.start() - removed + 1))
            removed += len(mark[0])
        plain += _MARK.sub("", line)
    return plain, spots


def read(text: str) -> Record:
    """Read a record from text, as from a file named record.yaml."""
    return read_record(read_text(text, "record.yaml"))


def problems(text: str) -> tuple[Problem, ...]:
    """Everything the reader has to say about a text, warnings too."""
    try:
        return read(text).warnings
    except Refused as refused:
        return refused.problems


def spot(problem: Problem) -> Spot:
    """A problem by code, line and column."""
    assert problem.place.file == "record.yaml"
    assert problem.place.line is not None and problem.place.column is not None
    return problem.code, problem.place.line, problem.place.column
