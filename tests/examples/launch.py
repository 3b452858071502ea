"""The records of the river survey launch, read, assessed and worked out once for all tests."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from garboard.assembly import Workshop, open_workshop
from garboard.documents import read_document
from garboard.network import build_network
from garboard.packs import CheckedPack
from garboard.quantities import Figures
from garboard.trail import Trail

HERE = Path(__file__).parent
FOLDER = HERE.parents[1] / "examples" / "river-survey-launch"
RECORDS = ("before", "after-as-fitted", "after-corrected")
PACK = "small-craft-lithium"

#: (rule, item, outcome, reason)
Row = tuple[str, str | None, str, str | None]


@cache
def workshop() -> tuple[Workshop, tuple[CheckedPack, ...]]:
    """A workshop and the shipped pack."""
    opened = open_workshop()
    return opened, opened.load_packs((PACK,))


def trail_of(file: Path) -> Trail:
    """The trail of a record file."""
    opened, packs = workshop()
    return opened.assess(file, packs).trail


@cache
def shipped_trail(name: str) -> Trail:
    """The trail of one of the example's records."""
    return trail_of(FOLDER / f"{name}.yaml")


@cache
def figures(name: str) -> Figures:
    """All figures of one of the example's records."""
    opened, _ = workshop()
    record = opened.read_record(FOLDER / f"{name}.yaml")
    return Figures(record, build_network(record), opened.registry)


def rows(trail: Trail) -> set[Row]:
    """The findings of a trail, as far as they are compared."""
    return {(each["rule"], each["item"], each["outcome"], each["reason"])
            for each in trail.findings}


@cache
def expected() -> dict[str, Any]:
    """What the data file beside this one says, by record."""
    data = read_document(HERE / "river_survey_launch.yaml").data
    assert isinstance(data, dict)
    return data
