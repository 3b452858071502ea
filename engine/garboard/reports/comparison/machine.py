"""A comparison for other programs: everything that moved, as JSON."""

from __future__ import annotations

import json
from typing import Any, Final

from garboard.reports.cautions import CAUTIONS
from garboard.reports.comparison.aboard import Known
from garboard.reports.comparison.circuits import CircuitView, Looked
from garboard.reports.comparison.comparing import Comparison
from garboard.reports.comparison.figures import Step
from garboard.reports.comparison.outcomes import Moved
from garboard.trail import Trail, value_as_data
from garboard.values import Unknown
from garboard.values.units import DIMENSIONS

FORMAT: Final = "comparison/1"


def comparison_json(compared: Comparison) -> str:
    """The comparison as JSON in ASCII; values are in canonical units, as in a trail."""
    shown: dict[str, Any] = {} if not compared.shown else {
        "counts": compared.counts(),
        "findings": [_moved(each) for each in compared.findings],
        "figures": [_step(each) for each in compared.figures],
        "load_circuits": [_circuit(each) for each in compared.circuits]}
    return json.dumps({
        "format": FORMAT, "before": _side(compared.before), "after": _side(compared.after),
        "comparable": not compared.incomparable, "incomparable": list(compared.incomparable),
        "remarks": list(compared.remarks), **shown, "cautions": list(CAUTIONS)}, indent=1)


def _side(trail: Trail) -> dict[str, Any]:
    name = trail.fact("vessel.name")
    return {"trail": trail.digest, "vessel": name["value"] if name is not None else None,
            "date": trail.date, "word": trail.word,
            "packs": [{key: pack[key] for key in ("pack", "version", "digest", "decision_rule",
                                                  "applies")} for pack in trail.packs]}


def _moved(each: Moved) -> dict[str, Any]:
    before, after = each.outcomes
    return {"id": each.id, "became": each.word, "severity": each.severity, "before": before,
            "after": after}


def _step(each: Step) -> dict[str, Any]:
    unit = None if each.before.dimension is None else DIMENSIONS[each.before.dimension].unit
    return {"item": each.item, "quantity": each.quantity, "unit": unit,
            "before": _value(each.before), "after": _value(each.after), "times": each.share,
            "times_of": None if each.share is None else each.ends or "nominal figures"}


def _circuit(each: CircuitView) -> dict[str, Any]:
    return {
        "run": each.run, "load": each.load, "conductors_are": each.state,
        "load_changed": [_changed(*fact) for fact in each.load_facts],
        "conductors": [{
            "id": one.id, "is": one.state,
            "changed": [_changed(*fact) for fact in one.facts],
            "not_recorded": list(one.not_recorded),
            "ampacity": [_value(known) for known in one.ampacity]} for one in each.conductors],
        "looked_at_again": [_looked(one) for one in each.looked]}


def _looked(each: Looked) -> dict[str, Any]:
    left, right = each.figures
    return {"topic": each.check.topic, "item": each.item, "figure": each.check.figure,
            "relation": each.check.relation or None, "against": each.check.against,
            "before": _truth(each.before), "after": _truth(each.after),
            "figures": {"before": [_value(left[0]), _value(right[0])],
                        "after": [_value(left[1]), _value(right[1])]}}


def _changed(name: str, before: Any, after: Any) -> dict[str, Any]:
    return {"fact": name, "before": _fact(before), "after": _fact(after)}


def _truth(truth: object) -> Any:
    return value_as_data(truth) if isinstance(truth, Unknown) else truth


def _fact(fact: Any) -> Any:
    return None if fact is None else fact["value"]


def _value(known: Known | None) -> Any:
    return None if known is None else value_as_data(known.value)
