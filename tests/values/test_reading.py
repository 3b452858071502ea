"""Texts as figures: what is read and what it is worth, what is refused, with code and position."""

from __future__ import annotations

import pickle
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.errors import CATALOGUE, ReadingError
from garboard.values import DIMENSIONS, UNITS, read_number, read_voltage_kind
from garboard.values.units import MAX_TEXT

from . import draws

READ = [
    # exact to the last bit: the literal is the correctly rounded decimal
    ("7 in", "length", 0.1778), ("2.1 mΩ", "resistance", 0.0021), ("1.2 mΩ", "resistance", 0.0012),
    ("14.4 V", "voltage", 14.4), ("280 Ah", "charge", 280.0), ("45 °C", "temperature", 45.0),
    ("3 %", "ratio", 0.03), ("35 mm2", "area", 35.0), ("35 mm²", "area", 35.0),
    ("33.3 %", "ratio", 0.333), ("0.1 kV", "voltage", 100.0), ("4.2 kA", "current", 4200.0),
    ("72 in", "length", 1.8288), ("40 in", "length", 1.016), ("10.5 ft", "length", 3.2004),
    ("4 in2", "area", 2580.64), ("1 ft²", "area", 92903.04), ("2.5 cm2", "area", 250.0),
    ("113 °F", "temperature", 45.0), ("-40 °F", "temperature", -40.0),
    ("0 K", "temperature", -273.15),
    ("98.6 degF", "temperature", 37.0), ("20 ℃", "temperature", 20.0), ("68℉", "temperature", 20.0),
    ("3600 J", "energy", 1.0), ("5.12 kWh", "energy", 5120.0), ("1.8 MJ", "energy", 500.0),
    ("500 mAh", "charge", 0.5), ("1.5 kW", "power", 1500.0), ("90 lbf", "force", 400.339945373445),
    ("23 kg", "mass", 23.0), ("50 lb", "mass", 22.6796185), ("8 oz", "mass", 0.22679618500),
    ("250 ms", "time", 0.25), ("30 min", "time", 1800.0), ("2 h", "time", 7200.0),
    ("9 Nm", "torque", 9.0), ("9 N·m", "torque", 9.0), ("80 in-lb", "torque", 9.038786322209336),
    ("80 in·lbf", "torque", 9.038786322209336), ("6 ft-lbf", "torque", 8.1349076899884024),
    ("4700 µF", "capacitance", 0.0047), ("2 µH", "inductance", 2e-6), ("2 uH", "inductance", 2e-6),
    ("52000 A2s", "let_through", 52000.0), ("52000 A²s", "let_through", 52000.0),
    ("-30 mV/°C", "temperature_coefficient", -0.03), ("-30 mV/K", "temperature_coefficient", -0.03),
    ("9 °F", "temperature_difference", 5.0), ("5 °C", "temperature_difference", 5.0),
    ("30°", "angle", 30.0), ("30 deg", "angle", 30.0), ("1.6 ratio", "ratio", 1.6),
    # the form: no space or one, a sign, a power of ten, idle noughts, spaces around
    ("12V", "voltage", 12.0), ("+12 V", "voltage", 12.0), ("-12 V", "voltage", -12.0),
    ("1.5e3 A", "current", 1500.0), ("1.5E-3 A", "current", 0.0015), ("1e+2 A", "current", 100.0),
    ("012.50 V", "voltage", 12.5), ("  12 V\n", "voltage", 12.0), ("0 V", "voltage", 0.0),
    ("1e-30 Ω", "resistance", 1e-30), ("-0 Ω", "resistance", 0.0),
    # look-alikes
    ("2 \u00b5H", "inductance", 2e-6), ("2 \u03bcH", "inductance", 2e-6),
    ("2 \u03a9", "resistance", 2.0), ("2 \u2126", "resistance", 2.0),
    ("2 m\u2126", "resistance", 0.002),
    ("\u22125 °C", "temperature", -5.0), ("12\u00a0V", "voltage", 12.0),
    ("12\u202fV", "voltage", 12.0), ("12\u2009V", "voltage", 12.0),
    ("300 \u212a", "temperature", 26.85),
    ("45 \u00baC", "temperature", 45.0), ("45 \u02daC", "temperature", 45.0),
    ("9 N\u22c5m", "torque", 9.0),
]


@pytest.mark.parametrize(("text", "dimension", "value"), READ)
def test_a_text_is_read(text: str, dimension: str, value: float) -> None:
    number = read_number(text, dimension)
    assert type(number) is float
    assert number == value


