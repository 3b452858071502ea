"""A small vocabulary and the shortest way to a program, for the tests of expressions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

import pytest

from garboard.expressions import (
    GUARDED,
    Checked,
    Decision,
    ExpressionRefused,
    NameInfo,
    Program,
    Row,
    RuleSource,
    Vocabulary,
    compile_rules,
    parse,
    read_expression,
)


def number(dimension: str) -> NameInfo:
    return NameInfo("number", dimension)


TRUTH: Final = NameInfo("truth")
COUNT: Final = NameInfo("count")
TEXT: Final = NameInfo("text")
DATE: Final = NameInfo("date")

VOCABULARY: Final = Vocabulary({
    "battery": {
        "id": TEXT, "chemistry": NameInfo("text", choices=("LFP", "NMC", "AGM")), "label": TEXT,
        "kind": NameInfo("text", choices=("house", "starter")), "fitted": DATE, "age": COUNT,
        "cells": COUNT, "heated": TRUTH, "covered": TRUTH, "state": number("ratio"),
        "capacity": number("charge"), "energy": number("energy"), "charge.voltage_max":
        number("voltage"), "charge.current_max": number("current"), "charge.temperature.low":
        number("temperature"), "voltage": number("voltage"), "internal_resistance.method": TEXT,
        "resistance": number("resistance"), "resistance.origin": TEXT, "curve": NameInfo("opaque"),
        "bank": NameInfo("one", target="bank"), "place": NameInfo("one", target="place"),
        "own_device": NameInfo("one", target="device")},
    "bank": {"id": TEXT, "energy": number("energy"), "batteries": NameInfo("many",
                                                                           target="battery"),
             "sources": NameInfo("many", target="source")},
    "source": {"id": TEXT, "current_max": number("current"), "running": TRUTH,
               "bank": NameInfo("one", target="bank"), "power": number("power")},
    "device": {"id": TEXT, "rating": number("current"), "let_through": number("let_through"),
               "class": TEXT, "place": NameInfo("one", target="place"), "breaks":
               NameInfo("many", target="device.breaks")},
    "device.breaks": {"current": number("current"), "voltage": number("voltage")},
    "place": {"id": TEXT, "temperature.high": number("temperature"), "area": number("area"),
              "length": number("length"), "tilt": number("angle"), "batteries":
              NameInfo("many", target="battery")},
    "record": {"id": TEXT, "has_lithium": TRUTH, "batteries": NameInfo("many", target="battery"),
               "banks": NameInfo("many", target="bank"), "share": number("ratio")},
    "vessel": {"id": TEXT, "fuel": NameInfo("text", choices=("diesel", "petrol")),
               "length": number("length")},
}, {"battery": "batteries", "source": "charging_sources"})

LIMITS: Final[Mapping[str, tuple[NameInfo, Any]]] = {
    "highest": (number("voltage"), 14.6), "least_current": (number("current"), 50.0),
    "hottest": (number("temperature"), 45.0), "warmer": (number("temperature_difference"), 5.0),
    "some_time": (number("time"), 10.0), "short": (number("length"), 0.1778),
    "share": (number("ratio"), 0.8), "few": (COUNT, 3), "much_power": (number("power"), 500.0),
    "lithium": (NameInfo("texts", choices=("LFP", "NMC")), ("LFP", "NMC")),
    "fuses": (NameInfo("texts", choices=("T", "MRBF")), ("T", "MRBF")),
    "twist": (number("torque"), 9.0), "pull": (number("force"), 40.0),
}
ANSWERS: Final = {"vent-clear": TRUTH, "checked-on": DATE, "2nd-look": COUNT}
INFOS: Final = {name: info for name, (info, _) in LIMITS.items()}
AMOUNTS: Final = {name: value for name, (_, value) in LIMITS.items()}


def read(text: str, about: str = "battery", **more: Any) -> Checked:
    """A checked expression."""
    return read_expression(text, VOCABULARY, about, INFOS, ANSWERS, **more)


def rule(must_hold: str, applies_when: str | None = None, about: str = "battery") -> RuleSource:
    """A rule, named by its text."""
    return RuleSource(must_hold, read(must_hold, about),
                      None if applies_when is None else read(applies_when, about), AMOUNTS)


def program(*rules: str | tuple[str, str], about: str = "battery") -> Program:
    """A program of requirements, or of pairs of condition and requirement."""
    return compile_rules([rule(each, about=about) if isinstance(each, str)
                          else rule(each[1], each[0], about) for each in rules])


def outcome(must_hold: str, item: Mapping[str, Any], applies_when: str | None = None,
            about: str = "battery", decision: Decision = GUARDED,
            subjects: Mapping[str, Sequence[Mapping[str, Any]]] | None = None) -> Row:
    """The row of one rule for one item, found by the generated code."""
    compiled = compile_rules([rule(must_hold, applies_when, about)])
    (row,) = compiled.run({**(subjects or {}), about: [{"id": "it", **item}]}, decision)
    return row


def refusals(text: str, about: str | None = None) -> list[tuple[str, int, int]]:
    """Code, offset and length of everything wrong with a text; parsed only without a subject."""
    with pytest.raises(ExpressionRefused) as caught:
        parse(text) if about is None else read(text, about)
    return [(each.code, each.offset, each.length) for each in caught.value.problems]
