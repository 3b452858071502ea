"""What may be calculated with what, and what comes of it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from expressions.small_boat import VOCABULARY, read
from garboard.expressions.check import Checked
from garboard.expressions.measure import BARE, measure_of
from garboard.expressions.tree import Comparison
from garboard.expressions.vocabulary import NameInfo
from garboard.values import DIMENSIONS


@pytest.mark.parametrize(("about", "text", "unit"), [
    ("battery", "battery.capacity * battery.voltage", "Wh"),          # Ah · V = Wh
    ("battery", "battery.voltage * battery.capacity", "Wh"),
    ("battery", "battery.energy / battery.voltage", "Ah"),
    ("battery", "battery.energy / battery.capacity", "V"),
    ("battery", "battery.voltage / battery.charge.current_max", "Ω"),
    ("battery", "battery.voltage * battery.charge.current_max", "W"),
    ("battery", "battery.charge.current_max * battery.resistance", "V"),
    ("battery", "battery.charge.current_max * battery.charge.current_max * some_time", "A²s"),
    ("battery", "battery.charge.current_max * some_time", "A·s"),      # not Ah
    ("battery", "much_power * some_time", "N·m"),                      # watt-seconds, not Wh
    ("place", "place.length * place.length", "m·m"),                   # not mm²
    ("place", "sqrt(place.length * place.length)", "m"),
    ("place", "pull * place.length", "N·m"),
    ("device", "sqrt(device.let_through / some_time)", "A"),
    ("battery", "battery.charge.temperature.low - hottest", "K"),
    ("battery", "battery.charge.temperature.low + warmer", "°C"),
    ("battery", "warmer + battery.charge.temperature.low", "°C"),
    ("battery", "battery.charge.temperature.low - warmer", "°C"),
    ("battery", "max(battery.charge.temperature.low, hottest)", "°C"),
    ("battery", "battery.voltage * share", "V"), ("battery", "2 * battery.voltage", "V"),
    ("battery", "battery.voltage / highest", ""), ("battery", "battery.age * few", ""),
    ("battery", "battery.state + 1", ""), ("battery", "-battery.voltage", "V"),
    ("battery", "abs(battery.voltage - highest)", "V"),
    ("battery", "(battery.voltage if battery.heated else highest)", "V"),
    ("bank", "sum(s.current_max for s in bank.sources)", "A"),
    ("bank", "min(b.charge.temperature.low for b in bank.batteries)", "°C"),
    ("bank", "count(bank.batteries)", ""),
    ("battery", "battery.voltage / (battery.charge.current_max * some_time)", "V/(A·s)"),
    ("battery", "1 / some_time", "1/s"),
])
def test_the_unit_of_a_figure(about: str, text: str, unit: str) -> None:
    found = read(text, about, wanted=None).root.type
    assert found is not None and found.measure.unit == unit


@pytest.mark.parametrize(("about", "text"), [
    ("battery", "battery.capacity * battery.voltage <= battery.energy"),
    ("battery", "battery.voltage / battery.charge.current_max > battery.resistance"),
    ("battery", "battery.charge.temperature.low + warmer <= hottest"),
    ("battery", "battery.charge.temperature.low - hottest <= warmer"),
    ("device", "device.rating * device.rating * some_time <= device.let_through"),
    ("place", "pull * place.length <= twist"),
    ("battery", "battery.state <= share * 2"), ("battery", "battery.age in (1, 2)"),
    ("battery", "battery.age >= 1.5"), ("battery", "battery.state in (0.5, 1)"),
    ("battery", "battery.resistance.origin == 'measured'"),
    ("battery", "battery.internal_resistance.method != ''"),
    ("battery", "(battery.chemistry if battery.heated else 'LFP') == 'NMC'"),
    ("battery", "battery.place.tilt <= battery.place.tilt"),
    ("bank", "all(battery.heated for battery in bank.batteries)"),
    ("device", "all(b.current >= device.rating for b in device.breaks)"),
    ("record", "all(any(c.heated for c in b.batteries) for b in record.banks)"),
])
def test_good_conditions(about: str, text: str) -> None:
    assert read(text, about).root.type is not None


def test_scales_are_kept_exactly() -> None:
    assert measure_of("charge").scale == 3600 and measure_of("area").scale == Fraction(1, 10**6)
    assert measure_of("ratio") == BARE
    assert {measure_of(name).unit for name in DIMENSIONS} >= {"V", "mm²", "°C", "Ah", "A²s"}


def test_products_and_quotients_are_each_others_way_back() -> None:
    for one in map(measure_of, DIMENSIONS):
        for other in map(measure_of, DIMENSIONS):
            if not one.zero_point and not other.zero_point:
                back = one * other / other
                assert (back.powers, back.scale) == (one.powers, one.scale)


# what a checked expression says of itself --------------------------------------------------------
def test_what_an_expression_uses() -> None:
    checked: Checked = read("battery.own_device.rating >= least_current and answer.vent-clear and "
                            "all(b.charge.voltage_max <= highest for b in battery.bank.batteries)")
    assert checked.limits == ("highest", "least_current")
    assert checked.answers == ("vent-clear",)
    assert checked.reads == (("bank", "batteries"), ("battery", "bank"), ("battery",
                             "charge.voltage_max"), ("battery", "own_device"), ("device", "rating"))
    assert (checked.about, checked.absent) == ("battery", "batteries")
    assert isinstance(read("battery.voltage <= highest").root, Comparison)


def test_the_longest_name_is_taken() -> None:
    """``resistance.origin`` is a name of its own beside ``resistance``."""
    assert read("battery.resistance.origin == 'x'").reads == (("battery", "resistance.origin"),)
    assert read("battery.resistance > battery.resistance").reads == (("battery", "resistance"),)


def test_an_unknown_subject_is_no_expressions_fault() -> None:
    with pytest.raises(KeyError):
        read("battery.heated", about="bateau")


@pytest.mark.parametrize("wrong", [
    lambda: NameInfo("number"), lambda: NameInfo("text", "voltage"), lambda: NameInfo("many"),
    lambda: NameInfo("count", target="battery"), lambda: NameInfo("colour"),  # type: ignore[arg-type]
])
def test_names_are_declared_soundly(wrong: object) -> None:
    with pytest.raises(ValueError, match=r"number|relation|kind"):
        wrong()  # type: ignore[operator]


def test_single_things_are_those_the_vocabulary_has() -> None:
    assert VOCABULARY.single == ("record", "vessel")
