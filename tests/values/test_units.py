"""The table of units against an independent library of units, and against itself.

Every spelling that is read has its partner there, with an exactly equal factor (both calculate in
fractions) and the same powers of the base units.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.values import DIMENSIONS, UNITS, read_number, symbols
from garboard.values.unit_table import AMBIGUOUS, SPELLINGS, dimensions_of

from . import draws

#: the referee's name for each symbol of ours, where it is not the same
PARTNERS = {
    "Ω": "ohm", "mΩ": "milliohm", "µΩ": "microohm", "kΩ": "kiloohm", "MΩ": "megaohm",
    "in": "inch", "ft": "foot", "mm²": "mm**2", "cm²": "cm**2", "m²": "m**2", "in²": "inch**2",
    "ft²": "foot**2", "Ah": "A*hour", "mAh": "mA*hour", "Wh": "watt_hour", "kWh": "kilowatt_hour",
    "MWh": "megawatt_hour", "h": "hour", "d": "day", "min": "minute", "N·m": "N*m",
    "lbf·ft": "lbf*foot", "lbf·in": "lbf*inch", "A²s": "A**2*s", "V/K": "V/K", "mV/K": "mV/K",
    "ratio": "", "%": "percent", "°": "degree",
}
SCALES = {"°C": "degC", "°F": "degF", "K": "kelvin"}
DIFFERENCES = {"°C": "delta_degC", "°F": "delta_degF", "K": "kelvin"}
BASE = ("[length]", "[mass]", "[time]", "[current]", "[temperature]")

EVERY = [(dimension, symbol) for dimension in DIMENSIONS for symbol in symbols(dimension)]


@pytest.fixture(scope="module")
def referee() -> Any:
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


def partner(symbol: str, dimension: str) -> str:
    if dimension == "temperature_difference":
        return DIFFERENCES[symbol]
    return PARTNERS.get(symbol, symbol)


@pytest.mark.parametrize(("dimension", "symbol"), [
    pair for pair in EVERY if pair[0] not in ("temperature", "angle")])
def test_a_factor_is_the_referees(referee: Any, dimension: str, symbol: str) -> None:
    canonical = partner(DIMENSIONS[dimension].unit, dimension)
    unit = UNITS[dimension][symbol]
    factor = referee.Quantity(Fraction(1), partner(symbol, dimension)).to(canonical).magnitude
    assert isinstance(factor, Fraction)
    assert unit.factor == factor
    assert unit.offset == 0


@pytest.mark.parametrize("symbol", symbols("temperature"))
@pytest.mark.parametrize("number", ["-40", "0", "32", "98.6", "451"])
def test_a_temperature_is_the_referees(referee: Any, symbol: str, number: str) -> None:
    celsius = referee.Quantity(Fraction(number), SCALES[symbol]).to("degC").magnitude
    assert UNITS["temperature"][symbol].canonical(Fraction(number)) == celsius


@pytest.mark.parametrize("dimension", [name for name in DIMENSIONS if name != "angle"])
def test_powers_and_scale_of_a_dimension_are_the_referees(referee: Any, dimension: str) -> None:
    ours = DIMENSIONS[dimension]
    symbol = "delta_degC" if dimension == "temperature" else partner(ours.unit, dimension)
    quantity = referee.Quantity(Fraction(1), symbol)
    powers = dict(quantity.dimensionality)
    assert tuple(int(powers.pop(base, 0)) for base in BASE) == ours.exponents
    assert not powers
    assert quantity.to_base_units().to(
        "*".join(f"{name}**{power}" for name, power in zip(
            ("m", "kg", "s", "A", "K"), ours.exponents, strict=True))).magnitude == ours.scale


def test_a_degree_of_angle_counts_as_a_plain_number() -> None:
    assert UNITS["angle"]["°"].factor == 1
    assert DIMENSIONS["angle"].exponents == DIMENSIONS["ratio"].exponents == (0, 0, 0, 0, 0)


def test_all_dimensions_of_the_house_are_there() -> None:
    assert set(DIMENSIONS) == set(UNITS) == {
        "voltage", "current", "resistance", "length", "area", "temperature", "charge", "energy",
        "power", "mass", "time", "torque", "force", "capacitance", "inductance", "let_through",
        "temperature_coefficient", "ratio", "angle", "temperature_difference"}


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_the_canonical_unit_stands_first_and_is_worth_one(dimension: str) -> None:
    first = symbols(dimension)[0]
    assert first == DIMENSIONS[dimension].unit
    assert (UNITS[dimension][first].factor, UNITS[dimension][first].offset) == (1, 0)


def test_every_other_spelling_belongs_to_a_symbol_and_to_it_alone() -> None:
    known = {symbol for _, symbol in EVERY}
    spelled = [other for others in SPELLINGS.values() for other in others]
    assert set(SPELLINGS) <= known
    assert len(spelled) == len(set(spelled))
    assert not set(spelled) & known
    for symbol, others in SPELLINGS.items():
        for other in others:
            assert dimensions_of(other) == dimensions_of(symbol)


def test_what_is_ambiguous_is_no_unit() -> None:
    assert not [symbol for symbol in AMBIGUOUS if dimensions_of(symbol)]


def test_one_symbol_means_two_things_only_for_temperatures() -> None:
    shared = {symbol for _, symbol in EVERY if len(dimensions_of(symbol)) > 1}
    assert shared == {"°C", "°F", "K"}


@draws.property_test
@given(st.sampled_from(EVERY), st.fractions(-10 ** 6, 10 ** 6))
def test_there_and_back_is_exact(pair: tuple[str, str], number: Fraction) -> None:
    unit = UNITS[pair[0]][pair[1]]
    assert unit.shown(unit.canonical(number)) == number


@draws.property_test
@given(st.sampled_from(EVERY), st.decimals("0.001", "100000", places=4))
def test_a_figure_is_the_exact_product_rounded_once(pair: tuple[str, str], number: Any) -> None:
    dimension, symbol = pair
    if dimension == "temperature":
        number += 300
    exact = UNITS[dimension][symbol].canonical(Fraction(number))
    assert read_number(f"{number:f} {symbol}", dimension) == float(exact)
