"""The plugin manager: built-in quantities and installed plugins, each refused loudly by name."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib import metadata
from pathlib import Path
from types import ModuleType
from typing import Any

import pluggy

from garboard.errors import PluginError, Problem
from garboard.hooks import API, PROJECT, specs
from garboard.quantities import Quantity, Registry, builtin

BUILT_IN = "garboard"


@dataclass(frozen=True, slots=True)
class Plugin:
    """A plugin that has loaded: its name, version, the digest of its file, what it supplies."""

    name: str
    version: str
    digest: str
    quantities: tuple[Quantity, ...]

    def as_data(self) -> dict[str, str]:
        return {"name": self.name, "version": self.version, "digest": self.digest}


@dataclass(frozen=True, slots=True)
class Plugins:
    """All plugins that loaded, and the problems of those that did not."""

    loaded: tuple[Plugin, ...]
    problems: tuple[Problem, ...]

    def quantities(self) -> Iterator[Quantity]:
        for plugin in self.loaded:
            yield from plugin.quantities


def load_plugins(entry_points: Iterable[metadata.EntryPoint] | None = None) -> Plugins:
    """Register the built-ins, then every installed plugin in order of name.

    A plugin that does not load, breaks its manifest, wants another interface, takes a name that is
    taken or needs what nothing supplies is left out whole and stands in ``problems``; the rest goes
    on. Of plugins that take the same name none is kept: which of them a pack means cannot be told.
    """
    from garboard import __version__

    loaded = [_load(builtin, BUILT_IN, __version__)]
    problems: list[Problem] = []
    if entry_points is None:
        entry_points = metadata.entry_points(group=PROJECT)
    for entry in sorted(entry_points, key=lambda each: each.name):
        version = entry.dist.version if entry.dist is not None else "unknown"
        try:
            loaded.append(_load(entry.load(), entry.name, version))
        except PluginError as error:
            problems.append(error.problem())
        except (Exception, SystemExit) as error:  # noqa: BLE001 - whatever it raises, by name
            problems.append(PluginError(entry.name, "plugin-does-not-load",
                                        found=f"{type(error).__name__}: {error}").problem())
    admitted, refused = _admitted(loaded)
    return Plugins(admitted, (*problems, *refused))


def _admitted(loaded: list[Plugin]) -> tuple[tuple[Plugin, ...], list[Problem]]:
    """The plugins whose quantities fit together, and why the others do not.

    One may need quantities of another, so those that do not fit yet are tried again.
    """
    admitted, apart = loaded[:1], _taken_twice(loaded[1:])
    waiting = [plugin for plugin in loaded[1:] if plugin.name not in apart]
    while True:
        refused: list[tuple[Plugin, Problem]] = []
        for plugin in waiting:
            try:
                Registry(each for one in (*admitted, plugin) for each in one.quantities)
            except PluginError as error:
                refused.append((plugin, error.problem()))
            else:
                admitted = [*admitted, plugin]
        if len(refused) in (0, len(waiting)):
            order = {plugin.name: place for place, plugin in enumerate(loaded)}
            return (tuple(sorted(admitted, key=lambda each: order[each.name])),
                    [*apart.values(), *(problem for _, problem in refused)])
        waiting = [plugin for plugin, _ in refused]


def _taken_twice(plugins: list[Plugin]) -> dict[str, Problem]:
    """The plugins that declare a name which another of them declares too, and why not, by name."""
    of: dict[str, set[str]] = {}
    for plugin in plugins:
        for each in plugin.quantities:
            of.setdefault(each.full_name, set()).add(plugin.name)
    refused: dict[str, Problem] = {}
    for quantity, names in sorted(of.items()):
        for name in sorted(names) if len(names) > 1 else ():
            others = ", ".join(sorted(names - {name}))
            refused.setdefault(name, PluginError(
                name, "quantity-clash", found=quantity,
                expected=f"a name not taken by {others}").problem())
    return refused


def _load(module: ModuleType | Any, name: str, version: str) -> Plugin:
    manager = pluggy.PluginManager(PROJECT)
    manager.add_hookspecs(specs)
    try:
        manager.register(module, name)
        manager.check_pending()
    except pluggy.PluginValidationError as error:
        raise PluginError(name, "plugin-hook-unknown", found=str(error)) from error
    declared = tuple(quantity for each in manager.hook.garboard_quantities() for quantity in each)
    if name != BUILT_IN:
        declared = tuple(_from(name, quantity) for quantity in declared)
    _check_manifest(name, manager.hook.garboard_manifest(), declared)
    return Plugin(name, version, _digest(module), declared)


def _from(name: str, quantity: Quantity) -> Quantity:
    from dataclasses import replace

    return replace(quantity, origin=name)


def _check_manifest(name: str, paths: list[str], declared: tuple[Quantity, ...]) -> None:
    """Hold the manifest against what the plugin declares."""
    if len(paths) != 1:
        raise PluginError(name, "plugin-without-manifest", found=f"{len(paths)} manifests",
                          expected="one file of format plugin-manifest/1")
    try:
        manifest = json.loads(Path(paths[0]).read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise PluginError(name, "plugin-manifest-unreadable", found=str(error)) from error
    if manifest.get("api") != API:
        raise PluginError(name, "plugin-api-mismatch", found=f"written for {manifest.get('api')}",
                          expected=f"plugin interface {API}")
    if manifest.get("quantities") != [each.as_data() for each in declared]:
        raise PluginError(name, "plugin-manifest-differs", found=paths[0],
                          expected="the quantities the plugin declares, in the same order",
                          hint="write the manifest anew from the declarations")


def _digest(module: ModuleType | Any) -> str:
    file = getattr(module, "__file__", None)
    return hashlib.sha256(Path(file).read_bytes()).hexdigest() if file else "none"
