"""Packs on a record: findings, derivations, and the trail of it."""

from garboard.assessment.aboard import aboard_of
from garboard.assessment.answering import Answers, answers_of
from garboard.assessment.asking import asked_of
from garboard.assessment.assess import Assessment, assess
from garboard.assessment.blank_record import write_blank_record
from garboard.assessment.day import Day, assessment_day
from garboard.assessment.previous import previous_digest
from garboard.assessment.remedies import remedy_for
from garboard.assessment.replay import packs_of, replay

__all__ = [
    "Answers", "Assessment", "Day", "aboard_of", "answers_of", "asked_of", "assess",
    "assessment_day", "packs_of", "previous_digest", "remedy_for", "replay", "write_blank_record",
]
