"""The working of a finding: what was asked, with which figures and facts, and what would do."""

from garboard.reports.working.machine import working_json
from garboard.reports.working.remedy import Remedy, Tried
from garboard.reports.working.text import working_text

__all__ = ["Remedy", "Tried", "working_json", "working_text"]
