"""Shipped data is found in a working tree and in an installed package."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from garboard.documents import shipped, shipped_folder
from garboard.errors import DocumentRefused


def test_both_folders_are_there() -> None:
    for name in ("rulepacks", "schemas"):
        assert shipped_folder(name).name == name  # type: ignore[arg-type]
        assert shipped_folder(name).is_dir()  # type: ignore[arg-type]


@pytest.fixture
def module(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A package folder of our own, which ``shipped`` takes for its home."""
    file = tmp_path / "engine" / "garboard" / "documents" / "shipped.py"
    file.parent.mkdir(parents=True)
    shutil.copy(shipped.__file__, file)
    monkeypatch.setattr(shipped, "__file__", str(file))
    monkeypatch.setattr(shipped, "files", lambda _: file.parents[1])
    (tmp_path / "rulepacks").mkdir()
    (file.parents[1] / "shipped_data" / "rulepacks").mkdir(parents=True)
    return tmp_path


def test_the_working_tree_comes_first(module: Path) -> None:
    (module / "pyproject.toml").touch()
    assert shipped_folder("rulepacks") == module / "rulepacks"


def test_a_folder_that_happens_to_be_called_engine(module: Path) -> None:
    assert shipped_folder("rulepacks") == module / "engine/garboard/shipped_data/rulepacks"


def test_missing_data_is_told(module: Path) -> None:
    with pytest.raises(DocumentRefused) as caught:
        shipped_folder("schemas")
    assert [problem.code for problem in caught.value.problems] == ["shipped-missing"]
