"""A small vocabulary, so that these tests do not hang on what is recorded aboard."""

from __future__ import annotations

from garboard.expressions import NameInfo, Vocabulary

VOLTAGE = NameInfo("number", "voltage")
CURRENT = NameInfo("number", "current")
TRUTH = NameInfo("truth")

VOCABULARY = Vocabulary({
    "record": {"has_lithium": TRUTH, "devices": NameInfo("many", target="device"),
               "energy": NameInfo("number", "energy")},
    "device": {"rating": CURRENT, "voltage_rating": VOLTAGE, "on_path": TRUTH,
               "class": NameInfo("text"), "poles": NameInfo("count"),
               "run": NameInfo("one", target="run")},
    "run": {"length": NameInfo("number", "length"), "devices": NameInfo("many", target="device")},
    "battery": {"is_lithium": TRUTH, "own_device": NameInfo("one", target="device")},
})
