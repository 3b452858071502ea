"""YAML and JSON in and out: data with positions, named limits, schemas, whole files."""

from garboard.documents.beside import read_beside
from garboard.documents.document import Document
from garboard.documents.keys import (
    PublicKey,
    SecretKey,
    new_key_pair,
    read_public_key,
    read_secret_key,
)
from garboard.documents.limits import DEFAULT_LIMITS, Limits
from garboard.documents.path_text import path_text
from garboard.documents.reading import Expect, read_document, read_text
from garboard.documents.schema import schema_problems
from garboard.documents.shipped import shipped_folder
from garboard.documents.signature import (
    Signature,
    check_signature,
    read_signature,
    sign,
    signature_schema,
)
from garboard.documents.writing import write_whole

__all__ = [
    "DEFAULT_LIMITS", "Document", "Expect", "Limits", "PublicKey", "SecretKey", "Signature",
    "check_signature", "new_key_pair", "path_text", "read_beside", "read_document",
    "read_public_key", "read_secret_key", "read_signature", "read_text", "schema_problems",
    "shipped_folder", "sign",
    "signature_schema", "write_whole",
]
