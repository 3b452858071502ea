"""Conductor sizes against the printed columns, each with its source, and sizes as text."""

from __future__ import annotations

import math
import pickle
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from garboard.errors import CATALOGUE, ReadingError
from garboard.values import ConductorSize, awg_area_mm2, awg_names, awg_size, read_size
from garboard.values.conductor_size import CIRCULAR_MIL_MM2, METRIC_SIZES, SAE_CIRCULAR_MILS
from garboard.values.size_lists import awg_diameter_mm

from . import draws

#: Resistivity of annealed copper at 20 °C, IEC 60028, in Ω·mm²/m.
COPPER = 1 / 58
FOOT = 0.3048

#: AWG: diameter in mm, area in mm², circular mils (ASTM B258, computed), and Ω per 1000 ft at 20 °C
#: (as printed in a public handbook table of the American wire gauge).
WIRES = [
    ("18", 1.0237, 0.823, 1624, 6.385), ("16", 1.2908, 1.309, 2583, 4.016),
    ("14", 1.6277, 2.081, 4107, 2.525), ("12", 2.0525, 3.309, 6530, 1.588),
    ("10", 2.5882, 5.261, 10383, 0.9989), ("8", 3.2636, 8.366, 16510, 0.6282),
    ("6", 4.1154, 13.302, 26251, 0.3951), ("4", 5.1894, 21.151, 41741, 0.2485),
    ("3", 5.8273, 26.670, 52635, 0.197), ("2", 6.5437, 33.631, 66371, 0.1563),
    ("1", 7.3481, 42.408, 83693, 0.124), ("1/0", 8.2515, 53.475, 105535, 0.0983),
    ("2/0", 9.2658, 67.431, 133077, 0.078), ("3/0", 10.4049, 85.029, 167806, 0.0618),
    ("4/0", 11.6840, 107.219, 211600, 0.049),
]
#: Nominal circular mils of stranded cable, and the least that SAE asks of the same number
#: (SAE J378, J1127, J1128 as reprinted in a cable catalogue).
CATALOGUE_COLUMNS = [
    ("18", 1600, 1537), ("16", 2600, 2336), ("14", 4100, 3702), ("12", 6500, 5833),
    ("10", 10500, 9343), ("8", 16800, 14810), ("6", 26600, 24538), ("4", 42000, 37360),
    ("2", 66500, 62450), ("1", 83690, 77790), ("1/0", 105600, 98980), ("2/0", 133100, 125100),
    ("3/0", 167800, 158600), ("4/0", 211600, 205500),
]


def number_of(name: str) -> int:
    return 1 - int(name[:-2]) if name.endswith("/0") else int(name)


@pytest.mark.parametrize(("name", "diameter", "area", "mils", "per_kilofoot"), WIRES)
def test_a_wire_against_the_printed_columns(name: str, diameter: float, area: float, mils: int,
                                            per_kilofoot: float) -> None:
    number = number_of(name)
    assert awg_diameter_mm(number) == pytest.approx(diameter, abs=0.00006)
    assert awg_area_mm2(number) == pytest.approx(area, abs=0.0006)
    assert awg_area_mm2(number) / CIRCULAR_MIL_MM2 == pytest.approx(mils, abs=0.6)
    printed_digits = len(str(per_kilofoot).split(".")[1])
    assert COPPER * 1000 * FOOT / awg_area_mm2(number) == pytest.approx(
        per_kilofoot, abs=0.6 * 10 ** -printed_digits)


