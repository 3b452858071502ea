"""The manifests of plugins, read without importing any: what cannot be read is named."""

from __future__ import annotations

import json
import sys
from importlib import metadata
from importlib.metadata import EntryPoint
from pathlib import Path

import pytest

from garboard.hooks import API, read_manifests

ENTRY = {"name": "place.floor", "kind": "number", "dimension": "area", "needs": {}, "method": "m",
         "citation": {"source": "s", "status": "definition"}, "valid": "v", "version": "1"}


@pytest.mark.parametrize(("manifest", "listed"), [
    (json.dumps({"api": API, "quantities": [ENTRY]}), True),
    ("not JSON", False),
    ("[]", False),
    ("{}", False),
    (json.dumps({"quantities": [{"name": "place.floor"}]}), False),
    (json.dumps({"quantities": 3}), False),
    (None, False),
])
def test_a_manifest_that_cannot_be_read_is_named(manifest: str | None, listed: bool,
                                                 tmp_path: Path,
                                                 monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "listed_plugin_package"
    package.mkdir()
    (package / "__init__.py").write_text("raise RuntimeError('it was imported')", encoding="utf-8")
    if manifest is not None:
        (package / "manifest.json").write_text(manifest, encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    monkeypatch.setattr(metadata, "entry_points", lambda group: [
        EntryPoint("floors", "listed_plugin_package.quantities", group)])
    entries, problems = read_manifests()
    assert "listed_plugin_package" not in sys.modules
    assert len([each for each in entries if each["origin"] == "garboard"]) > 150
    assert [each["name"] for each in entries if each["origin"] == "floors"] == (
        ["place.floor"] if listed else [])
    assert [(each.code, "floors" in each.found) for each in problems] == (
        [] if listed else [("plugin-manifest-unreadable", True)])


@pytest.mark.parametrize(("changes", "code"), [
    ({"api": 99}, "plugin-api-mismatch"),
    ({"quantities": [{**ENTRY, "name": "bus.fault_current"}]}, "quantity-clash"),
    ({"quantities": [ENTRY, ENTRY]}, "quantity-clash"),
])
def test_what_the_manifest_shows_is_told_in_the_listing(
        changes: dict[str, object], code: str, tmp_path: Path,
        monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "told_plugin_package"
    package.mkdir()
    (package / "__init__.py").write_text("raise RuntimeError('it was imported')", encoding="utf-8")
    (package / "manifest.json").write_text(
        json.dumps({"api": API, "quantities": [ENTRY], **changes}), encoding="utf-8")
    monkeypatch.syspath_prepend(str(tmp_path))
    monkeypatch.setattr(metadata, "entry_points", lambda group: [
        EntryPoint("floors", "told_plugin_package.quantities", group)])
    [problem] = read_manifests()[1]
    assert problem.code == code
    assert "floors" in problem.found
