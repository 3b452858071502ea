"""Quantities: declared calculations, computed when asked for, each with its derivation."""

from garboard.quantities.declaration import Citation, Figure, Quantity, cite, quantity
from garboard.quantities.figures import Derivation, Failure, Figures
from garboard.quantities.item import Item
from garboard.quantities.registry import Registry
from garboard.quantities.table import Table, table, table_from_data, table_names

__all__ = [
    "Citation", "Derivation", "Failure", "Figure", "Figures", "Item", "Quantity", "Registry",
    "Table", "cite", "quantity", "table", "table_from_data", "table_names",
]
