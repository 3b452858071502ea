"""What is wrong with the number in a text, naming the usual slip.

The tests run in a fixed order on a cleaned text; each answers with the refusal or with ``None``.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from typing import Final

from garboard.errors import ReadingError

_NUMBER: Final = re.compile(r"\s*[+-]?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?")
_NOT_FINITE: Final = re.compile(r"\s*[+-]?(?:\.?(?:nan|inf|infinity)\b|∞)", re.IGNORECASE)
_QUALIFIED: Final = re.compile(r"\s*(?:[<>≤≥~≈±]|\+/-|\+-|(?:ca|approx|about|max|min|up to)\b)",
                               re.IGNORECASE)
_COMMON_FRACTION: Final = re.compile(r"\s*(?:([0-9]+)[ -])?([0-9]+)/(2|4|8|16|32|64)(?![0-9])")
_COMMA: Final = re.compile(r"(?<=[0-9]),(?=[0-9])|^\s*[+-]?,(?=[0-9])")
_THOUSANDS: Final = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])")
_GROUPED: Final = re.compile(r"(?<=[0-9])(?:_|'(?=[0-9]{3}(?![0-9])))(?=[0-9])")
_SPACED: Final = re.compile(r"(?<![0-9])[0-9]{1,3}(?: [0-9]{3})+(?![0-9])")
_BARE_POINT: Final = re.compile(r"\s*[+-]?\.(?=[0-9])|\s*[+-]?[0-9]+\.(?![0-9.])")
_FREE_DIGIT: Final = re.compile(r"(?<![A-Za-zµΩ²·^0-9.])[0-9]")
_SPACES: Final = re.compile(r"(\s*[+-]?[0-9.]+)(?:\s{2,}|[^\S ])(?=\S)")

_NOT_KNOWN: Final = "leave out a figure that is not known, or say not_determinable and why"
_RANGE: Final = "one number is read here; a range is written low .. high UNIT, with two points"


def _start(text: str) -> int:
    return len(text) - len(text.lstrip())


def _range(text: str) -> ReadingError | None:
    if "..." in text or "…" in text:
        return ReadingError("range-malformed", hint="a range has two points: 0 .. 45 °C",
                            offset=text.find("..." if "..." in text else "…"))
    if ".." in text:
        return ReadingError("range-unexpected", hint="one number is read here, not a range",
                            offset=text.index(".."))
    return None


def _digits(text: str) -> ReadingError | None:
    foreign = [at for at, sign in enumerate(text) if sign.isdecimal() and not sign.isascii()]
    if not foreign:
        return None
    plain = "".join(str(unicodedata.decimal(sign)) if sign.isdecimal() else
                    "." if sign in "٫．" else sign for sign in text)
    return ReadingError("number-digits", hint=f"write {plain.strip()}", offset=foreign[0])


def _not_finite(text: str) -> ReadingError | None:
    if not _NOT_FINITE.match(text):
        return None
    return ReadingError("number-not-finite", hint=_NOT_KNOWN, offset=_start(text))


def _missing(text: str) -> ReadingError | None:
    if any(sign in "0123456789" for sign in text):
        return None
    return ReadingError("number-missing", hint=_NOT_KNOWN, offset=_start(text))


def _qualified(text: str) -> ReadingError | None:
    if not _QUALIFIED.match(text):
        return None
    if text.lstrip().startswith(("±", "+/-", "+-")):
        return ReadingError("number-qualified", offset=_start(text),
                            hint="plus_minus is written without its sign")
    return ReadingError("number-qualified", offset=_start(text), hint=(
        "at most 45 °C is written .. 45 °C, at least 45 °C is 45 °C .., and about 45 °C is 45 °C "
        "with a plus_minus"))


def _common_fraction(text: str) -> ReadingError | None:
    match = _COMMON_FRACTION.match(text)
    if match is None or int(match[2]) >= int(match[3]):
        return None
    value = int(match[1] or 0) + int(match[2]) / int(match[3])
    return ReadingError("number-fraction", hint=f"write {value:.10g} {text[match.end():].strip()}",
                        offset=match.start(2))


def _comma(text: str) -> ReadingError | None:
    match = _COMMA.search(text)
    if match is None:
        return None
    point = text.replace(",", ".", 1).strip()
    hint = f"the decimal sign is a point: write {point}"
    if _THOUSANDS.search(text):
        hint = (f"thousands are not set off: write {text.replace(',', '').strip()}, "
                f"or {point} if the comma is a decimal sign")
    return ReadingError("unit-comma", hint=hint, offset=text.index(","))


def _grouped(text: str) -> ReadingError | None:
    match = _GROUPED.search(text)
    if match is None:
        return None
    return ReadingError("number-grouped", offset=match.start(),
                        hint=f"write {text.replace(match[0], '').strip()}")


def _bare_point(text: str) -> ReadingError | None:
    match = _BARE_POINT.match(text)
    if match is None:
        return None
    before = match[0].strip()
    whole = before[:-1] + ("0." if before in (".", "+.", "-.") else "")
    return ReadingError("number-malformed", offset=match.end() - 1,
                        hint=f"a point stands between digits: write {whole}{text[match.end():]}")


def _twice(text: str) -> ReadingError | None:
    first = _NUMBER.match(text)
    if first is None:
        return None
    second = _FREE_DIGIT.search(text, first.end())
    if second is None:
        return None
    hint = _RANGE
    if _SPACED.match(text.strip()):
        hint = f"thousands are not set off: write {_SPACED.sub(_joined, text).strip()}"
    elif "±" in text or "+/-" in text:
        hint = "the tolerance belongs in plus_minus"
    return ReadingError("number-twice", hint=hint, offset=second.start())


def _joined(match: re.Match[str]) -> str:
    return match[0].replace(" ", "")


def _number_first(text: str) -> ReadingError | None:
    if _NUMBER.match(text):
        return None
    return ReadingError("number-malformed", offset=_start(text),
                        hint="the number comes first, then its unit: 12 V, -5 °C")


def _malformed(text: str) -> ReadingError | None:
    match = _NUMBER.match(text)
    if match is None or text[match.end():match.end() + 1] not in (".", "+", "-", "/", ","):
        return None
    return ReadingError("number-malformed", offset=match.end(),
                        hint="a number has digits, one point between them, and then its unit")


def _spaces(text: str) -> ReadingError | None:
    match = _SPACES.match(text)
    if match is None:
        return None
    return ReadingError("unit-spaces", offset=match.end(1),
                        hint=f"write {match[1].strip()} {text[match.end():].strip()}")


_TESTS: Final[tuple[Callable[[str], ReadingError | None], ...]] = (
    _range, _digits, _not_finite, _missing, _qualified, _common_fraction, _comma, _grouped,
    _bare_point, _number_first, _twice, _malformed, _spaces)


def number_slip(text: str) -> ReadingError | None:
    """The first thing wrong with the number in a cleaned text, or ``None`` if it is well formed."""
    for test in _TESTS:
        slip = test(text)
        if slip is not None:
            return slip
    return None
