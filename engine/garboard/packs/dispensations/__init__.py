"""Agreed exceptions to rules: models, reading from a file, schema."""

from garboard.packs.dispensations.dispensation import Dispensation
from garboard.packs.dispensations.reading import read_dispensations
from garboard.packs.dispensations.schema import dispensations_schema

__all__ = ["Dispensation", "dispensations_schema", "read_dispensations"]
