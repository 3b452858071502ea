"""The derivations in a trail: of every figure that a finding rests on, down to recorded facts."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Any

from garboard.quantities import Derivation, Figures, Quantity, Registry
from garboard.trail import Encoded, encoded, value_as_data
from garboard.values.units import DIMENSIONS


def derivations_in_trail(figures: Figures, keys: Iterable[str]) -> dict[str, Any]:
    """The derivations behind ``keys``, and behind what those took, by key in order."""
    wanted = [key for key in keys if key in figures.derivations]
    found: dict[str, Derivation] = {}
    while wanted:
        key = wanted.pop()
        if key in found:
            continue
        found[key] = figures.derivations[key]
        wanted += [each for _, inputs in found[key].inputs for each in inputs
                   if each in figures.derivations and each not in found]
    return {key: _derivation(found[key]) for key in sorted(found)}


def quantities_in_trail(derivations: dict[str, Any], figures: Figures) -> Encoded:
    """The calculations those derivations used: method, citation, version, range, origin."""
    used = {each["quantity"] for each in derivations.values()}
    return _quantities(figures.registry, frozenset(used))


@lru_cache(maxsize=64)
def _quantities(registry: Registry, names: frozenset[str]) -> Encoded:
    return encoded({name: _quantity(registry.named(name)) for name in sorted(names)})


def _derivation(derivation: Derivation) -> dict[str, Any]:
    quantity = derivation.quantity
    return {
        "quantity": quantity.full_name, "version": quantity.version, "kind": quantity.kind,
        "dimension": quantity.dimension, "unit": unit_of(quantity.dimension),
        "value": None if quantity.kind == "opaque" else value_as_data(derivation.value),
        "inputs": [{"name": name, "of": list(keys)} for name, keys in derivation.inputs],
        "table_rows": list(derivation.table_rows), "remarks": list(derivation.remarks),
    }


def _quantity(quantity: Quantity) -> dict[str, Any]:
    return {"method": quantity.method, "citation": quantity.citation.as_data(),
            "version": quantity.version, "valid": quantity.valid, "origin": quantity.origin}


def unit_of(dimension: str | None) -> str | None:
    """The canonical unit of a dimension."""
    return None if dimension is None else DIMENSIONS[dimension].unit
