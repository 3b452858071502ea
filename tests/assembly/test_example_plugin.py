"""The example of a plugin, installed with pip into a virtual environment of its own."""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import sys
import sysconfig
import venv
from pathlib import Path

import pytest

import garboard

REPOSITORY = Path(__file__).parents[2]
PLUGIN = REPOSITORY / "examples" / "plugin"
RECORD = """
format: installation-record/1
survey: {date: 2026-05-02}
places:
  - {id: locker, openings: {low_area: 30 cm2, high_area: 20 cm2}}
  - {id: cabin, openings: {low_area: 30 cm2, high_area: 5 cm2}}
batteries: [{id: one, place: locker}, {id: two, place: cabin}]
runs: []
"""


@pytest.fixture(scope="module")
def python(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The interpreter of an environment with everything this one has, and the plugin."""
    folder = tmp_path_factory.mktemp("with-plugin")
    source = shutil.copytree(PLUGIN, folder / "source")
    venv.create(folder / "env", with_pip=True)
    found = folder / "env" / ("Scripts" if sys.platform == "win32" else "bin") / "python"
    where = subprocess.run([found, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"],
                           capture_output=True, text=True, check=True).stdout.strip()
    Path(where, "shared.pth").write_text(
        f"{sysconfig.get_path('purelib')}\n{Path(garboard.__file__).parents[1]}\n")
    subprocess.run([found, "-m", "pip", "install", "-q", "--no-deps", "--no-index",
                    "--no-build-isolation", str(source)], check=True, capture_output=True)
    return found


def run(python: Path, *words: str, folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([python, *words], cwd=folder, capture_output=True, text=True,
                          check=False, encoding="utf-8")


def test_its_own_tests_pass(python: Path, tmp_path: Path) -> None:
    done = run(python, "-m", "pytest", "-q", "-p", "no:cacheprovider", "--rootdir", str(tmp_path),
               str(PLUGIN / "tests"), folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")


def test_it_stands_in_the_list_without_being_imported(python: Path, tmp_path: Path) -> None:
    done = run(python, "-X", "importtime", "-m", "garboard", "quantities", folder=tmp_path)
    rows = [line.split() for line in done.stdout.splitlines()]
    assert ["place.vent_area", "mm²", "ventilation"] in rows
    assert "garboard_ventilation" not in done.stderr
    shown = run(python, "-m", "garboard", "quantities", "place.vent_balance", folder=tmp_path)
    assert shown.returncode == 0
    assert "natural draught" in shown.stdout


def test_its_quantities_work_in_a_pack_and_stand_in_the_trail(python: Path,
                                                              tmp_path: Path) -> None:
    (tmp_path / "record.yaml").write_text(RECORD, encoding="utf-8")
    done = run(python, "-m", "garboard", "assess", "record.yaml", "--pack",
               str(PLUGIN / "ventilation-pack"), "--trail", "trail.json", folder=tmp_path)
    assert done.returncode == 1, done.stderr
    trail = json.loads((tmp_path / "trail.json").read_text(encoding="utf-8"))
    text = json.dumps(trail)
    outcomes = {(each["rule"], each["item"]): each["outcome"]
                for each in _findings(trail)}
    assert outcomes == {("vent-area", "locker"): "passed", ("vent-balance", "locker"): "passed",
                        ("vent-area", "cabin"): "failed", ("vent-balance", "cabin"): "failed"}
    file = PLUGIN / "garboard_ventilation" / "ventilation.py"
    assert hashlib.sha256(file.read_bytes()).hexdigest() in text
    assert {"name": "ventilation", "version": "1.2.0"}.items() <= _plugin(trail).items()


def _findings(trail: object) -> list[dict[str, str]]:
    """The findings, wherever in the document they stand."""
    if isinstance(trail, dict):
        if "findings" in trail:
            return list(trail["findings"])
        return [each for value in trail.values() for each in _findings(value)]
    return []


def _plugin(trail: object) -> dict[str, str]:
    """What the document says of the plugin."""
    if isinstance(trail, dict):
        for plugin in trail.get("plugins", ()):
            if plugin["name"] == "ventilation":
                return dict(plugin)
        return next((found for value in trail.values() if (found := _plugin(value))), {})
    return {}
