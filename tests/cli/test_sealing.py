"""Sealing at the command line, and assessing with what was sealed."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from cli.ran import ROOT, Ran
from garboard.documents import shipped_folder

RECORD = ROOT / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
Garboard = Callable[..., Ran]
SIGNED = ("--key", "firm.secret.pem", "--signer", "Our Firm", "--signed-on", "2026-04-18")


@pytest.fixture
def house(tmp_path: Path) -> Path:
    """The shipped house rules, to be changed."""
    shutil.copytree(shipped_folder("rulepacks") / "house-rules-example", tmp_path / "house")
    return tmp_path / "house"


def test_in_a_full_circle(garboard: Garboard, house: Path) -> None:
    assert garboard("key", "new", "firm").code == 0
    done = garboard("pack", "seal", "./house", "--to", "house.sealed.json", *SIGNED)
    assert done.code == 0
    (_, version, digest), (*_, fingerprint) = (
        line.split() for line in done.out.splitlines()[-2:])
    pin = (f"format: pack-list/1\npacks:\n  - pack: house-rules-example\n"
           f"    version: {version}\n"
           f"    digest: {digest}\n    file: house.sealed.json\n    signed_by: {fingerprint}\n")
    (house.parent / "office.yaml").write_text(pin)
    assert garboard("assess", RECORD, "--pack", "./house", "--trail", "a.trail.json").code == 1
    done = garboard("assess", RECORD, "--pack-list", "office.yaml", "--trail", "b.trail.json")
    assert (done.code, "(sealed and signed," in done.out) == (1, True)
    plain, sealed = done.trail("a.trail.json"), done.trail("b.trail.json")
    assert plain["assessment"]["findings"] == sealed["assessment"]["findings"]
    assert sealed["assessment"]["packs"][0]["signature"]["signer"] == "Our Firm"
    assert "signed, as stated by Our Firm on 2026-04-18" in " ".join(done.out.split())
    # the unsigned working copy is not what the list pins
    done = garboard("assess", RECORD, "--pack", "./house", "--pack-list", "office.yaml")
    assert (done.code, "signature-missing" in done.err) == (3, True)
    assert not (house.parent / "after-as-fitted.trail.json").exists()


def test_a_version_that_does_not_rise_is_not_sealed(garboard: Garboard, house: Path) -> None:
    garboard("pack", "seal", "./house", "--to", "old.sealed.json")
    head = house / "pack.yaml"
    assert "150 mm" in "".join(file.read_text() for file in house.rglob("*.yaml"))
    for file in house.rglob("*.yaml"):
        file.write_text(file.read_text().replace("150 mm", "160 mm"))
    refused = garboard("pack", "seal", "./house", "--previous", "old.sealed.json")
    assert (refused.code, "version-rises-too-little" in refused.err) == (3, True)
    assert not (house.parent / "house-rules-example.sealed.json").exists()
    step = garboard("pack", "step", "old.sealed.json", "./house")
    assert (step.code, step.out.split()[0]) == (1, "major")
    head.write_text(re.sub(r"(?m)^version: .*", "version: 99.0.0", head.read_text()))
    assert garboard("pack", "step", "old.sealed.json", "./house").code == 0
    assert garboard("pack", "seal", "./house", "--previous", "old.sealed.json").code == 0


@pytest.mark.parametrize(("arguments", "code"), [
    (("--to", "house.json"), "seal-ending"),
    (("--key", "firm.secret.pem"), "seal-unsigned"),
    ((*SIGNED[:4], "--signed-on", "today"), "date-unreadable"),
    (SIGNED, "document-missing"),
    (("--previous", "small-craft-lithium"), "pack-of-another-name")])
def test_what_cannot_be_sealed_so(garboard: Garboard, house: Path, arguments: tuple[str, ...],
                                  code: str) -> None:
    refused = garboard("pack", "seal", "./house", *arguments)
    assert (refused.code, code in refused.err) == (3, True)
    assert not list(house.parent.glob("*.json"))


def test_a_stray_file_and_a_sealed_pack_that_is_read(garboard: Garboard, house: Path) -> None:
    garboard("pack", "seal", "./house", "--to", "old.sealed.json")
    again = garboard("pack", "seal", "old.sealed.json", "--to", "old.sealed.json")
    assert (again.code, "seal-over-input" in again.err) == (3, True)
    (house / "notes.xlsx").write_text("x")
    refused = garboard("pack", "seal", "./house")
    assert (refused.code, "seal-stray-file" in refused.err) == (3, True)


def test_neither_pack_nor_list(garboard: Garboard) -> None:
    refused = garboard("assess", RECORD)
    assert (refused.code, "--pack-list" in refused.err) == (3, True)


def test_a_public_key_has_a_fingerprint(garboard: Garboard) -> None:
    said = garboard("key", "new", "firm").out.split()[-1]
    assert garboard("key", "show", "firm.public.pem").out.strip() == said
    assert garboard("key", "new", "firm").code == 3
