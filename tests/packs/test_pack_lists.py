"""Pack lists: what is pinned is what is used, or it is refused by name."""

from __future__ import annotations

from pathlib import Path

import pytest

from garboard.documents import new_key_pair, read_secret_key
from garboard.errors import Refused
from garboard.packs import Pack, open_sealed, read_pack, read_pack_list, sealed_bytes
from packs.layered import BASE

HEAD = "format: pack-list/1\npacks:\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with a pack of a folder, and the same sealed."""
    (tmp_path / "base").mkdir()
    (tmp_path / "base" / "pack.yaml").write_text(BASE)
    (tmp_path / "base.sealed.json").write_bytes(sealed_bytes(read_pack(tmp_path / "base")))
    return tmp_path


def entry(pack: Pack, more: str = "") -> str:
    return f"  - {{pack: {pack.name}, version: {pack.version}, digest: '{pack.digest}'{more}}}\n"


def listed(folder: Path, *entries: str) -> Path:
    file = folder / "office.yaml"
    file.write_text(HEAD + "".join(entries))
    return file


def problems(refused: pytest.ExceptionInfo[Refused]) -> list[tuple[str, int | None]]:
    return [(each.code, each.place.line) for each in refused.value.problems]


def test_what_is_pinned_is_accepted(folder: Path) -> None:
    pack = read_pack(folder / "base")
    pinned = read_pack_list(listed(folder, entry(pack, ", file: base.sealed.json")))
    assert [each.name for each in pinned.pins] == [folder / "base.sealed.json"]
    pinned.check([pack])
    pinned.check([open_sealed(folder / "base.sealed.json")])


def test_an_extra_file_a_change_and_another_version_are_told_apart(folder: Path) -> None:
    pack = read_pack(folder / "base")
    pinned = read_pack_list(listed(folder, entry(pack)))
    rules = folder / "base" / "rules"
    rules.mkdir()
    extra = rules / "more.yaml"
    extra.write_text("limits: {more: {value: 1 A, citation: {basis: house}}}\n")
    for text, code in ((BASE, "pinned-digest-differs"),
                       (BASE.replace("5 A", "4 A"), "pinned-digest-differs"),
                       (BASE.replace("1.2.0", "1.2.1"), "pinned-version-differs"),
                       (BASE.replace("pack: base", "pack: basis"), "pack-not-pinned")):
        (folder / "base" / "pack.yaml").write_text(text)
        with pytest.raises(Refused) as refused:
            pinned.check([read_pack(folder / "base")])
        assert [each for each, _ in problems(refused)] == [code]
        extra.unlink(missing_ok=True)


@pytest.mark.parametrize("place", [
    "../base", "base/../../base", "/etc/base", "..\\base", "C:\\base", "\\\\host\\base", "link"])
def test_a_path_that_climbs_is_refused(folder: Path, place: str) -> None:
    inner = folder / "inner"
    inner.mkdir()
    (inner / "link").symlink_to(folder / "base")
    pack = read_pack(folder / "base")
    with pytest.raises(Refused) as refused:
        read_pack_list(listed(inner, entry(pack, f", file: '{place}'")))
    assert problems(refused) == [("pack-path-climbs", 3)]


def test_the_key_that_must_have_signed(folder: Path) -> None:
    for name in ("own", "other"):
        new_key_pair(folder / f"{name}.secret.pem", folder / f"{name}.public.pem")
    own, other = (read_secret_key(folder / f"{name}.secret.pem") for name in ("own", "other"))
    pack, file = read_pack(folder / "base"), folder / "base.sealed.json"
    pinned = read_pack_list(listed(folder, entry(
        pack, f", signed_by: '{own.public.fingerprint}'")))
    for each, code in ((pack, "signature-missing"), (open_sealed(file), "signature-missing")):
        with pytest.raises(Refused) as refused:
            pinned.check([each])
        assert problems(refused) == [(code, 3)]
    file.write_bytes(sealed_bytes(pack, other, signer="Another", signed_on="2026-04-18"))
    with pytest.raises(Refused) as refused:
        pinned.check([open_sealed(file)])
    assert problems(refused) == [("signature-by-another-key", 3)]
    file.write_bytes(sealed_bytes(pack, own, signer="Our Firm", signed_on="2026-04-18"))
    pinned.check([open_sealed(file)])


def test_a_list_of_a_wrong_shape(folder: Path) -> None:
    pack = read_pack(folder / "base")
    for text, codes in (
            (HEAD.replace("list/1", "list/2") + entry(pack), {"pack-list-format"}),
            (HEAD + entry(pack) + entry(pack), {"pack-pinned-twice"}),
            (HEAD + entry(pack, ", note: x"), {"schema-unknown-key"}),
            (HEAD + "  - {pack: base, version: 1.2.0}\n", {"schema-required"})):
        file = folder / "wrong.yaml"
        file.write_text(text)
        with pytest.raises(Refused) as refused:
            read_pack_list(file)
        assert {each for each, _ in problems(refused)} == codes