#: text, dimension, code, where the trouble starts
REFUSED: list[tuple[Any, str, str, int]] = [
    ("1,5 V", "voltage", "unit-comma", 1), ("1,000 A", "current", "unit-comma", 1),
    ("1,234.5 A", "current", "unit-comma", 1), ("1.234,5 A", "current", "unit-comma", 5),
    (",5 V", "voltage", "unit-comma", 0), ("1,5", "voltage", "unit-comma", 1),
    ("1_000 A", "current", "number-grouped", 1), ("1'000 A", "current", "number-grouped", 1),
    ("1 000 A", "current", "number-twice", 2), ("12 24 V", "voltage", "number-twice", 3),
    ("12/24 V", "voltage", "number-twice", 3), ("12/8 V", "voltage", "number-twice", 3),
    ("12-24 V", "voltage", "number-twice", 3),
    ("0 to 45 °C", "temperature", "number-twice", 5), ("12 V 5 A", "voltage", "number-twice", 5),
    ("12 V ± 5 %", "voltage", "number-twice", 7), ("12 V +/- 1 V", "voltage", "number-twice", 9),
    ("5'10\"", "length", "number-twice", 2), ("12–24 V", "voltage", "number-twice", 3),
    ("0 .. 45 °C", "temperature", "range-unexpected", 2),
    (".. 45 °C", "temperature", "range-unexpected", 0),
    ("0...45 °C", "temperature", "range-malformed", 1),
    ("0…45 °C", "temperature", "range-malformed", 1),
    ("12", "voltage", "unit-missing", 2), (" 12 ", "voltage", "unit-missing", 3),
    ("50", "ratio", "unit-missing", 2), (12, "voltage", "unit-missing", 2),
    (12.5, "voltage", "unit-missing", 4), (0, "resistance", "unit-missing", 1),
    (-5, "temperature", "unit-missing", 2), (float("nan"), "voltage", "number-not-finite", 0),
    (float("inf"), "voltage", "number-not-finite", 0),
    (None, "voltage", "number-missing", 0), (True, "voltage", "number-missing", 0),
    ([12], "voltage", "number-missing", 0), ({"value": 12}, "voltage", "number-missing", 0),
    ("", "voltage", "number-missing", 0), ("   ", "voltage", "number-missing", 3),
    ("V", "voltage", "number-missing", 0), ("unknown", "voltage", "number-missing", 0),
    ("?", "voltage", "number-missing", 0), ("twelve V", "voltage", "number-missing", 0),
    ("²", "voltage", "number-missing", 0),
    ("5 A", "voltage", "unit-mismatch", 2), ("5 m", "time", "unit-mismatch", 2),
    ("70 F", "temperature", "unit-mismatch", 3), ("10 lb", "force", "unit-mismatch", 3),
    ("9 Nm", "energy", "unit-mismatch", 2), ("5 volts", "current", "unit-mismatch", 2),
    ("35 mm", "area", "unit-mismatch", 3), ("100 A", "charge", "unit-mismatch", 4),
    ("5 K", "voltage", "unit-mismatch", 2), ("3 %", "voltage", "unit-mismatch", 2),
    ("5 hp", "power", "unit-ambiguous", 2), ("27 kA²s", "let_through", "unit-ambiguous", 3),
    ("3 kVA", "power", "unit-ambiguous", 2), ("3 VA", "energy", "unit-ambiguous", 2),
    ("12 v", "voltage", "unit-unknown", 3), ("12 VDC", "voltage", "unit-unknown", 3),
    ("24 V DC", "voltage", "unit-unknown", 3), ("900 CCA", "current", "unit-unknown", 4),
    ("5 mv", "voltage", "unit-unknown", 2), ("5 MV", "voltage", "unit-unknown", 2),
    ('7"', "length", "unit-unknown", 1), ("6'", "length", "unit-unknown", 1),
    ("7 inches", "length", "unit-unknown", 2), ("45 C", "temperature", "unit-unknown", 3),
    ("5 xyz", "voltage", "unit-unknown", 2), ("2 AWG", "area", "unit-unknown", 2),
    ("50 lbs", "mass", "unit-unknown", 3), ("100 AH", "charge", "unit-unknown", 4),
    ("5 Ω/km", "resistance", "unit-unknown", 2), ("12 V.", "voltage", "unit-unknown", 3),
    ("12 m V", "voltage", "unit-unknown", 3), ("5 ft lb", "torque", "unit-unknown", 2),
    ("NaN", "voltage", "number-not-finite", 0), ("nan V", "voltage", "number-not-finite", 0),
    (".nan", "voltage", "number-not-finite", 0), ("inf V", "voltage", "number-not-finite", 0),
    ("-.inf", "voltage", "number-not-finite", 0), ("Infinity V", "voltage", "number-not-finite", 0),
    ("∞ V", "voltage", "number-not-finite", 0), ("-∞ V", "voltage", "number-not-finite", 0),
    ("١٢ V", "voltage", "number-digits", 0), ("１２ V", "voltage", "number-digits", 0),
    ("1２ V", "voltage", "number-digits", 1), ("١٫٥ V", "voltage", "number-digits", 0),
    ("१२ V", "voltage", "number-digits", 0),
    ("3/8 in", "length", "number-fraction", 0), ("1 1/2 in", "length", "number-fraction", 2),
    ("1-1/2 in", "length", "number-fraction", 2),
    ("approx 5 V", "voltage", "number-qualified", 0), ("~5 V", "voltage", "number-qualified", 0),
    ("< 5 V", "voltage", "number-qualified", 0), ("≤5 V", "voltage", "number-qualified", 0),
    ("max 5 V", "voltage", "number-qualified", 0), ("±5 %", "ratio", "number-qualified", 0),
    (".5 V", "voltage", "number-malformed", 0), ("-.5 V", "voltage", "number-malformed", 1),
    ("5. V", "voltage", "number-malformed", 1), ("5.V", "voltage", "number-malformed", 1),
    ("1.2.3 V", "voltage", "number-malformed", 3), ("--5 V", "voltage", "number-malformed", 0),
    ("V 12", "voltage", "number-malformed", 0), ("–5 V", "voltage", "number-malformed", 0),
    ("- 5 V", "voltage", "number-malformed", 0), ("5/ V", "voltage", "number-malformed", 1),
    ("0x10 V", "voltage", "unit-unknown", 1),
    ("5  V", "voltage", "unit-spaces", 1), ("5\tV", "voltage", "unit-spaces", 1),
    ("5\nV", "voltage", "unit-spaces", 1), ("5 \u00a0V", "voltage", "unit-spaces", 1),
    ("-5 m", "length", "number-below-least", 0), ("-1 mΩ", "resistance", "number-below-least", 0),
    ("-300 °C", "temperature", "number-below-least", 0),
    ("-1 K", "temperature", "number-below-least", 0),
    ("-5 kg", "mass", "number-below-least", 0), ("-5 s", "time", "number-below-least", 0),
    ("1e400 V", "voltage", "number-out-of-range", 0),
    ("1e99999999 V", "voltage", "number-out-of-range", 0),
    ("1e-400 V", "voltage", "number-out-of-range", 0),
    ("1e101 V", "voltage", "number-out-of-range", 0),
    ("9" * 79 + "V", "voltage", "", 0),
    ("9" * 80 + "V", "voltage", "text-too-long", 80),
    ("12 V " + "x" * 1_000_000, "voltage", "text-too-long", 80),
]


