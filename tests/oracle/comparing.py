"""The program's figures for a record, as its trail gives them."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path
from typing import Any

from garboard.assembly import Workshop, open_workshop
from garboard.packs import CheckedPack
from garboard.trail import Trail

HERE = Path(__file__).parent
EXAMPLE = HERE.parent.parent / "examples" / "river-survey-launch"

#: What is compared; other figures only serve these.
COMPARED = (
    ".prospective_current", ".through_current", ".fault_current", ".highest_system_voltage",
    ".unprotected_length", ".is_paralleled", ".charging_current_sum", ".charge_current_limit",
    ".ampacity", ".protection_rating", ".is_protected")


@cache
def workshop() -> Workshop:
    return open_workshop()


@cache
def packs(name: str) -> tuple[CheckedPack, ...]:
    return workshop().load_packs([name])


def assessed(text: str, folder: Path, pack: str = str(HERE / "every-figure.yaml")) -> Trail:
    """The trail of a record's text."""
    file = folder / "record.yaml"
    file.write_text(text, "utf-8")
    return workshop().assess(file, packs(pack)).trail


def figures(trail: Trail) -> dict[str, Any]:
    """What is compared, by the key of its derivation; ``has own`` stands for an own device."""
    found = {key: each["value"] for key, each in trail.document["assessment"]["derivations"].items()
             if (key.endswith(COMPARED) and not key.startswith("string-"))
             or key == "record.energy"}
    for each in trail.findings:
        if each["rule"] == "own-device":
            found[f"{each['item']}.has own"] = each["outcome"] == "passed"
    return found


def is_unknown(value: Any) -> bool:
    return isinstance(value, dict) and "unknown" in value


def ends_of(value: Any) -> tuple[float, float]:
    """Least and greatest value of a figure of the trail."""
    if not isinstance(value, dict):
        return value, value
    assert "lo" in value, value
    return (-math.inf if value["lo"] is None else value["lo"],
            math.inf if value["hi"] is None else value["hi"])
