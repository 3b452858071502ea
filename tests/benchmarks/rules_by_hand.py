"""The rules of the benchmark as a person would write them in Python, with the same values.

Loops over a subject are fused, fields are read once, rules under one condition share their ``if``.
"""
# ruff: noqa: E501, E701, E702 - one line per rule keeps it readable as a table

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from garboard.values import (
    OUTSIDE_METHOD,
    Unknown,
    finite,
    member_of,
    smallest,
    total,
)

P, F, U, X = "passed", "failed", "not assessed", "not applicable"
FUSES, LITHIUM = ("T", "MRBF"), ("LFP", "NMC")
VOLTAGE_MOST, VOLTAGE_LEAST, UNPROTECTED_MOST, LEAD_MOST = 60.0, 10.0, 0.1778, 1.8288
SHARE, DROP_CRITICAL, DROP_OTHER, COLDEST, HOTTEST = 1.0, 0.03, 0.10, 0.0, 45.0
INSULATION, AREA, ENERGY, AGE, WARNING, MARGIN = 85.0, 1.3, 20000.0, 10, 10.0, 0.4
RESERVE, SMALL, WITHSTAND = 1.25, 5.0, 0.9


def by_hand(things: Mapping[str, Sequence[Any]]) -> list[Any]:
    """All rows: rule, item, outcome, why not assessed, operands."""
    rows: list[Any] = []
    add = rows.append
    record, vessel = things["record"][0], things["vessel"][0]

    for d in things["device"]:
        i = d["id"]; kind = d["kind"]; path = d["on_path_of_a_battery"]; cls = d["class"]
        rating = d["rating"]; vr = d["voltage_rating"]; bc = d["breaking_capacity"]
        pc = d["prospective_current"]; tc = d["through_current"]; behind = d["ampacity_behind"]
        holder = d["holder_rating"]; bank = d["bank"]; place = d["place"]
        vh = bank["voltage_highest"]; be = bank["energy"]; risk = place["ignition_risk"]
        if path is True:
            t = bc >= pc; add((0, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (path, bc, pc)))
            t = cls in FUSES if cls.__class__ is str else member_of(cls, FUSES); add((3, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (path, cls, FUSES)))
            t = (cls == "T") | (pc < bc); add((8, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (path, cls, "T", pc, bc)))
            t = tc > rating; add((14, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (path, tc, rating)))
        elif path is False:
            add((0, i, X, None, (path,))); add((3, i, X, None, (path,))); add((8, i, X, None, (path,))); add((14, i, X, None, (path,)))
        else:
            add((0, i, U, path, (path,))); add((3, i, U, path, (path,))); add((8, i, U, path, (path,))); add((14, i, U, path, (path,)))
        t = vr >= vh; add((1, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (vr, vh)))
        s = behind * SHARE; t = rating <= s; add((2, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (rating, s)))
        small_holder = rating <= holder; t = small_holder; add((4, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (rating, holder)))
        breaker = kind == "breaker"
        if breaker is True:
            t = d["trip_free"]; add((5, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (kind, "breaker", t)))
            v = d["polarity_sensitive"]; t = v ^ True; add((6, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (kind, "breaker", v)))
        elif breaker is False:
            add((5, i, X, None, (kind, "breaker"))); add((6, i, X, None, (kind, "breaker")))
        else:
            add((5, i, U, breaker, (kind, "breaker"))); add((6, i, U, breaker, (kind, "breaker")))
        t = pc >= tc; add((7, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (pc, tc)))
        t = risk ^ True; add((9, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (risk,)))
        t = (vr >= VOLTAGE_LEAST) & (vr <= VOLTAGE_MOST); add((10, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (VOLTAGE_LEAST, vr, VOLTAGE_MOST)))
        s = rating * RESERVE; t = (s <= holder) | breaker; add((11, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (s, holder, kind, "breaker")))
        fuse = kind == "fuse"
        if fuse is True:
            t = (cls != "blade") | (rating <= SMALL); add((12, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (kind, "fuse", cls, "blade", rating, SMALL)))
        elif fuse is False:
            add((12, i, X, None, (kind, "fuse")))
        else:
            add((12, i, U, fuse, (kind, "fuse")))
        t = rating > SMALL; add((13, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (rating, SMALL)))
        t = (be <= ENERGY) & small_holder; add((15, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (be, ENERGY, rating, holder)))

    for c in things["conductor"]:
        i = c["id"]; current = c["current"]; ampacity = c["ampacity"]; drop = c["drop_share"]
        area = c["area"]; engine = c["in_engine_space"]; insulation = c["insulation"]
        length = c["length"]; sheathed = c["sheathed"]; bank = c["bank"]; vh = bank["voltage_highest"]
        t = current <= ampacity; add((16, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (current, ampacity)))
        t = drop <= DROP_OTHER; add((17, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (drop, DROP_OTHER)))
        t = area >= AREA; add((18, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (area, AREA)))
        warm = insulation >= INSULATION
        if engine is True:
            t = warm; add((19, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (engine, insulation, INSULATION)))
        elif engine is False:
            add((19, i, X, None, (engine,)))
        else:
            add((19, i, U, engine, (engine,)))
        t = c["tinned"]; add((20, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        v = c["joints"]; t = v == 0; add((21, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, 0)))
        t = (length <= LEAD_MOST) | sheathed; add((22, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (length, LEAD_MOST, sheathed)))
        t = False
        for d in c["protecting_devices"]:
            t = t | (d["rating"] <= ampacity)
        add((23, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        s = current * RESERVE; t = s <= ampacity; add((24, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (s, ampacity)))
        if sheathed is True:
            t = drop < DROP_CRITICAL; add((25, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (sheathed, drop, DROP_CRITICAL)))
        elif sheathed is False:
            add((25, i, X, None, (sheathed,)))
        else:
            add((25, i, U, sheathed, (sheathed,)))
        v = c["voltage_drop"]; s = vh * DROP_OTHER; t = v <= s; add((26, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, s)))
        t = warm | (engine ^ True); add((27, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (insulation, INSULATION, engine)))

    for b in things["battery"]:
        i = b["id"]; chem = b["chemistry"]; place = b["place"]; ms = b["managed_by"]; bank = b["bank"]
        restrained = b["restrained"]; top = b["charge.voltage_max"]; charge = b["charge.current_max"]
        nominal = b["nominal_voltage"]; capacity = b["capacity"]; energy = b["energy"]; own = b["own_device"]
        risk = place["ignition_risk"]
        v = b["unprotected_length"]; t = v <= UNPROTECTED_MOST; add((28, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, UNPROTECTED_MOST)))
        t = restrained; add((29, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        t = b["terminals_covered"]; add((30, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        lithium = chem in LITHIUM if chem.__class__ is str else member_of(chem, LITHIUM)
        if lithium is True:
            t = ms["fail_safe"]; add((31, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (chem, LITHIUM, t)))
            v = place["temperature.low"]; w = b["charge.temperature.low"]; t = v >= w; add((32, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (chem, LITHIUM, v, w)))
            v = ms["trip.voltage_high"]; s = top + MARGIN; t = v >= s; add((36, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (chem, LITHIUM, v, s)))
            t = (risk ^ True) & restrained; add((43, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (chem, LITHIUM, risk, restrained)))
        elif lithium is False:
            s = (chem, LITHIUM); add((31, i, X, None, s)); add((32, i, X, None, s)); add((36, i, X, None, s)); add((43, i, X, None, s))
        else:
            s = (chem, LITHIUM); add((31, i, U, lithium, s)); add((32, i, U, lithium, s)); add((36, i, U, lithium, s)); add((43, i, U, lithium, s))
        fault = b["fault_current"]
        if own is None:
            v = Unknown.because(OUTSIDE_METHOD, f"{i}.own_device", "there is none"); e = False
        else:
            v = own["breaking_capacity"]; e = True
        t = e & (v >= fault); add((33, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (e, v, fault)))
        v = place["temperature.high"]; t = v <= HOTTEST; add((34, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, HOTTEST)))
        t = top >= nominal; add((35, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (top, nominal)))
        s = capacity * nominal; v = energy * WITHSTAND; t = s >= v; add((37, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (s, v)))
        t = True
        for source in bank["sources"]:
            t = t & (source["voltage_absorption"] <= top)
        add((38, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        v = b["age"]; t = v <= AGE; add((39, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, AGE)))
        v = b["discharge.current_max"]; t = v >= charge; add((40, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, charge)))
        v = place["engine_space"]; t = v ^ True; add((41, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v,)))
        v = bank["energy"]; t = v <= ENERGY; add((42, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, ENERGY)))

    lithium_aboard = record["has_lithium"]
    for s in things["source"]:
        i = s["id"]; absorption = s["voltage_absorption"]; bank = s["bank"]; kind = s["kind"]
        tolerance = s["tolerance"]; vh = bank["voltage_highest"]; stopped_by = s["stopped_by"]
        t = s["can_be_stopped"]; add((44, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        v = s["voltage_float"]; t = v <= absorption; add((45, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, absorption)))
        t = absorption <= vh; add((46, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (absorption, vh)))
        v = s["current_max"]; w = bank["charge_current_limit"]; t = v <= w; add((47, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, w)))
        if lithium_aboard is True:
            v = s["equalises"]; t = v ^ True; add((48, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (lithium_aboard, v)))
        elif lithium_aboard is False:
            add((48, i, X, None, (lithium_aboard,)))
        else:
            add((48, i, U, lithium_aboard, (lithium_aboard,)))
        alternator = kind == "alternator"
        if alternator is True:
            t = s["self_limiting"]; add((49, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (kind, "alternator", t)))
        elif alternator is False:
            add((49, i, X, None, (kind, "alternator")))
        else:
            add((49, i, U, alternator, (kind, "alternator")))
        t = True
        for m in stopped_by:
            t = t & m["fail_safe"]
        add((50, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        t = tolerance <= DROP_CRITICAL; add((51, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (tolerance, DROP_CRITICAL)))
        v = absorption * (1 + tolerance); t = v <= vh; add((52, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, vh)))
        v = len(stopped_by); t = v >= 1; add((53, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, 1)))

    for ld in things["load"]:
        i = ld["id"]; critical = ld["critical"]; drop = ld["drop_share"]; low = ld["voltage_low"]
        high = ld["voltage_high"]; current = ld["current"]; vh = ld["bank"]["voltage_highest"]
        if critical is True:
            t = drop <= DROP_CRITICAL; add((54, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (critical, drop, DROP_CRITICAL)))
            t = ld["second_supply"]; add((57, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (critical, t)))
        elif critical is False:
            add((54, i, X, None, (critical,))); add((57, i, X, None, (critical,)))
        else:
            add((54, i, U, critical, (critical,))); add((57, i, U, critical, (critical,)))
        t = drop <= DROP_OTHER; add((55, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (drop, DROP_OTHER)))
        t = (low <= vh) & (vh <= high)
        if t.__class__ is not bool: t = t & (low <= high)
        add((56, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (low, vh, high)))
        v = ld["power"]; s = current * high; t = v <= s; add((58, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, s)))
        t = (current > SMALL) | critical; add((59, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (current, SMALL, critical)))
        t = low >= VOLTAGE_LEAST; add((60, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (low, VOLTAGE_LEAST)))
        t = high <= VOLTAGE_MOST; add((61, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (high, VOLTAGE_MOST)))

    fuel = vessel["fuel"]
    petrol = fuel == "petrol"
    for s in things["switch"]:
        i = s["id"]; make = s["make"]; continuous = s["continuous"]; poles = s["poles"]
        t = s["within_reach"]; add((62, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        t = make >= continuous; add((63, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (make, continuous)))
        v = s["withstand"]; t = v >= make; add((64, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, make)))
        t = poles in (1, 2) if poles.__class__ is int else member_of(poles, (1, 2)); add((65, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (poles, (1, 2))))
        v = s["bank"]["charging_current_sum"]; t = continuous >= v; add((66, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (continuous, v)))
        if petrol is True:
            t = poles == 2; add((67, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (fuel, "petrol", poles, 2)))
        elif petrol is False:
            add((67, i, X, None, (fuel, "petrol")))
        else:
            add((67, i, U, petrol, (fuel, "petrol")))

    for p in things["place"]:
        i = p["id"]; low = p["temperature.low"]; risk = p["ignition_risk"]; engine = p["engine_space"]
        v = p["temperature.high"]; t = low <= v; add((68, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (low, v)))
        t = (risk ^ True) | (engine ^ True); add((69, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (risk, engine)))
        t = True
        for b in p["batteries"]:
            t = t & b["terminals_covered"]
        add((70, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        t = low >= COLDEST; add((71, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (low, COLDEST)))

    for m in things["management_system"]:
        i = m["id"]; trip = m["trip.voltage_high"]
        v = m["warns_before"]; t = v >= WARNING; add((72, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, WARNING)))
        t = m["alarm_heard"]; add((73, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        t = m["fail_safe"]; add((74, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
        v = smallest([b["charge.voltage_max"] for b in m["batteries"]]); t = v <= trip; add((75, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (v, trip)))
        t = trip <= VOLTAGE_MOST; add((76, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (trip, VOLTAGE_MOST)))

    i = record["id"]
    t = True
    for k in record["banks"]:
        t = t & (k["charging_current_sum"] <= k["charge_current_limit"])
    add((77, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (t,)))
    if lithium_aboard is True:
        v = finite(total([b["energy"] for b in record["batteries"]])); t = v <= ENERGY; add((78, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (lithium_aboard, v, ENERGY)))
    elif lithium_aboard is False:
        add((78, i, X, None, (lithium_aboard,)))
    else:
        add((78, i, U, lithium_aboard, (lithium_aboard,)))
    t = (fuel != "petrol") | (lithium_aboard ^ True); add((79, i, P if t is True else F if t is False else U, None if t.__class__ is bool else t, (fuel, "petrol", lithium_aboard)))
    return rows
