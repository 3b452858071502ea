"""Findings as EARL 1.0 (Evaluation and Report Language, W3C) in JSON-LD.

Failed is ``earl:failed``, passed ``earl:passed``, not assessed ``earl:cantTell``, not applicable
``earl:inapplicable``. The context stands in the file; nothing is fetched.
"""

from __future__ import annotations

import json
from typing import Any, Final
from urllib.parse import quote

from garboard.reports.harmless import harmless_name
from garboard.reports.rows import FindingRow, finding_rows
from garboard.reports.scope import scope_of
from garboard.trail import FAILED, NOT_APPLICABLE, NOT_ASSESSED, PASSED, Trail

OUTCOMES: Final = {PASSED: "earl:passed", FAILED: "earl:failed", NOT_ASSESSED: "earl:cantTell",
                   NOT_APPLICABLE: "earl:inapplicable"}
_CONTEXT: Final = {"earl": "http://www.w3.org/ns/earl#", "dct": "http://purl.org/dc/terms/",
                   "assertions": {"@reverse": "earl:assertedBy"}}


def earl_report(trail: Trail, us_units: bool = False) -> str:
    """The assertions of a trail in ASCII; scope and cautions describe the assertor."""
    system: Any = "us" if us_units else "metric"
    root = f"urn:{trail.digest}"
    graph = {
        "@context": _CONTEXT, "@id": f"{root}#garboard", "@type": ["earl:Assertor",
                                                                  "earl:Software"],
        "dct:title": f"garboard {harmless_name(trail.about['garboard'])}",
        "dct:description": [f"{label}: {text}" for label, text in scope_of(trail, system)],
        "assertions": [_assertion(root, trail.date, row) for row in finding_rows(trail, system)]}
    return json.dumps(graph, indent=1, ensure_ascii=True, allow_nan=False) + "\n"


def _assertion(root: str, day: str, row: FindingRow) -> dict[str, Any]:
    info = "; ".join(filter(None, [row.found, row.because, row.remark, row.dispensation
                                   and f"set aside by dispensation {row.dispensation}"]))
    return {
        "@id": f"{root}#{_part('finding', row.id)}", "@type": "earl:Assertion",
        "earl:mode": {"@id": "earl:automatic"},
        "earl:subject": {"@id": f"{root}#{_part('item', row.item)}",
                         "@type": "earl:TestSubject", "dct:title": row.item},
        "earl:test": {"@id": f"{root}#{_part('rule', f'{row.pack}/{row.rule}')}",
                      "@type": "earl:TestRequirement", "dct:title": row.title,
                      "dct:description": f"{row.severity}; {row.source}"},
        "earl:result": {"@type": "earl:TestResult", "dct:date": day,
                        "earl:outcome": {"@id": OUTCOMES[row.outcome]}, "earl:info": info}}


def _part(kind: str, name: str) -> str:
    return f"{kind}/{quote(name, safe='/')}"
