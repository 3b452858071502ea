"""The page for authors, step by step: files saved as it says, commands run as it says."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from garboard.cli.main import run
from garboard.documents import shipped_folder

PAGE = (shipped_folder("rulepacks") / "WRITING.md").read_text("utf-8")
LAUNCH = Path(__file__).parents[2] / "examples" / "river-survey-launch" / "after-as-fitted.yaml"
#: A file to save, or commands to run, in the order of the page.
STEP = re.compile(r"Save this as `([^`]+)`:\n\n```yaml\n(.*?)```|\n```\n(.*?)```", re.DOTALL)


def test_every_step_of_the_page_works(tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
                                      capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    Path("launch.yaml").write_bytes(LAUNCH.read_bytes())
    ran = []
    for file, text, commands in STEP.findall(PAGE):
        if file:
            Path(file).write_text(text, "utf-8")
            continue
        for line in commands.strip().splitlines():
            command, _, comment = line.partition("  # ends with ")
            words = shlex.split(command)
            assert words[0] == "garboard"
            assert (line, run(words[1:])) == (line, int(comment[:1] or 0))
            ran.append(" ".join(words[1:3]))
    assert ran == ["pack new", "pack prove", "pack proofread", "pack prove", "pack work",
                   "assess launch.yaml", "pack seal"]
    assert "failed" in capsys.readouterr().out
    assert Path("harbour-rules.sealed.json").is_file()


def test_the_slip_that_the_page_suggests_is_pointed_at(
        tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
        capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    run(["pack", "new", "harbour-rules"])
    [(file, text, _), *_] = [each for each in STEP.findall(PAGE) if each[0]]
    Path(file).write_text(text.replace("device.spare_aboard", "device.spare_abord"), "utf-8")
    assert run(["pack", "proofread", "harbour-rules"]) == 3
    said = capsys.readouterr()
    assert "spare_aboard" in said.out + said.err
