"""``garboard pack prove`` on the command line: exit codes and what is printed."""

from __future__ import annotations

from pathlib import Path

import pytest

from authoring.small_pack import CASES, RULES, planted
from garboard.cli.main import run

CODES = [
    ("all hold", CASES, (), 0), ("not complete", CASES, ("--complete",), 1),
    ("one differs", CASES.replace("passed", "failed"), (), 1),
    ("of another rule", CASES.replace("passed", "failed"), ("--rule", "short-cable"), 0),
    ("no such rule", CASES, ("--rule", "short-cables"), 3),
    ("case refused", CASES.replace("format: case/1\n", ""), (), 3),
    ("change refused", CASES + "    set: {f7.rating: 5 A}\n", (), 3),
    ("contradiction", CASES + "not_possible: {strong-fuse: {passed: never}}\n", (), 1),
]


@pytest.mark.parametrize(("cases", "options", "code"), [each[1:] for each in CODES],
                         ids=[each[0] for each in CODES])
def test_exit_code(tmp_path: Path, cases: str, options: tuple[str, ...], code: int) -> None:
    assert run(["pack", "prove", str(planted(tmp_path, cases)), *options]) == code


def test_a_pack_that_does_not_load_is_refused(tmp_path: Path) -> None:
    pack = planted(tmp_path, rules=RULES.replace("device.rating", "device.ratin"))
    assert run(["pack", "prove", str(pack)]) == 3


def test_what_is_printed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(["pack", "prove", str(planted(tmp_path, CASES.replace("passed", "failed")))])
    printed = capsys.readouterr().out
    assert "one.yaml:6:34: case-finding-differs" in printed
    assert "1 cases of 2 rules: 0 hold, 1 differ; 10 kinds of outcome are not shown yet." in printed