@pytest.mark.parametrize(("text", "dimension", "code", "offset"), REFUSED)
def test_a_text_is_refused(text: Any, dimension: str, code: str, offset: int) -> None:
    if not code:
        assert read_number(text, dimension) > 1e78
        return
    with pytest.raises(ReadingError) as caught:
        read_number(text, dimension)
    assert (caught.value.code, caught.value.offset) == (code, offset)


#: what the hint proposes reads, and is what was meant
REPAIRED = [
    ("1,5 V", "voltage", "1.5 V"), ("1,000 A", "current", "1000 A"),
    ("1_000 A", "current", "1000 A"),
    ("1'000 A", "current", "1000 A"), ("1 000 A", "current", "1000 A"), ("12", "voltage", "12 V"),
    ("50", "ratio", "50 %"), ("70 F", "temperature", "70 °F"), ("10 lb", "force", "10 lbf"),
    ("12 VDC", "voltage", "12 V"), ("900 CCA", "current", "900 A"),
    ('7"', "length", "7 in"), ("6'", "length", "6 ft"), ("45 C", "temperature", "45 °C"),
    ("50 lbs", "mass", "50 lb"), ("١٢ V", "voltage", "12 V"), ("１２．５ V", "voltage", "12.5 V"),
    ("3/8 in", "length", "0.375 in"), ("1 1/2 in", "length", "1.5 in"),
    (".5 V", "voltage", "0.5 V"),
    ("-.5 V", "voltage", "-0.5 V"), ("5. V", "voltage", "5 V"), ("5  V", "voltage", "5 V"),
    ("5 m", "time", "5 min"), ("24 V DC", "voltage", "24 V"),
]


