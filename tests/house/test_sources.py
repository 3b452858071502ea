"""What holds for every source file: short, described, and free of addresses and machine paths."""

from __future__ import annotations

import ast
import re
from pathlib import Path

from house.sources import PACKAGE, REPOSITORY, trees

LONGEST = 400
#: Hosts of package registries and folders of one machine; put together here so as not to be found.
NOWHERE = re.compile("|".join([
    "py" + r"pi\.org", "python" + r"hosted\.org", "npm" + r"js\.(org|com)",
    "deb" + r"ian\.org", "/wo" + "rk/", "/ro" + "ot/", "/ho" + "me/"]))
TEXTS = ("*.py", "*.md", "*.toml", "*.yaml", "*.yml", "*.json", "*.txt", ".ci/*")


def texts() -> list[Path]:
    """Every text file of the repository that a person wrote or that ships."""
    found = {file for pattern in TEXTS for file in (*REPOSITORY.rglob(pattern),
                                                    *PACKAGE.rglob(pattern)) if file.is_file()}
    return sorted(file for file in found if not any(
        (part.startswith(".") and part != ".ci") or part in ("build", "dist", "node_modules")
        for part in file.relative_to(REPOSITORY if file.is_relative_to(REPOSITORY)
                                     else PACKAGE).parts))


def test_no_file_is_long() -> None:
    sizes = {str(file.relative_to(PACKAGE)): len(file.read_text().splitlines())
             for file in trees()}
    assert len(sizes) > 50
    assert {file: size for file, size in sizes.items() if size > LONGEST} == {}


def test_every_module_says_what_it_is() -> None:
    silent = [str(file.relative_to(PACKAGE)) for file, tree in trees().items()
              if tree.body and not ast.get_docstring(tree)]
    assert silent == []


def test_no_registry_and_no_machine_is_named() -> None:
    found = [f"{file}:{number}" for file in texts()
             for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1)
             if NOWHERE.search(line)]
    assert len(texts()) > 80
    assert found == []


def test_the_readme_names_one_test_command() -> None:
    blocks = re.findall(r"<!-- test-command -->\n```\w*\n(.+?)\n```\n<!-- /test-command -->",
                        (REPOSITORY / "README.md").read_text(), re.DOTALL)
    [command] = blocks
    assert "\n" not in command
    assert command.endswith(".venv/bin/pytest -n 2")
