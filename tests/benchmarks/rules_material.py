"""The vocabulary, limits, rules and record that the rules benchmark measures on."""

from __future__ import annotations

import random
from typing import Any, Final

from garboard.expressions import NameInfo, Vocabulary
from garboard.values import NOT_RECORDED, Unknown


def _number(dimension: str) -> NameInfo:
    return NameInfo("number", dimension)


_TRUTH: Final = NameInfo("truth")


def _text(*choices: str) -> NameInfo:
    return NameInfo("text", choices=choices or None)


def _one(target: str) -> NameInfo:
    return NameInfo("one", target=target)


def _many(target: str) -> NameInfo:
    return NameInfo("many", target=target)


VOCABULARY: Final = Vocabulary({
    "battery": {
        "id": _text(), "chemistry": _text("LFP", "NMC", "AGM", "gel"), "age": NameInfo("count"),
        "nominal_voltage": _number("voltage"), "capacity": _number("charge"),
        "energy": _number("energy"), "charge.voltage_max": _number("voltage"),
        "charge.current_max": _number("current"), "charge.temperature.low": _number("temperature"),
        "discharge.current_max": _number("current"), "fault_current": _number("current"),
        "unprotected_length": _number("length"), "restrained": _TRUTH, "terminals_covered": _TRUTH,
        "place": _one("place"), "bank": _one("bank"), "own_device": _one("device"),
        "managed_by": _one("management_system")},
    "bank": {
        "id": _text(), "energy": _number("energy"), "voltage_highest": _number("voltage"),
        "charging_current_sum": _number("current"), "charge_current_limit": _number("current"),
        "batteries": _many("battery"), "sources": _many("source")},
    "device": {
        "id": _text(), "kind": _text("fuse", "breaker"), "class": _text("T", "ANL", "MRBF",
                                                                        "blade"),
        "rating": _number("current"), "voltage_rating": _number("voltage"),
        "breaking_capacity": _number("current"), "prospective_current": _number("current"),
        "through_current": _number("current"), "resistance": _number("resistance"),
        "ampacity_behind": _number("current"), "holder_rating": _number("current"),
        "on_path_of_a_battery": _TRUTH, "polarity_sensitive": _TRUTH, "trip_free": _TRUTH,
        "bank": _one("bank"), "place": _one("place")},
    "conductor": {
        "id": _text(), "area": _number("area"), "length": _number("length"),
        "ampacity": _number("current"), "current": _number("current"),
        "voltage_drop": _number("voltage"), "drop_share": _number("ratio"),
        "insulation": _number("temperature"), "tinned": _TRUTH, "sheathed": _TRUTH,
        "in_engine_space": _TRUTH, "joints": NameInfo("count"),
        "protecting_devices": _many("device"), "bank": _one("bank")},
    "source": {
        "id": _text(), "kind": _text("alternator", "charger", "solar", "wind"),
        "voltage_absorption": _number("voltage"), "voltage_float": _number("voltage"),
        "current_max": _number("current"), "tolerance": _number("ratio"),
        "equalises": _TRUTH, "self_limiting": _TRUTH, "can_be_stopped": _TRUTH,
        "bank": _one("bank"), "stopped_by": _many("management_system")},
    "load": {
        "id": _text(), "power": _number("power"), "current": _number("current"),
        "voltage_low": _number("voltage"), "voltage_high": _number("voltage"), "critical": _TRUTH,
        "drop_share": _number("ratio"), "second_supply": _TRUTH, "bank": _one("bank")},
    "switch": {
        "id": _text(), "continuous": _number("current"), "make": _number("current"),
        "withstand": _number("current"), "poles": NameInfo("count"), "within_reach": _TRUTH,
        "bank": _one("bank")},
    "place": {
        "id": _text(), "temperature.low": _number("temperature"),
        "temperature.high": _number("temperature"), "engine_space": _TRUTH, "ignition_risk": _TRUTH,
        "batteries": _many("battery")},
    "management_system": {
        "id": _text(), "warns_before": _number("time"), "trip.voltage_high": _number("voltage"),
        "alarm_heard": _TRUTH, "fail_safe": _TRUTH, "batteries": _many("battery")},
    "record": {"id": _text(), "has_lithium": _TRUTH, "banks": _many("bank"),
               "batteries": _many("battery")},
    "vessel": {"id": _text(), "fuel": _text("diesel", "petrol", "electric"),
               "length": _number("length")},
}, {"battery": "batteries", "place": "places", "source": "charging_sources", "load": "loads"})

