"""The survey sheet: every key a record may have, to be filled in aboard."""

from garboard.record.sheet.survey_sheet import SheetQuestion, survey_sheet

__all__ = ["SheetQuestion", "survey_sheet"]
