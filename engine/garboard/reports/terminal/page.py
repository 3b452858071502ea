"""What every part of the terminal report is given."""

from __future__ import annotations

from typing import NamedTuple

from garboard.reports.groups import OfRule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.names import Names
from garboard.reports.sheet import Sheet
from garboard.reports.words import SIGNS
from garboard.trail import Trail
from garboard.values.units import System


class Page(NamedTuple):
    """The trail to show, the sheet to write on, the names of things, the system of units."""

    trail: Trail
    sheet: Sheet
    names: Names
    system: System

    def title_of(self, group: OfRule) -> str:
        """The title of a rule; of several packs the pack is named too."""
        title = harmless(group.rule["title"])
        several = len(self.trail.packs) > 1
        return f"{title} [{harmless_name(group.pack['pack'])}]" if several else title


#: A mark beside every word for an outcome, so that neither stands for it alone.
MARKS = SIGNS
STYLES = {"failed": "failed", "not assessed": "open", "passed": "passed", "not applicable": "faint"}
