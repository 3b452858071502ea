"""Plugins that are refused, each by name and code, and a program that goes on without them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from importlib.metadata import EntryPoint
from pathlib import Path
from types import MappingProxyType
from typing import Any

import pytest

from assembly.test_missing_plugins import PACK
from garboard.assembly import Plugins, Workshop, load_plugins
from garboard.errors import PackRefused
from garboard.hooks import manifest_of
from garboard.quantities import Quantity, cite, quantity

MODULE = '''
from pathlib import Path
from garboard.hooks import hookimpl
from garboard.quantities import cite, quantity


def _quantity(name, needs):
    return quantity(name, dimension="area", needs=needs, method="m", valid="v",
                    citation=cite("definition", "definition"))(lambda **given: 1.0)


@hookimpl
def garboard_quantities():
    return ({quantities})


@hookimpl
def garboard_manifest():
    return str(Path(__file__).with_name("{name}.json"))
'''


def declared(name: str, needs: dict[str, str]) -> Quantity:
    return quantity(name, dimension="area", needs=needs, method="m", valid="v",
                    citation=cite("definition", "definition"))(lambda **given: 1.0)


class Shelf:
    """Plugins made up as modules of a folder that can be imported from."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.entries: list[EntryPoint] = []

    def add(self, name: str, quantities: dict[str, dict[str, str]], body: str = "",
            changes: Mapping[str, Any] = MappingProxyType({})) -> None:
        """A plugin of some quantities with their needs; ``changes`` to its manifest."""
        module = f"plugin_{name}_of_{self.folder.name}".replace("-", "_")
        calls = "".join(f"_quantity({each!r}, {needs!r}), " for each, needs in quantities.items())
        text = MODULE.replace("{quantities}", calls).replace("{name}", module)
        (self.folder / f"{module}.py").write_text(text + body, encoding="utf-8")
        manifest = manifest_of(name, [declared(*each) for each in quantities.items()])
        (self.folder / f"{module}.json").write_text(json.dumps({**manifest, **changes}),
                                                    encoding="utf-8")
        self.entries.append(EntryPoint(name, module, "garboard"))

    def load(self) -> Plugins:
        return load_plugins(self.entries)


@pytest.fixture
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shelf:
    monkeypatch.syspath_prepend(str(tmp_path))
    return Shelf(tmp_path)


GOOD = {"place.floor": {}}


def test_a_plugin_loads_with_its_name_version_and_digest(shelf: Shelf) -> None:
    shelf.add("good", GOOD)
    plugins = shelf.load()
    assert plugins.problems == ()
    assert [each.name for each in plugins.loaded] == ["garboard", "good"]
    assert len(plugins.loaded[1].digest) == 64
    assert Workshop(plugins).registry.named("place.floor").origin == "good"
    assert "floor" in Workshop(plugins).vocabulary.subjects["place"]


REFUSED: list[tuple[str, dict[str, dict[str, str]], str, dict[str, Any], str]] = [
    ("does not load", GOOD, "raise RuntimeError('broken')", {}, "plugin-does-not-load"),
    ("leaves the program as it loads", GOOD, "raise SystemExit(0)", {}, "plugin-does-not-load"),
    ("imports what is not there", GOOD, "import no_such_module_at_all", {},
     "plugin-does-not-load"),
    ("another interface", GOOD, "", {"api": 7}, "plugin-api-mismatch"),
    ("no interface named", GOOD, "", {"api": None}, "plugin-api-mismatch"),
    ("lists less than it declares", GOOD, "", {"quantities": []}, "plugin-manifest-differs"),
    ("an unknown hook", GOOD, "\n@hookimpl\ndef garboard_quantity(): pass", {},
     "plugin-hook-unknown"),
    ("no manifest", GOOD, "\ndel garboard_manifest", {}, "plugin-without-manifest"),
    ("takes a built-in's name", {"place.floor": {}, "bus.fault_current": {}}, "", {},
     "quantity-clash"),
    ("takes a recorded field's name", {"place.floor": {}, "place.kind": {}}, "", {},
     "quantity-clash"),
    ("takes a relation's name", {"place.batteries": {}}, "", {}, "quantity-clash"),
    ("takes its own name twice", {}, "\n@hookimpl\ndef garboard_quantities():\n    return ("
     "_quantity('place.floor', {}), _quantity('place.floor', {}))",
     {"quantities": [declared("place.floor", {}).as_data()] * 2}, "quantity-clash"),
    ("of no subject", {"keel.depth": {}}, "", {}, "quantity-subject-unknown"),
    ("needs what is not there", {"place.floor": {"x": "beem"}}, "", {}, "quantity-need-unknown"),
]


