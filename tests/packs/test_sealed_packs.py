"""Sealed packs: the same pack as the folder, usable as it is, and refused when anything is off."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from garboard.assembly import open_workshop
from garboard.documents import new_key_pair, read_secret_key, schema_problems, shipped_folder
from garboard.documents import read_text as read_document_text
from garboard.errors import Refused
from garboard.packs import load_pack, open_sealed, read_pack, sealed_bytes, sealed_pack_schema
from garboard.packs.files import find_pack, known_packs
from garboard.packs.layers.standing import standing_stack
from garboard.packs.sealing import stray_problems
from garboard.trail import canonical_bytes, digest_of
from packs.layered import BASE, HEAD, ON_BASE, WHY
from packs.small_vocabulary import VOCABULARY

SHIPPED = shipped_folder("rulepacks")
WORKSHOP = open_workshop()
RECORD = Path(__file__).parents[2] / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
PACKS = [path.name for path in sorted(SHIPPED.iterdir()) if path.is_dir()]
MIDDLE = HEAD.format(name="middle", below=ON_BASE) + f"""\
changes:
  - {{rule: near, severity: caution{WHY}}}
  - {{limit: reach, value: 9 in{WHY}}}
  - {{rule: shared, retire: true{WHY}}}
  - {{limit: least, value: 6 A}}
"""
TOP = HEAD.format(name="top", below="{pack: middle, from: 1.0.0, before: 2.0.0}") + """\
changes:
  - {rule: near, severity: danger, replaces: [middle]}
