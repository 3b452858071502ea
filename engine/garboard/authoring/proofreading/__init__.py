"""Proofreading: warnings about rules that are valid and yet look wrong."""

from garboard.authoring.proofreading.warnings import Proofread, proofread

__all__ = ["Proofread", "proofread"]
