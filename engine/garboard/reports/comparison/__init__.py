"""Two assessments of one vessel held side by side: before and after."""

from garboard.reports.comparison.aboard import Aboard, Circuit, Known
from garboard.reports.comparison.comparing import Comparison, comparison
from garboard.reports.comparison.machine import comparison_json
from garboard.reports.comparison.text import comparison_text

__all__ = [
    "Aboard", "Circuit", "Comparison", "Known", "comparison", "comparison_json", "comparison_text",
]
