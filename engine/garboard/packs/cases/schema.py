"""The JSON Schema of a file of cases."""

from __future__ import annotations

from typing import Any, Final

from garboard.expressions import OUTCOMES
from garboard.packs.cases.case import KINDS, WARNINGS
from garboard.packs.dispensations.file import DAY_PATTERN, WrittenDispensation
from garboard.packs.model import ID_PATTERN
from garboard.packs.schema import tidied
from garboard.trail import ACCEPTANCE_WORDS

FORMAT: Final = "case/1"
_TEXT: Final = {"type": "string", "minLength": 1}
_ID: Final = {"type": "string", "pattern": ID_PATTERN}


def case_schema() -> dict[str, Any]:
    """Schema of format ``case/1``."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": "urn:garboard:case:1",
        "title": "Cases of a rule pack, version 1",
        "description": "Small records, each with the findings that the rules of the pack must "
                       "give. The file stands in the folder 'cases' of the pack.",
        "type": "object", "required": ["format", "cases"], "additionalProperties": False,
        "properties": {
            "format": {"const": FORMAT, "description": "The format and its major version."},
            "cases": {"type": "array", "minItems": 1, "items": {"$ref": "#/$defs/case"},
                      "description": "The cases."},
            "not_possible": {
                "type": "object", "propertyNames": {"pattern": ID_PATTERN},
                "additionalProperties": {"$ref": "#/$defs/not-possible"},
                "description": "By rule: what no case of it can show, and why."},
            "explained": {
                "type": "object", "propertyNames": {"pattern": ID_PATTERN},
                "additionalProperties": {"$ref": "#/$defs/explained"},
                "description": "By rule: warnings of the proofreader that are meant, and why."},
        },
        "$defs": {"case": _case(), "finding": _finding(), "not-possible": _not_possible(),
                  "explained": _explained(),
                  "dispensation": tidied(WrittenDispensation.model_json_schema())},
    }


def _case() -> dict[str, Any]:
    return {
        "description": "A record and what the rules must find in it.",
        "type": "object", "required": ["case", "rules"], "additionalProperties": False,
        "oneOf": [{"required": ["record"]}, {"required": ["base"]}],
        "properties": {
            "case": {**_ID, "description": "Name of the case, unique in the pack: lower-case "
                                           "letters, digits and hyphens."},
            "what": {**_TEXT, "description": "What a surveyor sees aboard, in one line."},
            "rules": {"type": "array", "minItems": 1, "uniqueItems": True, "items": _ID,
                      "description": "The rules the case is about."},
            "record": {"type": "object", "description": "A record, written out here."},
            "base": {**_TEXT, "description": "File of the record the case starts from, as seen "
                                             "from the folder 'cases', such as base/launch.yaml."},
            "set": {"type": "object", "minProperties": 1, "description":
                    "What is different, by data path: 'f1.rating: 200 A'. What was there is "
                    "replaced as a whole."},
            "add": {"type": "object", "minProperties": 1,
                    "additionalProperties": {"type": "array", "minItems": 1},
                    "description": "What is put at the end of a list, by data path: "
                                   "'loads: [{id: pump}]'."},
            "remove": {"type": "array", "minItems": 1, "items": _TEXT, "description":
                       "Data paths that are left out, such as f1.breaks, or the id of a thing."},
            "on": {"type": "string", "pattern": DAY_PATTERN, "description":
                   "Day the case is assessed for, year-month-day; left out, that of the survey."},
            "dispensations": {
                "type": "array", "minItems": 1, "items": {"$ref": "#/$defs/dispensation"},
                "description": "Agreed exceptions the case is assessed with, as in a file of "
                               "dispensations."},
            "expect": {"type": "array", "items": {"$ref": "#/$defs/finding"},
                       "description": "The findings that must come out."},
            "quantities": {
                "type": "object", "minProperties": 1, "additionalProperties": _TEXT,
                "description": "Figures that must come out, each with its tolerance: "
                               "'f0.prospective_current: 28.67 kA within 0.1 %'."},
            "accepted": {"enum": list(ACCEPTANCE_WORDS), "description":
                         "What the acceptance of the pack must make of the whole record."},
            "nothing_else": {"enum": ["yes", "no", True, False], "description":
                             "Whether the expected findings are all that the rules of the case "
                             "may find."},
        },
    }


def _finding() -> dict[str, Any]:
    return {
        "description": "One finding.",
        "type": "object", "required": ["item", "outcome"], "additionalProperties": False,
        "properties": {
            "rule": {**_ID, "description": "The rule; left out where the case is about one only."},
            "item": {**_TEXT, "description": "The id of the thing the finding is about; '*' where "
                                             "the list is not recorded or empty."},
            "outcome": {"enum": list(OUTCOMES), "description": "What comes out."},
            "dispensed": {"enum": ["yes", "no", True, False], "description":
                          "Whether a dispensation is in force for it."},
            "reason": {**_TEXT, "description": "Why it is not assessed or not applicable, such as "
                                               "'not recorded' or 'condition false'."},
        },
    }


def _explained() -> dict[str, Any]:
    return {"description": "Why a warning of the proofreader is meant.",
            "type": "object", "minProperties": 1, "additionalProperties": False,
            "properties": {code: {**_TEXT, "description": f"Why it is meant: {code}."}
                           for code in WARNINGS}}


def _not_possible() -> dict[str, Any]:
    return {"description": "Why a kind of outcome cannot occur.",
            "type": "object", "minProperties": 1, "additionalProperties": False,
            "properties": {kind: {**_TEXT, "description": f"Why no case shows '{kind}'."}
                           for kind in KINDS}}
