"""What a pack needs of plugins, held against what is there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from garboard.errors import Problem, did_you_mean
from garboard.expressions import Vocabulary
from garboard.hooks import API, PROJECT
from garboard.packs.header import Need
from garboard.packs.shape import missing_key
from garboard.packs.spot import Spot
from garboard.values.units import UNITS


def need_problems(needs: Sequence[Need], head: Spot, vocabulary: Vocabulary) -> Iterator[Problem]:
    """Every need that is not met: another plugin interface, or a quantity that is not there."""
    for number, need in enumerate(needs):
        spot = head.at("needs", number)
        if need.api != API:
            yield Problem("need-unmet", spot.at("api").place(), found=str(need.api),
                          expected=f"plugin interface {API}")
        if need.plugin != PROJECT and not need.quantities:
            yield missing_key(spot, "quantities")
        for name, unit in need.quantities.items():
            yield from _quantity_problems(name, unit, spot.at("quantities", name), vocabulary)


def _quantity_problems(name: str, unit: str, spot: Spot,
                       vocabulary: Vocabulary) -> Iterator[Problem]:
    subject, _, field = name.partition(".")
    info = vocabulary.subjects.get(subject, {}).get(field)
    if info is None:
        known = (f"{each}.{field}" for each, names in vocabulary.subjects.items()
                 for field in names)
        yield Problem("need-unmet", spot.place(key=True), found=name,
                      expected="a quantity of the plugins that are installed",
                      hint=did_you_mean(name, known))
    elif info.dimension is None or unit not in UNITS[info.dimension]:
        yield Problem("need-unmet", spot.place(), found=f"{name} in {unit}",
                      expected=info.dimension or info.kind)
