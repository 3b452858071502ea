"""The report as an HTML page: one file, no request to anywhere, readable without scripts."""

from garboard.reports.html.page import html_report

__all__ = ["html_report"]
