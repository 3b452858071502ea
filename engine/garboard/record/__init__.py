"""What is aboard: the models of a record, reading it, and the table of subjects."""

from garboard.record.answer import Answer
from garboard.record.conflict import Conflict
from garboard.record.fact import Fact
from garboard.record.field import Field
from garboard.record.format import RECORD_FORMAT, Format, Upgrade
from garboard.record.leaves.reference import TERMINALS
from garboard.record.reading import read_record
from garboard.record.record import Record
from garboard.record.relations import Relation
from garboard.record.subjects import SUBJECTS, Subject
from garboard.record.thing import DataPath, Thing

__all__ = [
    "RECORD_FORMAT", "SUBJECTS", "TERMINALS", "Answer", "Conflict", "DataPath", "Fact", "Field",
    "Format", "Record", "Relation", "Subject", "Thing", "Upgrade", "read_record",
]
