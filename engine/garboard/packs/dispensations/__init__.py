"""Agreed exceptions to rules: models, reading from a file, schema."""

from garboard.packs.dispensations.dispensation import Dispensation
from garboard.packs.dispensations.reading import dispensations_at, read_dispensations
from garboard.packs.dispensations.schema import dispensations_schema

__all__ = ["Dispensation", "dispensations_at", "dispensations_schema", "read_dispensations"]
