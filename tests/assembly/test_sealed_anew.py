"""A shipped pack that lies there sealed too is sealed anew with the other generated files."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from garboard.assembly import generated, open_workshop
from garboard.documents import shipped_folder
from garboard.packs import open_sealed


def test_a_pack_beside_which_a_sealed_one_lies_is_sealed_anew(
        tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    packs = ("house-rules-example", "small-craft-lithium")
    for name in packs:
        shutil.copytree(shipped_folder("rulepacks") / name, tmp_path / name)
    sealed = tmp_path / "house-rules-example.sealed.json"
    sealed.write_text("of another day")
    monkeypatch.setattr(generated, "shipped_folder", lambda name: (
        tmp_path if name == "rulepacks" else shipped_folder(name)))
    files = generated.generated_files()
    assert {file.name for file in files if file.parent == tmp_path} == {sealed.name}
    sealed.write_bytes(files[sealed])
    folder = open_workshop().load_packs([str(tmp_path / "house-rules-example")])[0].pack
    assert open_sealed(sealed) == folder and b'"signature"' not in files[sealed]
    assert generated.generated_files()[sealed] == files[sealed]
