"""Checks the record of a boat's battery installation against rule packs, with an audit trail."""

__all__ = ["__version__"]

__version__ = "0.1.0"