@pytest.mark.parametrize(("what", "quantities", "body", "changes", "code"), REFUSED,
                         ids=[row[0] for row in REFUSED])
def test_a_refused_plugin_is_left_out_whole(what: str, quantities: dict[str, dict[str, str]],
                                            body: str, changes: dict[str, Any], code: str,
                                            shelf: Shelf) -> None:
    shelf.add("bad", quantities, body, changes)
    shelf.add("other", {"place.ceiling": {}})
    plugins = shelf.load()
    [problem] = plugins.problems
    assert problem.code == code
    assert "bad" in problem.found
    assert [each.name for each in plugins.loaded] == ["garboard", "other"]
    registry = Workshop(plugins).registry
    assert registry.find("place", "ceiling") is not None
    assert registry.find("place", "floor") is None


def test_of_two_plugins_with_one_name_none_is_kept(shelf: Shelf) -> None:
    """A pack that needs one of them would not know whose figure it gets."""
    shelf.add("b-second", {"place.floor": {}, "place.ceiling": {}})
    shelf.add("a-first", GOOD)
    shelf.add("c-third", {"place.wall": {}})
    plugins = shelf.load()
    assert [each.name for each in plugins.loaded] == ["garboard", "c-third"]
    assert [(each.code, each.found.split()[1].strip(":")) for each in plugins.problems] == [
        ("quantity-clash", "a-first"), ("quantity-clash", "b-second")]


def test_a_plugin_may_need_a_quantity_of_a_later_one(shelf: Shelf) -> None:
    shelf.add("a-first", {"place.volume": {"floor": "floor"}})
    shelf.add("b-second", GOOD)
    plugins = shelf.load()
    assert plugins.problems == ()
    assert [each.name for each in plugins.loaded] == ["garboard", "a-first", "b-second"]


def test_what_needs_a_refused_plugin_is_refused_too(shelf: Shelf) -> None:
    shelf.add("a-first", {"place.volume": {"floor": "floor"}})
    shelf.add("b-second", {**GOOD, "bus.fault_current": {}})
    plugins = shelf.load()
    assert [each.name for each in plugins.loaded] == ["garboard"]
    assert sorted(each.code for each in plugins.problems) == [
        "quantity-clash", "quantity-need-unknown"]


def test_a_pack_is_not_given_the_figure_of_another_plugin_than_it_names(
        shelf: Shelf, tmp_path: Path) -> None:
    shelf.add("good", {"place.floor_area": {}})
    workshop = Workshop(shelf.load())
    for plugin, refused in (("good", []), ("hold", ["need-unmet"])):
        folder = tmp_path / plugin
        folder.mkdir()
        (folder / "pack.yaml").write_text(PACK.replace(
            "plugin: hold", f"plugin: {plugin}").replace(
            "QUANTITIES", "place.floor_area: m2").replace(
            "EXPRESSION", "place.floor_area >= least"), encoding="utf-8")
        found: list[str] = []
        try:
            workshop.load_packs([str(folder)])
        except PackRefused as error:
            found = [each.code for each in error.problems if each.level == "error"]
        assert found == refused