LIMITS: Final[dict[str, tuple[NameInfo, Any]]] = {
    "voltage_most": (_number("voltage"), 60.0), "voltage_least": (_number("voltage"), 10.0),
    "unprotected_most": (_number("length"), 0.1778), "lead_most": (_number("length"), 1.8288),
    "conductor_share": (_number("ratio"), 1.0), "drop_critical": (_number("ratio"), 0.03),
    "drop_other": (_number("ratio"), 0.10), "charge_lowest": (_number("temperature"), 0.0),
    "hottest": (_number("temperature"), 45.0), "insulation_least": (_number("temperature"), 85.0),
    "area_least": (_number("area"), 1.3), "energy_most": (_number("energy"), 20000.0),
    "age_most": (NameInfo("count"), 10), "warning_least": (_number("time"), 10.0),
    "margin": (_number("voltage"), 0.4), "reserve": (_number("ratio"), 1.25),
    "battery_fuses": (NameInfo("texts", choices=("T", "MRBF")), ("T", "MRBF")),
    "lithium": (NameInfo("texts", choices=("LFP", "NMC")), ("LFP", "NMC")),
    "small_current": (_number("current"), 5.0), "withstand_time": (_number("ratio"), 0.9),
}

#: about, applies when, must hold
RULES: Final[tuple[tuple[str, str | None, str], ...]] = (
    # devices
    ("device", "device.on_path_of_a_battery",
     "device.breaking_capacity >= device.prospective_current"),
    ("device", None, "device.voltage_rating >= device.bank.voltage_highest"),
    ("device", None, "device.rating <= device.ampacity_behind * conductor_share"),
    ("device", "device.on_path_of_a_battery", "device.class in battery_fuses"),
    ("device", None, "device.rating <= device.holder_rating"),
    ("device", "device.kind == \"breaker\"", "device.trip_free"),
    ("device", "device.kind == \"breaker\"", "not device.polarity_sensitive"),
    ("device", None, "device.prospective_current >= device.through_current"),
    ("device", "device.on_path_of_a_battery",
     "device.class == \"T\" or device.prospective_current < device.breaking_capacity"),
    ("device", None, "not device.place.ignition_risk"),
    ("device", None, "voltage_least <= device.voltage_rating <= voltage_most"),
    ("device", None,
     "device.rating * reserve <= device.holder_rating or device.kind == \"breaker\""),
    ("device", "device.kind == \"fuse\"",
     "device.class != \"blade\" or device.rating <= small_current"),
    ("device", None, "device.rating > small_current"),
    ("device", "device.on_path_of_a_battery", "device.through_current > device.rating"),
    ("device", None, "device.bank.energy <= energy_most and device.rating <= device.holder_rating"),
    # conductors
    ("conductor", None, "conductor.current <= conductor.ampacity"),
    ("conductor", None, "conductor.drop_share <= drop_other"),
    ("conductor", None, "conductor.area >= area_least"),
    ("conductor", "conductor.in_engine_space", "conductor.insulation >= insulation_least"),
    ("conductor", None, "conductor.tinned"),
    ("conductor", None, "conductor.joints == 0"),
    ("conductor", None, "conductor.length <= lead_most or conductor.sheathed"),
    ("conductor", None,
     "any(d.rating <= conductor.ampacity for d in conductor.protecting_devices)"),
    ("conductor", None, "conductor.current * reserve <= conductor.ampacity"),
    ("conductor", "conductor.sheathed", "conductor.drop_share < drop_critical"),
    ("conductor", None, "conductor.voltage_drop <= conductor.bank.voltage_highest * drop_other"),
    ("conductor", None,
     "conductor.insulation >= insulation_least or not conductor.in_engine_space"),
    # batteries
    ("battery", None, "battery.unprotected_length <= unprotected_most"),
    ("battery", None, "battery.restrained"),
    ("battery", None, "battery.terminals_covered"),
    ("battery", "battery.chemistry in lithium", "battery.managed_by.fail_safe"),
    ("battery", "battery.chemistry in lithium",
     "battery.place.temperature.low >= battery.charge.temperature.low"),
    ("battery", None,
     "exists(battery.own_device) and "
     "battery.own_device.breaking_capacity >= battery.fault_current"),
    ("battery", None, "battery.place.temperature.high <= hottest"),
    ("battery", None, "battery.charge.voltage_max >= battery.nominal_voltage"),
    ("battery", "battery.chemistry in lithium",
     "battery.managed_by.trip.voltage_high >= battery.charge.voltage_max + margin"),
    ("battery", None,
     "battery.capacity * battery.nominal_voltage >= battery.energy * withstand_time"),
    ("battery", None,
     "all(s.voltage_absorption <= battery.charge.voltage_max for s in battery.bank.sources)"),
    ("battery", None, "battery.age <= age_most"),
    ("battery", None, "battery.discharge.current_max >= battery.charge.current_max"),
    ("battery", None, "not battery.place.engine_space"),
    ("battery", None, "battery.bank.energy <= energy_most"),
    ("battery", "battery.chemistry in lithium",
     "not battery.place.ignition_risk and battery.restrained"),
    # charging sources
    ("source", None, "source.can_be_stopped"),
    ("source", None, "source.voltage_float <= source.voltage_absorption"),
    ("source", None, "source.voltage_absorption <= source.bank.voltage_highest"),
    ("source", None, "source.current_max <= source.bank.charge_current_limit"),
    ("source", "record.has_lithium", "not source.equalises"),
    ("source", "source.kind == \"alternator\"", "source.self_limiting"),
    ("source", None, "all(m.fail_safe for m in source.stopped_by)"),
    ("source", None, "source.tolerance <= drop_critical"),
    ("source", None,
     "source.voltage_absorption * (1 + source.tolerance) <= source.bank.voltage_highest"),
    ("source", None, "count(source.stopped_by) >= 1"),
    # loads
    ("load", "load.critical", "load.drop_share <= drop_critical"),
    ("load", None, "load.drop_share <= drop_other"),
    ("load", None, "load.voltage_low <= load.bank.voltage_highest <= load.voltage_high"),
    ("load", "load.critical", "load.second_supply"),
    ("load", None, "load.power <= load.current * load.voltage_high"),
    ("load", None, "load.current > small_current or load.critical"),
    ("load", None, "load.voltage_low >= voltage_least"),
    ("load", None, "load.voltage_high <= voltage_most"),
    # switches
    ("switch", None, "switch.within_reach"),
    ("switch", None, "switch.make >= switch.continuous"),
    ("switch", None, "switch.withstand >= switch.make"),
    ("switch", None, "switch.poles in (1, 2)"),
    ("switch", None, "switch.continuous >= switch.bank.charging_current_sum"),
    ("switch", "vessel.fuel == \"petrol\"", "switch.poles == 2"),
    # places
    ("place", None, "place.temperature.low <= place.temperature.high"),
    ("place", None, "not place.ignition_risk or not place.engine_space"),
    ("place", None, "all(b.terminals_covered for b in place.batteries)"),
    ("place", None, "place.temperature.low >= charge_lowest"),
    # management systems
    ("management_system", None, "management_system.warns_before >= warning_least"),
    ("management_system", None, "management_system.alarm_heard"),
    ("management_system", None, "management_system.fail_safe"),
    ("management_system", None,
     "min(b.charge.voltage_max for b in management_system.batteries) <= "
     "management_system.trip.voltage_high"),
    ("management_system", None, "management_system.trip.voltage_high <= voltage_most"),
    # the whole record
    ("record", None, "all(b.charging_current_sum <= b.charge_current_limit for b in record.banks)"),
    ("record", "record.has_lithium", "sum(b.energy for b in record.batteries) <= energy_most"),
    ("record", None, "vessel.fuel != \"petrol\" or not record.has_lithium"),
)


