"""What is wrong with a unit (missing, of another dimension, unknown), naming the usual slip."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from garboard.errors import ReadingError, did_you_mean
from garboard.values.dimensions import DIMENSIONS
from garboard.values.unit_table import AMBIGUOUS, UNITS, dimensions_of, symbols

_WORDS: Final = {
    "V": "volt volts vdc v-dc vac v-ac", "mV": "millivolt millivolts", "kV": "kilovolt kilovolts",
    "A": "amp amps ampere amperes adc a-dc cca mca ca", "mA": "milliamp milliamps",
    "Ω": "ohms", "mΩ": "milliohm milliohms", "µΩ": "microohm microohms", "MΩ": "megohm megaohm",
    "m": "metre metres meter meters mtr", "mm": "millimetre millimetres millimeter millimeters",
    "cm": "centimetre centimetres centimeter centimeters", "km": "kilometre kilometer",
    "in": "inch inches \" ″ ''", "ft": "foot feet ' ′", "mm²": "mm^2 sqmm sq-mm",
    "cm²": "cm^2 sqcm sq-cm", "in²": "in^2 sqin sq-in", "m²": "m^2 sqm sq-m",
    "°C": "c ° celsius centigrade deg-c", "°F": "f fahrenheit deg-f", "K": "kelvin kelvins",
    "Ah": "a-h amp-hour amp-hours amphours amp-hr ahr", "Wh": "w-h watt-hour watt-hours watthours",
    "kWh": "kw-h kilowatt-hour kilowatt-hours", "J": "joule joules",
    "W": "watt watts", "kW": "kilowatt kilowatts", "kg": "kgs kilo kilos kilogram kilograms",
    "g": "gram grams", "lb": "lbs pound pounds #", "oz": "ounce ounces", "lbf": "lb lbs",
    "s": "sec secs second seconds", "ms": "msec millisecond milliseconds",
    "min": "mins minute minutes m", "h": "hr hrs hour hours", "d": "day days",
    "N·m": "n-m n.m n*m newton-metre newton-meter", "lbf·ft": "ft.lb ft.lbs ft-lbs foot-pounds",
    "lbf·in": "in.lb in.lbs in-lbs inch-pounds", "N": "newton newtons",
    "F": "farad farads", "H": "henry henries", "A²s": "a^2s a²sec a2sec",
    "%": "percent pct per-cent", "°": "degree degrees degs",
}


def _slips() -> Mapping[str, tuple[str, ...]]:
    """Misspelling, folded, to the symbols it may stand for."""
    slips: dict[str, tuple[str, ...]] = {}
    for symbol, words in _WORDS.items():
        for word in words.split():
            slips[word] = (*slips.get(word, ()), symbol)
    return MappingProxyType(slips)


_SLIPS: Final = _slips()
_SIZE_WORDS: Final = frozenset({"awg", "sae", "ga", "gauge", "cmil", "kcmil", "mcm"})


def unit_slip(text: str, number: str, unit: str, offset: int, dimension: str) -> ReadingError:
    """The refusal of ``unit``, which is no unit of ``dimension``, in ``text``."""
    wanted = DIMENSIONS[dimension]
    code, hint = _code_and_hint(number, unit, dimension)
    return ReadingError(
        code, found=repr(text), hint=hint, offset=offset,
        expected=f"{wanted.title} in {', '.join(symbols(dimension))}, such as {wanted.example}")


def _code_and_hint(number: str, unit: str, dimension: str) -> tuple[str, str]:
    wanted = DIMENSIONS[dimension]
    if not unit:
        if dimension == "ratio":
            return "unit-missing", f"write {number} % if it is a percentage, else {number} ratio"
        return "unit-missing", f"write {number} {wanted.unit} if it is in that unit"
    if unit in AMBIGUOUS:
        return "unit-ambiguous", AMBIGUOUS[unit]
    meant = _meant(unit, dimension)
    others = dimensions_of(unit)
    if others:
        title = " or ".join(DIMENSIONS[name].title for name in others)
        return "unit-mismatch", f"{unit} is a unit of {title}" + (
            f"; did you mean {number} {meant}?" if meant else "")
    folded = _folded(unit)
    if folded in _SIZE_WORDS:
        return "unit-unknown", f"{unit} is a conductor size, not a unit"
    if meant:
        kind = folded.endswith(("dc", "ac"))
        return "unit-unknown", f"write {number} {meant}" + (
            "; DC or AC is said only where the kind is asked for" if kind else "")
    alike = sorted({known.symbol for spelling, known in UNITS[dimension].items()
                    if spelling.casefold() == unit.casefold()})
    if alike:
        return "unit-unknown", ("capital and small letters differ: did you mean "
                                f"{' or '.join(alike)}?")
    elsewhere = _SLIPS.get(folded, ())
    if elsewhere:
        return "unit-mismatch", f"{unit} stands for {elsewhere[0]}, which is another dimension"
    return "unit-unknown", did_you_mean(unit, UNITS[dimension])


def _meant(unit: str, dimension: str) -> str | None:
    """The unit of the dimension that a word of the trade or another symbol stands for, if any."""
    return next((symbol for symbol in _SLIPS.get(_folded(unit), ())
                 if symbol in UNITS[dimension]), None)


def _folded(unit: str) -> str:
    return "-".join(unit.casefold().rstrip(".").split())
