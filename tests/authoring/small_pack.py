"""A small pack and records for it, to plant mistakes in."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from garboard.assembly import Workshop, open_workshop
from garboard.authoring import Bench

HEAD = """\
format: rule-pack/1
pack: planted
version: 0.1.0
title: A pack to plant mistakes in
"""

LIMITS = """\
limits:
  least_rating: {value: 100 A, citation: {basis: house}}
  most_length: {value: 2 m, citation: {basis: house}}
"""

ABOUT_A_RULE = """\
    severity: caution
    citation: {basis: house}
    why: It would burn, slowly.
    recommendation: Mend it.
"""

RULES = f"""\
rules:
  - id: strong-fuse
    title: A fuse is strong
    about: device
    applies_when: device.kind == "fuse"
    must_hold: device.rating >= least_rating
{ABOUT_A_RULE}  - id: short-cable
    title: A cable is short
    about: conductor
    must_hold: conductor.length <= most_length
{ABOUT_A_RULE}"""

RECORD = """\
format: installation-record/1
survey: {date: 2026-03-02}
batteries: [{id: pack, open_circuit_voltage_max: 28 V, internal_resistance: 2 mΩ}]
buses: [{id: bus}]
runs:
  - id: lead
    from: pack.positive
    to: bus
    through:
      - fuse: {id: f1, rating: 125 A}
      - conductor: {id: w1, length: 1 m}
"""

CASES = """\
format: case/1
cases:
  - case: strong
    rules: [strong-fuse]
    base: base/small.yaml
    expect: [{item: f1, outcome: passed}]
    nothing_else: yes
"""


@cache
def workshop() -> Workshop:
    """One for all tests: nothing in it changes but the list of files it has read."""
    return open_workshop()


def planted(folder: Path, cases: str = CASES, rules: str = RULES, record: str = RECORD) -> Path:
    """The folder of a pack with those cases."""
    pack = folder / "planted"
    (pack / "cases" / "base").mkdir(parents=True)
    (pack / "pack.yaml").write_text(HEAD + LIMITS + rules)
    (pack / "cases" / "one.yaml").write_text(cases)
    (pack / "cases" / "base" / "small.yaml").write_text(record)
    return pack


def bench(pack: Path, rule: str | None = None) -> Bench:
    return Bench.of(workshop(), str(pack), rule)
