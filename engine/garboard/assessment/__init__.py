"""Packs on a record: findings, derivations, and the trail of it."""

from garboard.assessment.assess import Assessment, assess
from garboard.assessment.day import Day, assessment_day

__all__ = ["Assessment", "Day", "assess", "assessment_day"]