"""


def codes(refused: pytest.ExceptionInfo[Refused]) -> set[str]:
    return {each.code for each in refused.value.problems}


def sealed(folder: Path, name: str) -> Path:
    """A shipped pack, sealed into a folder."""
    checked = WORKSHOP.load_packs([str(SHIPPED / name)])[0]
    file = folder / f"{name}.sealed.json"
    file.write_bytes(sealed_bytes(checked.pack))
    return file


@pytest.mark.parametrize("name", PACKS)
def test_a_sealed_pack_is_the_pack(tmp_path: Path, name: str) -> None:
    file = sealed(tmp_path, name)
    folder = WORKSHOP.load_packs([str(SHIPPED / name)])[0].pack
    pack = open_sealed(file)
    assert (pack, pack.digest) == (folder, folder.digest)
    assert pack.seal is not None and pack.seal.signature is None and folder.seal is None
    assert sealed_bytes(pack) == file.read_bytes()
    document = read_document_text(file.read_text(), "x.json")
    assert schema_problems(document, sealed_pack_schema()) == []


@pytest.mark.parametrize("name", ["small-craft-lithium", "house-rules-example"])
def test_it_gives_the_same_findings_as_the_folder(tmp_path: Path, name: str) -> None:
    file = sealed(tmp_path, name)
    plain, from_seal = (WORKSHOP.assess(RECORD, WORKSHOP.load_packs([each])).trail
                        for each in (str(SHIPPED / name), str(file)))
    assert from_seal.findings == plain.findings and len(plain.findings) > 50
    assert [each["status"] for each in plain.packs] == ["working copy"]
    assert [each["status"] for each in from_seal.packs] == ["sealed"]
    assert from_seal.packs[0]["digest"] == plain.packs[0]["digest"]
    assert WORKSHOP.replay(from_seal).trail.digest == from_seal.digest


@pytest.mark.parametrize("name", PACKS)
def test_what_stands_resolved_comes_to_the_same_stack(name: str) -> None:
    pack = WORKSHOP.load_packs([str(SHIPPED / name)])[0].pack
    assert standing_stack(pack).pack().as_data() == pack.as_data()


def test_a_layer_on_a_sealed_pack_is_as_on_the_folder(tmp_path: Path) -> None:
    for name, text in (("base", BASE), ("middle", MIDDLE), ("top", TOP)):
        (tmp_path / f"{name}.yaml").write_text(text)
    plain = load_pack(tmp_path / "top.yaml", VOCABULARY).pack
    middle = load_pack(tmp_path / "middle.yaml", VOCABULARY).pack
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "middle.sealed.json").write_bytes(sealed_bytes(middle))
    (elsewhere / "top.yaml").write_text(TOP)
    on_seal = load_pack(elsewhere / "top.yaml", VOCABULARY).pack
    assert [each.as_data() for each in middle.relaxations] == [
        each.as_data() for each in open_sealed(elsewhere / "middle.sealed.json").relaxations]
    assert on_seal.rules == plain.rules and on_seal.limits == plain.limits
    assert on_seal.layering is not None and plain.layering is not None
    assert on_seal.layering.layers == plain.layering.layers
    assert on_seal.layering.set_by == plain.layering.set_by
    told = {each.what for each in plain.relaxations}
    assert told <= {each.what for each in on_seal.relaxations}


def test_it_is_found_by_its_name_before_the_folder(tmp_path: Path) -> None:
    (tmp_path / "base.yaml").write_text(BASE)
    file = tmp_path / "base.sealed.json"
    file.write_bytes(sealed_bytes(read_pack(tmp_path / "base.yaml")))
    assert find_pack("base", (tmp_path,)) == file
    assert known_packs((tmp_path,)) == ("base",)


def rewritten(change: Callable[[dict[str, Any]], object]) -> Callable[[bytes], bytes]:
    def changed(raw: bytes) -> bytes:
        data = json.loads(raw)
        change(data)
        return canonical_bytes(data) + b"\n"
    return changed


def with_digest(change: Callable[[dict[str, Any]], object]) -> Callable[[bytes], bytes]:
    """A change by someone who computes the digest anew."""
    def again(data: dict[str, Any]) -> None:
        change(data["pack"])
        data["digest"] = digest_of(data["pack"])
    return rewritten(again)


REFUSED: list[tuple[str, Callable[[bytes], bytes], str]] = [
    ("a changed byte", lambda raw: raw.replace(b"5 A", b"6 A", 1), "sealed-digest-wrong"),
    ("a changed digest", lambda raw: raw.replace(b'"sha256:', b'"sha256:0', 1)[:-1] + b"\n",
     "schema-pattern"),
    ("a space more", lambda raw: raw.replace(b'{"', b'{ "', 1), "sealed-not-canonical"),
    ("no line feed", lambda raw: raw[:-1], "sealed-not-canonical"),
    ("a carriage return", lambda raw: raw[:-1] + b"\r\n", "sealed-not-canonical"),
    ("cut short", lambda raw: raw[:-20], "json-syntax"),
    ("a key more", rewritten(lambda data: data.update(note="x")), "schema-unknown-key"),
    ("another format", rewritten(lambda data: data.update(format="sealed-pack/2")),
     "sealed-format"),
    ("a pack as written", rewritten(lambda data: data.update(data.pop("pack"))),
     "sealed-format"),
    ("an amount that is not what is written",
     with_digest(lambda pack: pack["limits"]["least"].update(amount=99.0)), "pack-data-differs"),
    ("a layer not resolved", with_digest(lambda pack: pack.update(changes=[])),
     "pack-data-differs"),
    ("a rule of an unknown shape", with_digest(lambda pack: pack["rules"][0].update(x=1)),
     "key-unknown"),
]


@pytest.mark.parametrize(("change", "code"), [each[1:] for each in REFUSED],
                         ids=[each[0] for each in REFUSED])
def test_what_is_off_is_refused_by_name(tmp_path: Path, change: Callable[[bytes], bytes],
                                        code: str) -> None:
    (tmp_path / "base.yaml").write_text(BASE)
    raw = sealed_bytes(read_pack(tmp_path / "base.yaml"))
    file = tmp_path / "changed.sealed.json"
    file.write_bytes(change(raw))
    with pytest.raises(Refused) as refused:
        load_pack(file, VOCABULARY)
    assert codes(refused) == {code}
    assert {each.place.file for each in refused.value.problems} == {str(file)}


def dropped(data: dict[str, Any], *path: str) -> None:
    for step in path[:-1]:
        data = data[step]
    del data[path[-1]]


#: What someone who computes the digest anew may say of the layers.
LIES: list[tuple[str, Callable[[dict[str, Any]], object]]] = [
    ("nobody added a rule", lambda pack: dropped(pack, "set_by", "rule", "near", "added")),
    ("nothing is said of a limit", lambda pack: dropped(pack, "set_by", "limit", "least")),
    ("nobody added the head", lambda pack: dropped(pack, "set_by", "head", "added")),
    ("a field that is none", lambda pack: pack["set_by"]["rule"]["near"].update(x="base 1.2.0")),
    ("a rule that is none", lambda pack: pack["set_by"]["rule"].update(x={"added": "base 1.2.0"})),
    ("a layer without version", lambda pack: pack["set_by"]["rule"]["near"].update(added="base")),
    ("a rule in force retired", lambda pack: pack["set_by"]["rule"]["near"].update(
        retire="middle 1.0.0")),
    ("nobody retired", lambda pack: dropped(pack, "set_by", "rule", "shared", "retire")),
    ("a relaxation less", lambda pack: pack["relaxations"].pop()),
    ("a number for a layer", lambda pack: pack["layers"].append(1)),
    ("no layers", lambda pack: pack.pop("layers")),
]


@pytest.mark.parametrize("lie", [each[1] for each in LIES], ids=[each[0] for each in LIES])
def test_lies_about_layers_are_refused(tmp_path: Path,
                                       lie: Callable[[dict[str, Any]], object]) -> None:
    for name, text in (("base", BASE), ("middle", MIDDLE), ("top", TOP)):
        (tmp_path / f"{name}.yaml").write_text(text)
    raw = sealed_bytes(load_pack(tmp_path / "middle.yaml", VOCABULARY).pack)
    (tmp_path / "middle.sealed.json").write_bytes(with_digest(lie)(raw))
    for each in ("middle.sealed.json", "top.yaml"):
        with pytest.raises(Refused) as refused:
            load_pack(tmp_path / each, VOCABULARY)
        assert codes(refused) <= {"pack-data-differs", "key-unknown", "schema-type"}


def test_no_byte_can_change(tmp_path: Path) -> None:
    (tmp_path / "base.yaml").write_text(BASE)
    raw = sealed_bytes(read_pack(tmp_path / "base.yaml"))
    file = tmp_path / "base.sealed.json"
    for place in range(0, len(raw), 37):
        changed = bytearray(raw)
        changed[place] ^= 1
        file.write_bytes(bytes(changed))
        with pytest.raises(Refused):
            open_sealed(file)


def test_a_signature_is_checked_and_kept_in_the_trail(tmp_path: Path) -> None:
    new_key_pair(tmp_path / "a.secret.pem", tmp_path / "a.public.pem")
    key = read_secret_key(tmp_path / "a.secret.pem")
    pack = WORKSHOP.load_packs(["small-craft-lithium"])[0].pack
    file = tmp_path / "signed.sealed.json"
    raw = sealed_bytes(pack, key, signer="Our Firm", signed_on="2026-04-18")
    file.write_bytes(raw)
    trail = WORKSHOP.assess(RECORD, WORKSHOP.load_packs([str(file)])).trail
    assert trail.packs[0]["signature"]["fingerprint"] == key.public.fingerprint
    assert WORKSHOP.replay(trail).trail.digest == trail.digest
    file.write_bytes(raw.replace(b"Our Firm", b"My Firm!"))
    with pytest.raises(Refused) as refused:
        open_sealed(file)
    assert codes(refused) == {"signature-wrong"}


@pytest.mark.parametrize("stray", ["notes.xlsx", "rules/old.bak", "more/deep.json", ".draft.yaml~"])
def test_a_file_that_would_be_left_out_is_named(tmp_path: Path, stray: str) -> None:
    pack = tmp_path / "base"
    pack.mkdir()
    (pack / "pack.yaml").write_text(BASE)
    (pack / "README.md").write_text("For people.")
    (pack / "cases").mkdir()
    (pack / "cases" / "one.yaml").write_text("cases")
    assert list(stray_problems(pack)) == []
    file = pack / stray
    file.parent.mkdir(exist_ok=True)
    file.write_text("x")
    assert [(each.code, each.found) for each in stray_problems(pack)] == [
        ("seal-stray-file", stray)]


def test_a_link_out_of_the_folder_is_named(tmp_path: Path) -> None:
    pack = tmp_path / "base"
    pack.mkdir()
    (pack / "pack.yaml").write_text(BASE)
    (tmp_path / "outside.md").write_text("x")
    (pack / "README.md").symlink_to(tmp_path / "outside.md")
    assert [each.code for each in stray_problems(pack)] == ["pack-path-climbs"]


@pytest.mark.parametrize("name", PACKS)
def test_shipped_packs_have_nothing_stray(name: str) -> None:
    assert list(stray_problems(SHIPPED / name)) == []