@pytest.mark.parametrize(("text", "dimension", "repaired"), REPAIRED)
def test_the_hint_names_the_usual_slip(text: str, dimension: str, repaired: str) -> None:
    with pytest.raises(ReadingError) as caught:
        read_number(text, dimension)
    assert repaired in caught.value.hint
    read_number(repaired, dimension)


def test_wrong_capitals_are_named_without_a_guess() -> None:
    with pytest.raises(ReadingError) as caught:
        read_number("5 MV", "voltage")
    assert "mV" in caught.value.hint
    assert "5 mV" not in caught.value.hint


def test_every_code_of_a_refusal_is_in_the_catalogue_and_refusals_survive_pickling() -> None:
    for text, dimension, code, _ in REFUSED:
        if code:
            assert code in CATALOGUE
            with pytest.raises(ReadingError) as caught:
                read_number(text, dimension)
            copied = pickle.loads(pickle.dumps(caught.value))
            assert copied.problem() == caught.value.problem()
            assert len(str(copied)) < 2000


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_the_example_of_a_dimension_reads(dimension: str) -> None:
    assert read_number(DIMENSIONS[dimension].example, dimension) != 0


def test_a_dimension_that_does_not_exist_is_a_mistake_of_ours() -> None:
    with pytest.raises(KeyError):
        read_number("5 V", "volts")


@draws.property_test
@given(st.text(max_size=MAX_TEXT + 5), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_gives_a_number_or_a_refusal(text: str, dimension: str) -> None:
    try:
        number = read_number(text, dimension)
    except ReadingError as error:
        assert 0 <= error.offset <= len(text)
        assert error.code in CATALOGUE
    else:
        assert type(number) is float


fragments = st.sampled_from([
    "1", "12", "0.5", ".5", "5.", ",", ".", "..", "_", "'", " ", "  ", "\t", "-", "+", "±", "e",
    "E9", "V", "mV", "A", "°", "C", "%", "in", "Ω", "/", "nan", "inf", "3/8", "٣", "２", "²", "−",
    "to", "\""])


@draws.property_test
@given(st.lists(fragments, max_size=7).map("".join),
       st.sampled_from(["voltage", "length", "ratio"]))
def test_any_jumble_of_usual_parts_gives_a_number_or_a_refusal(text: str, dimension: str) -> None:
    try:
        read_number(text, dimension)
    except ReadingError as error:
        assert 0 <= error.offset <= len(text)
        assert error.hint or error.expected


@draws.property_test
@given(st.sampled_from(sorted(DIMENSIONS)), st.data(),
       st.decimals(min_value="0.000001", max_value="1000000", allow_nan=False, places=6))
def test_a_larger_number_of_one_unit_is_a_larger_figure(dimension: str, data: Any,
                                                        number: Any) -> None:
    unit = data.draw(st.sampled_from(sorted(UNITS[dimension])))
    figure = read_number(f"{number} {unit}", dimension)
    assert figure < read_number(f"{number + 1} {unit}", dimension)
    assert figure == read_number(f"{number}{unit}", dimension)


@pytest.mark.parametrize(("text", "volts", "kind"), [
    ("160 V DC", 160.0, "DC"), ("160 VDC", 160.0, "DC"), ("160V DC", 160.0, "DC"),
    ("230 V AC", 230.0, "AC"), ("1 kV DC", 1000.0, "DC"), ("58.4\u00a0V DC", 58.4, "DC")])
def test_a_voltage_with_its_kind(text: str, volts: float, kind: str) -> None:
    assert read_voltage_kind(text) == (volts, kind)


@pytest.mark.parametrize(("text", "code"), [
    ("160 V", "voltage-kind-missing"), ("160", "unit-missing"), ("160 V dc", "unit-unknown"),
    ("160 DC", "unit-unknown"), ("160 A DC", "unit-mismatch"), ("1,5 V DC", "unit-comma"),
    ("V DC", "number-missing"), (160, "unit-missing"), (None, "number-missing"),
    ("12/24 V DC", "number-twice"), ("160 V  DC", "unit-unknown"),
    (["160 V DC"], "number-missing")])
def test_a_voltage_without_its_kind_is_refused(text: Any, code: str) -> None:
    with pytest.raises(ReadingError) as caught:
        read_voltage_kind(text)
    assert caught.value.code == code
