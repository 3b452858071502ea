"""An expression as its author wrote it, and the same with values and units put in."""

from __future__ import annotations

import re
from collections.abc import Sequence

from garboard.reports.figures import shown_value
from garboard.reports.harmless import harmless
from garboard.trail import Operand
from garboard.values import Unknown
from garboard.values.units import System


def filled(expression: str, operands: Sequence[Operand], system: System) -> str:
    """The expression with every operand that was needed replaced by its value.

    An operand that was not needed stays as its author wrote it; one that is not known says so.
    """
    values = {each.text: _value(each, system) for each in operands}
    names = sorted(values, key=len, reverse=True)
    if not names:
        return harmless(expression)
    pattern = re.compile("|".join(rf"(?<![\w.\"'-]){re.escape(name)}(?![\w.(\"'])"
                                  for name in names))
    return harmless(pattern.sub(lambda found: values[found[0]], expression))


def _value(operand: Operand, system: System) -> str:
    value = operand.value
    if isinstance(value, Unknown):
        return "(not known)"
    shown = shown_value(operand, system)
    if operand.kind in ("text", "texts"):
        return f'"{shown}"'
    return f"[{shown}]" if " to " in shown else shown