def test_the_check_values_of_the_gauge() -> None:
    assert awg_area_mm2(18) == pytest.approx(0.823, abs=0.002)
    assert awg_diameter_mm(10) == pytest.approx(2.588, abs=0.001)
    assert awg_diameter_mm(-3) == pytest.approx(11.684, rel=0.0005)
    assert awg_area_mm2(-3) == pytest.approx(107.22, rel=0.0005)
    assert awg_area_mm2(-3) / CIRCULAR_MIL_MM2 == pytest.approx(211600, rel=0.0005)
    assert awg_area_mm2(6) / CIRCULAR_MIL_MM2 == pytest.approx(26251, abs=5)
    per_kilofoot = {number: COPPER * 304.8 / awg_area_mm2(number) for number in (12, -3)}
    assert per_kilofoot[12] == pytest.approx(1.588, abs=0.002)
    assert per_kilofoot[-3] == pytest.approx(0.0490, abs=0.0001)
    assert COPPER * 1000 / awg_area_mm2(-1) == pytest.approx(0.2557, abs=0.0005)
    mil_foot = COPPER * FOOT / CIRCULAR_MIL_MM2
    assert mil_foot == pytest.approx(10.371, abs=0.005)
    # the temperature at which the handbook constant 10.75 holds, by (234.5 + T) / 254.5
    assert 10.75 / mil_foot * 254.5 - 234.5 == pytest.approx(29.3, abs=0.2)


def test_the_two_defining_wires_of_the_gauge_are_exact() -> None:
    assert awg_diameter_mm(36) == 0.127                        # 0.005 in
    assert awg_diameter_mm(-3) == pytest.approx(11.684, rel=1e-14)  # 0.46 in
    assert awg_diameter_mm(-3) / awg_diameter_mm(36) == pytest.approx(92, rel=1e-14)


def test_six_gauges_double_the_diameter_nearly() -> None:
    for number in range(-3, 35):
        ratio = awg_diameter_mm(number) / awg_diameter_mm(number + 6)
        assert ratio == pytest.approx(92 ** (6 / 39))
        assert awg_area_mm2(number) > awg_area_mm2(number + 1)


@pytest.mark.parametrize(("name", "stranded", "sae"), CATALOGUE_COLUMNS)
def test_sae_sizes_are_kept_apart_from_awg(name: str, stranded: int, sae: int) -> None:
    awg, small = read_size(f"{name} AWG"), read_size(f"{name} SAE")
    assert small.area_mm2 / CIRCULAR_MIL_MM2 == pytest.approx(sae, rel=1e-9)
    assert awg.area_mm2 / CIRCULAR_MIL_MM2 == pytest.approx(stranded, rel=0.02)
    assert 0.03 - 0.002 < 1 - small.area_mm2 / awg.area_mm2 < 0.11
    assert (awg.system, small.system, awg.name, small.name) == ("AWG", "SAE", name, name)


def test_the_catalogue_columns_are_all_of_the_sae_sizes() -> None:
    assert [row[0] for row in CATALOGUE_COLUMNS] == list(SAE_CIRCULAR_MILS)


@pytest.mark.parametrize(("text", "system", "name", "area"), [
    ("2/0 AWG", "AWG", "2/0", awg_area_mm2(-1)), ("2 AWG", "AWG", "2", awg_area_mm2(2)),
    ("00 AWG", "AWG", "2/0", awg_area_mm2(-1)), ("0 AWG", "AWG", "1/0", awg_area_mm2(0)),
    ("0000 AWG", "AWG", "4/0", awg_area_mm2(-3)), ("2/0AWG", "AWG", "2/0", awg_area_mm2(-1)),
    ("5 AWG", "AWG", "5", awg_area_mm2(5)), ("40 AWG", "AWG", "40", awg_area_mm2(40)),
    ("00 SAE", "SAE", "2/0", read_size("2/0 SAE").area_mm2),
    ("50 mm2", "mm2", "50", 50.0), ("50 mm²", "mm2", "50", 50.0), ("2.5 mm2", "mm2", "2.5", 2.5),
    ("0.75 mm²", "mm2", "0.75", 0.75), ("50.0 mm2", "mm2", "50", 50.0),
    (" 50\u00a0mm2 ", "mm2", "50", 50.0),
])
def test_a_size_is_read(text: str, system: str, name: str, area: float) -> None:
    size = read_size(text)
    assert (size.system, size.name, size.area_mm2) == (system, name, area)
    assert size.written == str(size) == text.strip()


