"""Reading a record: all of its problems at once, each with its place."""

from garboard.record.reading.read_record import read_record

__all__ = ["read_record"]
