"""Trying a rule: its working for values given by hand, or for a thing of a record."""

from garboard.authoring.trying.given import read_given
from garboard.authoring.trying.lines import working_lines
from garboard.authoring.trying.work import work_on_given, work_on_record

__all__ = ["read_given", "work_on_given", "work_on_record", "working_lines"]
