"""The manifests of all plugins, read without importing any of them."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from importlib import metadata
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Any

from garboard.errors import PluginError, Problem
from garboard.hooks.markers import API, PROJECT

if TYPE_CHECKING:
    from garboard.quantities.declaration import Quantity

#: A plugin's manifest stands under this name in the folder of its top-level package.
FILE_NAME = "manifest.json"
_KEYS = ("name", "kind", "dimension", "needs", "method", "citation", "valid", "version")
_BUILT_IN = Path(__file__).parent.parent / "quantities" / FILE_NAME


def manifest_files() -> tuple[tuple[str, Path], ...]:
    """Name and manifest file of the built-in plugin and of every installed one, by name."""
    found = [(PROJECT, _BUILT_IN)]
    for entry in sorted(metadata.entry_points(group=PROJECT), key=lambda each: each.name):
        spec = find_spec(entry.module.partition(".")[0])
        if spec is not None and spec.origin is not None:
            found.append((entry.name, Path(spec.origin).parent / FILE_NAME))
    return tuple(found)


def read_manifests() -> tuple[list[dict[str, Any]], tuple[Problem, ...]]:
    """Every quantity of every manifest that can be read, with its ``origin``, by name.

    Also why the other manifests cannot be read, and what the manifests alone show to be refused
    when plugins load: another interface, a name that two take.
    """
    entries: list[dict[str, Any]] = []
    problems: list[Problem] = []
    for origin, file in manifest_files():
        try:
            manifest = json.loads(file.read_text(encoding="utf-8"))
            found = [{**{key: entry[key] for key in _KEYS}, "origin": origin}
                     for entry in manifest["quantities"]]
            found.sort(key=lambda entry: str(entry["name"]))
            api = manifest.get("api")
        except (OSError, ValueError, LookupError, TypeError) as error:
            problems.append(PluginError(origin, "plugin-manifest-unreadable",
                                        found=f"{type(error).__name__}: {error}").problem())
        else:
            entries += found
            if api != API:
                problems.append(PluginError(
                    origin, "plugin-api-mismatch", found=f"written for {api}",
                    expected=f"plugin interface {API}").problem())
    return (sorted(entries, key=lambda entry: (entry["name"], entry["origin"])),
            (*problems, *_clashes(entries)))


def _clashes(entries: list[dict[str, Any]]) -> Iterator[Problem]:
    """For every plugin that takes a name which another has, the first such name."""
    origins: dict[str, list[str]] = {}
    for entry in entries:
        origins.setdefault(str(entry["name"]), []).append(entry["origin"])
    told: set[str] = set()
    for name, taken in origins.items():
        for origin in dict.fromkeys(taken) if len(taken) > 1 else ():
            if origin != PROJECT and origin not in told:
                told.add(origin)
                others = ", ".join(each for each in dict.fromkeys(taken) if each != origin)
                yield PluginError(origin, "quantity-clash", found=name,
                                  expected=f"a name not taken by {others or origin}").problem()


def manifest_of(name: str, quantities: Iterable[Quantity]) -> dict[str, object]:
    """The manifest of a plugin, as its file should read."""
    return {"format": "plugin-manifest/1", "plugin": name, "api": API,
            "quantities": [each.as_data() for each in quantities]}