class Thing(dict[str, Any]):
    """A thing that could compute what it does not hold, as the real ones do."""

    def __missing__(self, name: str) -> object:
        raise KeyError(name)


_COUNTS: Final = {"battery": 8, "bank": 2, "device": 12, "conductor": 20, "source": 4, "load": 8,
                  "switch": 4, "place": 3, "management_system": 2, "record": 1, "vessel": 1}
_SIZES: Final = {"voltage": 25.6, "current": 200.0, "charge": 200.0, "energy": 5120.0,
                 "length": 0.5,
                 "area": 50.0, "resistance": 0.0002, "ratio": 0.02, "temperature": 30.0,
                 "power": 900.0, "time": 20.0}


def record(draws: random.Random, missing: float) -> dict[str, tuple[Thing, ...]]:
    """Things of every subject with plausible values, a share of them not recorded."""
    things = {subject: tuple(Thing(id=f"{subject.replace('_', '-')}-{place}")
                             for place in range(count)) for subject, count in _COUNTS.items()}
    for subject, items in things.items():
        for item in items:
            for name, info in VOCABULARY.subjects[subject].items():
                if name != "id":
                    item[name] = _value(draws, missing, things, item, name, info)
    return things


def _value(draws: random.Random, missing: float, things: dict[str, tuple[Thing, ...]], item: Thing,
           name: str, info: NameInfo) -> object:
    if info.kind == "one":
        return draws.choice(things[info.target or ""])
    if info.kind == "many":
        return tuple(draws.sample(things[info.target or ""], 2))
    if draws.random() < missing:
        return Unknown.because(NOT_RECORDED, f"{item['id']}.{name}")
    if info.kind == "truth":
        return draws.random() < 0.8
    if info.kind == "count":
        return draws.randrange(4)
    if info.kind == "text":
        return draws.choice(info.choices or ("x",))
    return round(_SIZES[info.dimension or ""] * draws.uniform(0.8, 1.2), 4)
