"""Bad input at the command line: one clear problem with its place, exit code 3, nothing written."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import HERE, Ran

RECORD = (HERE / "three-packs.yaml").read_text("utf-8")
PACK = (HERE / "figures-pack.yaml").read_text("utf-8")

# what is written instead of what, in which file, and the first line of the refusal
SLIPS = [
    ("record", "2.4 mΩ}", "2.4 mV}", "slip.yaml:11:93: unit-mismatch:"),
    ("record", "2.4 mΩ}", "2,4 mΩ}", None),
    ("record", "2.4 mΩ}", '"2,4 mΩ"}', "slip.yaml:11:91: unit-comma:"),
    ("record", "2.4 mΩ}", "2.4}", "slip.yaml:11:89: unit-missing:"),
    ("record", "survey: {date: 2026-01-15}", "survey: {date: 2026-01-15, date: 2026-01-16}",
     "slip.yaml:5:28: duplicate-key:"),
    ("record", "kind: test case", "knid: test case", "slip.yaml:4:31: key-unknown:"),
    ("record", "to: panel\n", "to: pannel\n", "slip.yaml:40:9: reference-unknown:"),
    ("pack", "device.through_current > nothing", "device.thruogh_current > nothing",
     "slip.yaml:19:23: expression-field:"),
    ("pack", "device.through_current > nothing", "device.through_current > 0 A",
     "slip.yaml:19:41: expression-unit:"),
    ("pack", "device.through_current > nothing", "device.through_current > 5",
     "slip.yaml:19:41: expression-dimension:"),
]


@pytest.mark.parametrize(("which", "old", "new", "line"), SLIPS,
                         ids=[f"{row[0]}: {row[2].strip()}" for row in SLIPS])
def test_slip(garboard: Callable[..., Ran], which: str, old: str, new: str,
              line: str | None) -> None:
    source = RECORD if which == "record" else PACK
    assert source.count(old) >= 1
    Path("slip.yaml").write_text(source.replace(old, new, 1), "utf-8")
    ran = garboard("assess", "slip.yaml" if which == "record" else HERE / "three-packs.yaml",
                   "--pack", "slip.yaml" if which == "pack" else HERE / "figures-pack.yaml")
    assert ran.code == 3, ran.out
    assert "Traceback" not in ran.err
    assert sorted(path.name for path in ran.folder.iterdir()) == ["slip.yaml"]
    if line is not None:
        assert ran.err.splitlines()[0].startswith(line), ran.err


@pytest.mark.parametrize(("arguments", "code"), [
    (["assess", "no-such.yaml", "--pack", "small-craft-lithium"], "document-missing"),
    (["assess", ".", "--pack", "small-craft-lithium"], "document-folder"),
    (["assess", HERE / "three-packs.yaml", "--pack", "small-craft-litium"], "pack-not-found"),
    (["assess", HERE / "three-packs.yaml", "--pack", "small-craft-lithium", "--on", "12.3.2026"],
     "date-unreadable"),
    (["assess", HERE / "three-packs.yaml"], "command-line"),
    (["asses", HERE / "three-packs.yaml"], "command-unknown"),
    (["assess", HERE / "three-packs.yaml", "--pack", HERE / "figures-pack.yaml", "--frobnicate"],
     "command-line"),
    (["assess", HERE / "three-packs.yaml", HERE / "three-packs.yaml", "--pack",
      HERE / "figures-pack.yaml", "--trail", "one.json"], "trail-for-several"),
    (["assess", HERE / "three-packs.yaml", "--pack", HERE / "figures-pack.yaml", "--trail",
      HERE / "three-packs.yaml"], "trail-over-input"),
    (["quantities", "device.prospective_curent"], "quantity-unknown"),
])
def test_refused(garboard: Callable[..., Ran], arguments: list[object], code: str) -> None:
    ran = garboard(*arguments)
    assert ran.code == 3, ran.out
    assert f": {code}: " in ran.err.splitlines()[0], ran.err
    assert "Traceback" not in ran.err
    assert list(ran.folder.iterdir()) == []


def test_a_refused_record_does_not_keep_the_others_from_being_assessed(
        garboard: Callable[..., Ran]) -> None:
    Path("bad.yaml").write_text("format: installation-record/1\n", "utf-8")
    ran = garboard("assess", "missing.yaml", HERE / "three-packs.yaml", "--pack",
                   HERE / "figures-pack.yaml")
    assert ran.code == 3
    assert (ran.folder / "three-packs.trail.json").exists()


def test_a_trail_that_cannot_be_written_is_refused(garboard: Callable[..., Ran]) -> None:
    ran = garboard("assess", HERE / "three-packs.yaml", "--pack", HERE / "figures-pack.yaml",
                   "--trail", "no/such/folder/trail.json")
    assert ran.code == 3
    assert "no/such/folder" in ran.err
    assert ran.out == ""


def test_a_record_over_the_size_limit_is_refused_unread_and_the_limit_can_be_raised(
        garboard: Callable[..., Ran]) -> None:
    padding = "# " + "x" * 98 + "\n"
    Path("large.yaml").write_text(RECORD + padding * 10_000, "utf-8")
    ran = garboard("assess", "large.yaml", "--pack", HERE / "figures-pack.yaml",
                   "--size-limit", "1")
    assert ran.code == 3
    assert ran.err.splitlines()[0].endswith("document-too-large: The file is too large")
    assert "1,000,000" in ran.err
    assert garboard("assess", "large.yaml", "--pack", HERE / "figures-pack.yaml").code == 1
