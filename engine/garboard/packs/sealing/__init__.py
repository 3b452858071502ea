"""Sealed packs: one canonical file with layers resolved, its digest, and perhaps a signature."""

from garboard.packs.sealing.opening import open_sealed
from garboard.packs.sealing.schema import sealed_pack_schema
from garboard.packs.sealing.sealing import sealed_bytes
from garboard.packs.sealing.stray import stray_problems

__all__ = ["open_sealed", "sealed_bytes", "sealed_pack_schema", "stray_problems"]
