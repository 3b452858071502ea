"""What a pack needs of plugins, held against what is there.

A quantity of a plugin that is not installed is known by what the pack declares of it, its name and
unit, so the pack loads; rules that use it come out as not assessed, plugin unavailable.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final, get_args

from garboard.errors import Problem, did_you_mean
from garboard.expressions import NameInfo, Vocabulary
from garboard.expressions.vocabulary import Kind
from garboard.hooks import API, PROJECT
from garboard.packs.header import Need
from garboard.packs.shape import missing_key
from garboard.packs.spot import Spot
from garboard.values.units import UNITS

#: In place of a unit, for a quantity that is no number.
_KINDS: Final[dict[str, Kind]] = {"truth": "truth", "count": "count", "text": "text"}
assert set(_KINDS) < set(get_args(Kind))


def declared_vocabulary(needs: Sequence[Need], vocabulary: Vocabulary) -> Vocabulary:
    """The vocabulary with what the needs declare of quantities that are not there."""
    added: dict[str, dict[str, NameInfo]] = {}
    for need in needs:
        if need.plugin != PROJECT:
            for name, unit in need.quantities.items():
                subject, _, field = name.partition(".")
                info = _declared(unit)
                if (info is not None and field.isidentifier()
                        and field not in vocabulary.subjects.get(subject, {field: None})):
                    added.setdefault(subject, {})[field] = info
    if not added:
        return vocabulary
    subjects = {name: {**names, **added.get(name, {})}
                for name, names in vocabulary.subjects.items()}
    return Vocabulary(subjects, vocabulary.lists)


def _declared(unit: str) -> NameInfo | None:
    """What a unit, or the word for another kind, says of a quantity."""
    if unit in _KINDS:
        return NameInfo(_KINDS[unit])
    return next((NameInfo("number", dimension) for dimension, units in UNITS.items()
                 if unit in units), None)


def need_problems(needs: Sequence[Need], head: Spot, vocabulary: Vocabulary) -> Iterator[Problem]:
    """Every need that is not met, and a warning for each that a plugin might meet.

    Errors: another plugin interface, a built-in quantity that is not there, a name or unit that no
    quantity can have. ``vocabulary`` is without what the needs declare.
    """
    for number, need in enumerate(needs):
        spot = head.at("needs", number)
        if need.api != API:
            yield Problem("need-unmet", spot.at("api").place(), found=str(need.api),
                          expected=f"plugin interface {API}")
        if need.plugin != PROJECT and not need.quantities:
            yield missing_key(spot, "quantities")
        for name, unit in need.quantities.items():
            yield from _quantity_problems(need, name, unit, spot.at("quantities", name),
                                          vocabulary)


def _quantity_problems(need: Need, name: str, unit: str, spot: Spot,
                       vocabulary: Vocabulary) -> Iterator[Problem]:
    subject, _, field = name.partition(".")
    info = vocabulary.subjects.get(subject, {}).get(field)
    known = (f"{each}.{field}" for each, names in vocabulary.subjects.items() for field in names)
    if info is not None and info.origin not in (None, PROJECT, need.plugin):
        yield Problem("need-unmet", spot.place(key=True), found=f"{name} of {info.origin}",
                      expected=f"{name} of the plugin {need.plugin}")
    elif info is not None:
        if unit not in UNITS.get(info.dimension or "", {info.kind}):
            yield Problem("need-unmet", spot.place(), found=f"{name} in {unit}",
                          expected=info.dimension or info.kind)
    elif need.plugin == PROJECT or subject not in vocabulary.subjects or (
            not field.isidentifier()):
        yield Problem("need-unmet", spot.place(key=True), found=name,
                      expected="a quantity of the plugins that are installed",
                      hint=did_you_mean(name, known))
    elif _declared(unit) is None:
        yield Problem("need-unmet", spot.place(), found=f"{name} in {unit}",
                      expected=f"a unit, or one of {', '.join(_KINDS)}")
    else:
        yield Problem("plugin-missing", spot.place(key=True), found=name,
                      expected=f"the plugin {need.plugin}", hint=did_you_mean(name, known),
                      level="warning")
