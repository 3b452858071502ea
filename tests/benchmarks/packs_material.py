"""Three packs, one on another, with 100 rules together, made of the text of a shipped pack."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import cycle, islice
from pathlib import Path

from garboard.documents import shipped_folder

SOURCE = "small-craft-lithium"
RULES = {"lowest": 60, "middle": 25, "top": 15}
_HEAD = """\
format: rule-pack/1
pack: {name}
version: 1.0.0
title: A pack to measure with
"""
_ON = "builds_on: [{{pack: {name}, from: 1.0.0, before: 2.0.0}}]\n"
_WHY = "reason: To measure with, author: Nobody"


def write_layers(folder: Path) -> list[Path]:
    """Write the three packs, each a file; the lowest first."""
    limits, rules = _parts()
    texts = cycle(rules)
    names, files = list(RULES), []
    written: list[str] = []
    for place, (name, count) in enumerate(RULES.items()):
        own = [re.sub(r"^  - id: .*", f"  - id: {name}-{number}", text)
               for number, text in enumerate(islice(texts, count))]
        text = _HEAD.format(name=name)
        if place:
            text += _ON.format(name=names[place - 1]) + _changes(name, written)
        else:
            text += "limits:\n" + "".join(limits)
        file = folder / f"{name}.yaml"
        file.write_text(text + "rules:\n" + "".join(own))
        files.append(file)
        written += [f"{name}-{number}" for number in range(count)]
    return files


def _changes(name: str, below: Sequence[str]) -> str:
    """Severities and texts of some rules below set anew, another few by each layer."""
    first = 0 if name == "middle" else 10
    lines = [f"  - {{rule: {rule}, severity: notice, {_WHY}}}\n" for rule in below[first:first + 4]]
    lines += [f"  - {{rule: {rule}, title: Said otherwise}}\n"
              for rule in below[first + 4:first + 8]]
    return "changes:\n" + "".join(lines)


def _parts() -> tuple[list[str], list[str]]:
    """The limits and the rules of the shipped pack, each as its text; not those that ask."""
    limits, rules = [], []
    pack = shipped_folder("rulepacks") / SOURCE
    for file in sorted(pack.rglob("*.yaml")):
        if "cases" in file.parts:
            continue
        text = file.read_text("utf-8")
        for key, into, item in (("limits", limits, r"(?m)^(?=  [a-z_]+:$|  [a-z_]+: \{)"),
                                ("rules", rules, r"(?m)^(?=  - id: )")):
            found = re.search(rf"(?ms)^{key}:\n(.*?)(?=^[a-z]|\Z)", text)
            if found:
                into += [each for each in re.split(item, found[1]) if each.strip()
                         and not each.lstrip().startswith("#")]
    return limits, [each for each in rules if "answer." not in each]
