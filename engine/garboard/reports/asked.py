"""Figures that were asked for by name: each with its method, and its value for every item."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from garboard.reports.cautions import CAUTIONS
from garboard.reports.comparison.aboard import Known
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.sheet import Sheet
from garboard.reports.words import TO_DO, subjects_word
from garboard.trail import value_as_data
from garboard.values import WITHIN_UNCERTAINTY, Bounds, Cause, Unknown
from garboard.values.units import DIMENSIONS, System, format_value


@dataclass(frozen=True, slots=True)
class Asked:
    """A figure by its full name, how it is found, and its values by the ids of the items."""

    quantity: str
    method: str
    source: str
    status: str
    values: Mapping[str, Known]


def asked_text(asked: Sequence[Asked], width: int = 100, colour: bool = False,
               *, us_units: bool = False) -> str:
    """The figures as text of at most ``width`` cells a line (60 to 110), in colour or plain."""
    sheet = Sheet(width, colour)
    for each in asked:
        subject, _, name = each.quantity.partition(".")
        sheet.heading(f"{harmless_name(name).replace('_', ' ')} of {subjects_word(subject)}")
        sheet.paragraph(f"{harmless(each.method)} ({harmless(each.source)}; "
                        f"{harmless(each.status)})", style="faint")
        for item, known in each.values.items():
            sheet.bullet("•", f"{harmless_name(item)}: "
                              f"{_words(known, 'us' if us_units else 'metric')}")
        if not each.values:
            sheet.bullet("–", "none aboard, or none recorded")
    sheet.heading("BEAR IN MIND")
    for caution in CAUTIONS:
        sheet.bullet("!", caution)
    return str(sheet)


def asked_json(asked: Sequence[Asked]) -> str:
    """The figures as JSON in ASCII characters: values as a trail has them, with their unit."""
    return json.dumps([_data(each) for each in asked], indent=2, allow_nan=False)


def _data(asked: Asked) -> dict[str, Any]:
    dimension = next((each.dimension for each in asked.values.values()), None)
    return {"quantity": asked.quantity, "method": asked.method, "source": asked.source,
            "status": asked.status,
            "unit": None if dimension is None else DIMENSIONS[dimension].unit,
            "values": {item: value_as_data(known.value) for item, known in asked.values.items()}}


def _words(known: Known, system: System) -> str:
    value = known.value
    if isinstance(value, Unknown):
        return f"not known ({_causes(value.causes)})"
    text = harmless(format_value(value, known.dimension, system))
    if isinstance(value, Bounds):
        if value.nominal is not None:
            text += f" (nominal {format_value(value.nominal, known.dimension, system)})"
        open_causes = [each for each in value.causes if each.reason != WITHIN_UNCERTAINTY]
        if open_causes:
            text += f"; so wide because of {_causes(open_causes)}"
    return text


def _causes(causes: Iterable[Cause]) -> str:
    return "; ".join(dict.fromkeys(map(_cause, causes)))


def _cause(cause: Cause) -> str:
    what = TO_DO.get(cause.reason, harmless(cause.reason))
    return f"{harmless_name(cause.path)}: {what}" if cause.path else what
