"""YAML and JSON in and out: data with positions, named limits, schemas, whole files."""

from garboard.documents.document import Document
from garboard.documents.limits import DEFAULT_LIMITS, Limits
from garboard.documents.path_text import path_text
from garboard.documents.reading import Expect, read_document, read_text
from garboard.documents.schema import schema_problems
from garboard.documents.shipped import shipped_folder
from garboard.documents.writing import write_whole

__all__ = [
    "DEFAULT_LIMITS", "Document", "Expect", "Limits", "path_text", "read_document", "read_text",
    "schema_problems", "shipped_folder", "write_whole",
]
