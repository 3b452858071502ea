"""Importing the floor brings in no heavy library; they come when they are used."""

from __future__ import annotations

import subprocess
import sys

import pytest

HEAVY = ["jsonschema", "numpy", "pydantic", "referencing", "rich", "ruamel"]


@pytest.mark.parametrize(("code", "used"), [
    ("pass", []),
    ("d.read_text('{\"a\": 1}').place(['a'])", []),
    ("d.read_text('a: 1')", ["ruamel"]),
    ("d.schema_problems(d.read_text('{\"a\": 1}'), {})", ["jsonschema", "referencing"])])
def test_heavy_libraries(code: str, used: list[str]) -> None:
    script = f"import sys, garboard.documents as d; {code}; print(*sorted(sys.modules))"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True,
                          check=True)
    assert [name for name in HEAVY if name in done.stdout.split()] == used
