"""Rule packs: models, reading from files, checking, the resolved form, schema and tables."""

from garboard.packs.checked import CheckedPack, check_pack, load_pack
from garboard.packs.citation import Citation
from garboard.packs.dispensations import (
    Dispensation,
    dispensations_schema,
    read_dispensations,
)
from garboard.packs.files import find_pack, known_packs, pack_files
from garboard.packs.header import Header, Need
from garboard.packs.layering import Layering, LayerName, Relaxation, Retired
from garboard.packs.layers.shelf import Shelf, shipped_shelf
from garboard.packs.limit import Limit
from garboard.packs.pack import Pack
from garboard.packs.pack_list import PackList, Pin, pack_list_schema, read_pack_list
from garboard.packs.question import Question
from garboard.packs.reading import read_pack_text
from garboard.packs.resolved import pack_from_data
from garboard.packs.rule import SEVERITIES, Rule
from garboard.packs.schema import pack_schema
from garboard.packs.seal import FORMAT as SEALED_FORMAT
from garboard.packs.seal import Seal
from garboard.packs.sealing import open_sealed, sealed_bytes, sealed_pack_schema
from garboard.packs.table import pack_table
from garboard.packs.whole import read_pack

__all__ = [
    "SEALED_FORMAT", "SEVERITIES", "CheckedPack", "Citation", "Dispensation", "Header", "LayerName",
    "Layering", "Limit", "Need", "Pack", "PackList", "Pin", "Question", "Relaxation", "Retired",
    "Rule", "Seal", "Shelf", "check_pack", "dispensations_schema", "find_pack", "known_packs",
    "load_pack", "open_sealed", "pack_files", "pack_from_data", "pack_list_schema", "pack_schema",
    "pack_table", "read_dispensations", "read_pack", "read_pack_list", "read_pack_text",
    "sealed_bytes", "sealed_pack_schema", "shipped_shelf",
]
