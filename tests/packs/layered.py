"""Small packs that build on each other, and a way to resolve them."""

from __future__ import annotations

from pathlib import Path

from garboard.errors import PackRefused
from garboard.packs import CheckedPack, Shelf, load_pack
from packs.small_vocabulary import VOCABULARY

BASE = """\
format: rule-pack/1
pack: base
version: 1.2.0
title: What all build on
applies_when: record.has_lithium
limits:
  least: {value: 5 A, citation: {basis: house}}
  reach: {value: 7 in, citation: {basis: house}}
  share: {value: 80 %, citation: {basis: house}}
  classes: {value: [T, ANL], citation: {basis: house}}
rules:
  - id: rated
    title: Rated
    about: device
    must_hold: device.rating >= least
    severity: warning
    citation: {basis: practice}
    why: Because.
    recommendation: Change it.
  - id: near
    title: Near
    about: run
    applies_when: any(d.on_path for d in run.devices)
    must_hold: run.length <= reach
    severity: danger
    citation: {basis: practice}
    why: Because.
    recommendation: Change it.
  - id: shared
    title: Shared
    about: device
    must_hold: device.rating <= share * device.rating or device.class in classes
    severity: caution
    citation: {basis: practice}
    why: Because.
    recommendation: Change it.
    covers: part
    left_to_a_person: The rest.
"""
HEAD = """\
format: rule-pack/1
pack: {name}
version: 1.0.0
title: On top
builds_on: [{below}]
"""
ON_BASE = "{pack: base, from: 1.0.0, before: 2.0.0}"
WHY = ", reason: It is so, author: A. Person"


def on_top(*changes: str, name: str = "top", below: str = ON_BASE, more: str = "") -> str:
    """A layer with these changes, each as a flow mapping without its braces."""
    head = HEAD.replace("{name}", name).replace("{below}", below)
    listed = "".join(f"  - {{{each}}}\n" for each in changes)
    return head + (f"changes:\n{listed}" if changes else "") + more


def written(folder: Path, **packs: str) -> Path:
    """The packs as files of their name in a folder; the path of the last."""
    path = folder
    for name, text in {"base": BASE, **packs}.items():
        path = folder / f"{name}.yaml"
        path.write_text(text, "utf-8")
    return path


def loaded(folder: Path, *named: Path, **packs: str) -> CheckedPack:
    """The last of the packs, resolved and checked."""
    return load_pack(written(folder, **packs), VOCABULARY, Shelf((), named))


def refused(folder: Path, **packs: str) -> list[tuple[str, str, int]]:
    """Code, file and line of each error in the last of the packs."""
    try:
        loaded(folder, **packs)
    except PackRefused as problems:
        return [(each.code, Path(each.place.file or "").stem, each.place.line or 0)
                for each in problems.problems if each.level == "error"]
    return []
