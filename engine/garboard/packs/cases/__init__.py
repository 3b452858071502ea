"""Cases of a pack: small records with the findings that its rules must give."""

from garboard.packs.cases.case import KINDS, WARNINGS, Case, CaseBook, Expected
from garboard.packs.cases.reading import CASES_FOLDER, read_cases
from garboard.packs.cases.schema import case_schema

__all__ = ["CASES_FOLDER", "KINDS", "WARNINGS", "Case", "CaseBook", "Expected", "case_schema",
           "read_cases"]