def test_every_listed_size_is_read() -> None:
    for name in awg_names():
        assert read_size(f"{name} AWG") == awg_size(name)
    areas = [awg_size(name).area_mm2 for name in awg_names()]
    assert areas == sorted(areas)
    for name in METRIC_SIZES:
        assert read_size(f"{name} mm2") == ConductorSize(f"{name} mm2", "mm2", name, float(name))
    assert [float(name) for name in METRIC_SIZES] == sorted(float(name) for name in METRIC_SIZES)


def test_the_sizes_of_the_resistance_table_are_on_the_list() -> None:
    # IEC 60228 as reprinted: the sizes for which a greatest resistance is at hand
    assert {"0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25", "35", "50", "70", "95",
            "120"} <= set(METRIC_SIZES)


@pytest.mark.parametrize(("text", "code", "hint"), [
    ("40 mm2", "size-unknown", "35 mm2 and 50 mm2"), ("700 mm2", "size-unknown", "630 mm2"),
    ("0.1 mm2", "size-unknown", "0.5 mm2"), ("0 mm2", "size-unknown", "0.5 mm2"),
    ("3 SAE", "size-unknown", "2 SAE and 4 SAE"), ("5/0 AWG", "size-unknown", "4/0 AWG"),
    ("41 AWG", "size-unknown", "40 AWG"), ("1.5 AWG", "size-unknown", "1 AWG and 2 AWG"),
    ("02 AWG", "size-unknown", "2 AWG"), ("0/0 AWG", "size-unknown", "1/0 AWG"),
    ("20 SAE", "size-unknown", "18 SAE"),
    ("12", "size-system-missing", "AWG"), (12, "size-system-missing", "AWG"),
    ("12 gauge", "size-system-missing", "SAE"), ("12 ga", "size-system-missing", "SAE"),
    ("#4", "size-system-missing", "AWG"), ("2/0", "size-system-missing", "AWG"),
    ("AWG 2/0", "size-unreadable", "2/0 AWG"), ("4 awg", "size-unreadable", "4 AWG"),
    ("4 Sae", "size-unreadable", "4 SAE"), ("35 sqmm", "size-unreadable", "mm2"),
    ("35mm", "size-unreadable", "mm2"), ("35 mm^2", "size-unreadable", "mm2"),
    ("250 kcmil", "size-unreadable", "resistance"), ("2,5 mm2", "unit-comma", "2.5 mm2"),
    ("4/0 mm2", "size-unreadable", ""), ("", "size-unreadable", ""),
    ("thick", "size-unreadable", ""),
    ("-4 AWG", "size-unreadable", ""), ("２ AWG", "size-unreadable", ""),
    ("50  mm2", "size-unreadable", ""), (None, "size-unreadable", ""),
    (True, "size-unreadable", ""),
    ("2 AWG " * 20, "text-too-long", ""), ("9" * 400 + " AWG", "text-too-long", ""),
])
def test_a_size_is_refused(text: Any, code: str, hint: str) -> None:
    with pytest.raises(ReadingError) as caught:
        read_size(text)
    assert caught.value.code == code
    assert hint in caught.value.hint
    assert code in CATALOGUE


@draws.property_test
@given(st.text(max_size=90))
def test_any_text_gives_a_size_or_a_refusal(text: str) -> None:
    try:
        size = read_size(text)
    except ReadingError as error:
        assert error.code in CATALOGUE
    else:
        assert size.area_mm2 > 0


@draws.property_test
@given(st.sampled_from(["AWG", "SAE", "mm2"]), st.from_regex(r"[0-9]{1,4}(/0|\.[0-9]{1,3})?",
                                                              fullmatch=True))
def test_any_number_gives_a_size_of_its_system_or_a_refusal(system: str, number: str) -> None:
    try:
        size = read_size(f"{number} {system}")
    except ReadingError as error:
        assert error.code in ("size-unknown", "size-unreadable")
    else:
        assert size.system == system
        assert math.isfinite(size.area_mm2)


@pytest.mark.parametrize("text", ["2/0 AWG", "4 SAE", "50 mm2"])
def test_a_size_is_frozen_and_survives_pickling(text: str) -> None:
    size = read_size(text)
    assert pickle.loads(pickle.dumps(size)) == size
    with pytest.raises(AttributeError):
        size.area_mm2 = 1.0  # type: ignore[misc]
