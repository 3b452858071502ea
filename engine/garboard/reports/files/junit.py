"""Findings as JUnit XML, for programs that watch test results.

Failed is a failure. Not assessed is an error, with the reason, so that nothing shows green on
missing facts. Not applicable is skipped. Only what passed has nothing inside.
"""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement, indent, tostring

from garboard.reports.rows import FindingRow, finding_rows
from garboard.reports.scope import scope_of
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, Trail
from garboard.values.units import System


def junit_report(trail: Trail, us_units: bool = False) -> str:
    """One suite of one case for each finding; scope and cautions are its properties."""
    system: System = "us" if us_units else "metric"
    rows = list(finding_rows(trail, system))
    counts = {
        "tests": len(rows),
        "failures": sum(row.outcome == FAILED for row in rows),
        "errors": sum(row.outcome == NOT_ASSESSED for row in rows),
        "skipped": sum(row.outcome == NOT_APPLICABLE for row in rows)}
    numbers = {name: str(number) for name, number in counts.items()}
    root = Element("testsuites", numbers)
    suite = SubElement(root, "testsuite", {"name": "garboard", **numbers,
                                           "timestamp": f"{trail.date}T00:00:00"})
    properties = SubElement(suite, "properties")
    for label, text in scope_of(trail, system):
        SubElement(properties, "property", {"name": label, "value": text})
    for row in rows:
        _case(suite, row)
    indent(root)
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + tostring(root, "unicode") + "\n"


def _case(suite: Element, row: FindingRow) -> None:
    case = SubElement(suite, "testcase", {
        "classname": f"{row.pack}/{row.rule}", "name": f"{row.title}: {row.item}"})
    if row.outcome == FAILED:
        inside = SubElement(case, "failure", {"type": row.severity, "message": row.found})
        apart = f"set aside by dispensation {row.dispensation}" if row.dispensation else ""
        inside.text = "\n".join(filter(None, [row.work, apart, row.source]))
    elif row.outcome == NOT_ASSESSED:
        inside = SubElement(case, "error", {"type": row.severity,
                                            "message": f"not assessed: {row.because}"})
        inside.text = row.source
    elif row.outcome == NOT_APPLICABLE:
        SubElement(case, "skipped", {"message": f"not applicable: {row.because}"})
    if row.remark:
        SubElement(case, "system-out").text = row.remark
