"""The public names of the floor, what importing it costs, and that every code of it is reached."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

import garboard.values
import garboard.values.conductor_size
import garboard.values.units
from garboard.errors.codes.values import CODES


@pytest.mark.parametrize("module", [garboard.values, garboard.values.units,
                                    garboard.values.conductor_size])
def test_public_names_are_sorted_and_there(module: object) -> None:
    names = module.__all__  # type: ignore[attr-defined]
    constants = [name for name in names if name.isupper()]
    classes = [name for name in names if not name.isupper() and name[0].isupper()]
    assert names == [*sorted(constants), *sorted(classes),
                     *sorted(name for name in names if name[0].islower())]
    assert all(hasattr(module, name) for name in names)


def test_importing_the_floor_loads_no_heavy_library() -> None:
    heavy = ("pydantic", "numpy", "jsonschema", "jinja2", "rich", "ruamel", "pint")
    code = (f"import sys, garboard.values.units; "
            f"print([m for m in {heavy!r} if m in sys.modules])")
    loaded = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True,
                            check=True)
    assert loaded.stdout.strip() == "[]"


def test_every_code_of_the_floor_is_raised_in_it_and_reached_by_a_test() -> None:
    source = "\n".join(path.read_text(encoding="utf-8") for path in
                       Path(garboard.values.__file__).parent.glob("*.py"))
    tests = "\n".join(path.read_text(encoding="utf-8") for path in
                      Path(__file__).parent.glob("test_*.py"))
    code = r'"((?:number|unit|range|tolerance|voltage|size|text)-[a-z-]+)"'
    raised = set(re.findall(code, source))
    assert raised == set(CODES)
    assert not [code for code in CODES if f'"{code}"' not in tests]
