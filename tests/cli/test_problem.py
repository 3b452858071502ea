"""``garboard problem``: every code of the catalogue can be looked up."""

from __future__ import annotations

import pytest

from garboard.cli.main import run
from garboard.errors import CATALOGUE


def test_a_code_is_explained(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["problem", "unit-missing"]) == 0
    shown = " ".join(capsys.readouterr().out.split())
    assert shown == (f"unit-missing: {CATALOGUE['unit-missing'].title} "
                     f"{CATALOGUE['unit-missing'].explanation}")


def test_all_codes_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["problem"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines] == sorted(CATALOGUE)


def test_an_unknown_code_is_refused_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["problem", "unit-mising"]) == 3
    said = capsys.readouterr().err
    assert "code-unknown" in said
    assert "unit-missing" in said
